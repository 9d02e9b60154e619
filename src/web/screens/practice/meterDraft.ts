import type { Meter } from '../../../core/reading/types.ts';
import { formatNumber } from '../../format.ts';
import { parseDecimal, sayNotANumber } from '../../parseDecimal.ts';
import type { SaidLines } from '../../parts/differences.ts';

/** A meter as it is typed; noise in per cent. */
export interface MeterDraft {
  readonly name: string;
  readonly lowest: string;
  readonly highest: string;
  readonly cutoff: string;
  readonly countdown: string;
  readonly swabNoise: string;
  readonly swabNoiseFrom: 'assumed' | 'measured';
  readonly dayNoise: string;
  readonly dayNoiseFrom: 'assumed' | 'measured';
}

export type MeterProblems = Readonly<Partial<Record<keyof MeterDraft, string>>>;

/** Nothing is filled in for a new meter: neither a cut-off nor a noise is usual. */
export const emptyMeter: MeterDraft = {
  name: '',
  lowest: '',
  highest: '',
  cutoff: '',
  countdown: '',
  swabNoise: '',
  swabNoiseFrom: 'assumed',
  dayNoise: '',
  dayNoiseFrom: 'assumed',
};

const PERCENT = 100;
const HIGHEST_SWAB_NOISE = 200;
const HIGHEST_DAY_NOISE = 500;

/** A fraction as a percentage without the dust of binary numbers. */
const toPercent = (fraction: number): string => String(Number((fraction * PERCENT).toPrecision(6)));

export function draftOfMeter(meter: Meter): MeterDraft {
  return {
    name: meter.name,
    lowest: String(meter.lowestRlu),
    highest: String(meter.highestRlu),
    cutoff: String(meter.cutoffRlu),
    countdown: String(meter.countdownS),
    swabNoise: toPercent(meter.cvAnalytical),
    swabNoiseFrom: meter.cvAnalyticalAssumed ? 'assumed' : 'measured',
    dayNoise: toPercent(meter.cvWithinPerson),
    dayNoiseFrom: meter.cvWithinPersonAssumed ? 'assumed' : 'measured',
  };
}

export type BuiltMeter = { readonly ok: true; readonly meter: Meter } | { readonly ok: false; readonly problems: MeterProblems };

export function buildMeter(draft: MeterDraft, makeMeterId: (name: string) => string): BuiltMeter {
  const problems = findProblems(draft);
  if (Object.keys(problems).length > 0) return { ok: false, problems };
  const name = draft.name.trim();
  // Every number was found to be one above.
  const number = (text: string) => parseDecimal(text) ?? Number.NaN;
  const meter: Meter = {
    id: makeMeterId(name),
    name,
    lowestRlu: number(draft.lowest),
    highestRlu: number(draft.highest),
    cutoffRlu: number(draft.cutoff),
    countdownS: number(draft.countdown),
    cvAnalytical: number(draft.swabNoise) / PERCENT,
    cvAnalyticalAssumed: draft.swabNoiseFrom === 'assumed',
    cvWithinPerson: number(draft.dayNoise) / PERCENT,
    cvWithinPersonAssumed: draft.dayNoiseFrom === 'assumed',
  };
  return { ok: true, meter };
}

function findProblems(draft: MeterDraft): MeterProblems {
  const numberProblem = (text: string) =>
    parseDecimal(text) === undefined ? (text.trim() === '' ? 'Take the number from its instructions.' : sayNotANumber(text)) : undefined;
  const noiseProblem = (text: string, atMost: number) => {
    const value = parseDecimal(text);
    if (value === undefined) return text.trim() === '' ? 'A percentage is needed, assumed or measured.' : sayNotANumber(text);
    return value > 0 && value <= atMost ? undefined : `It must be above 0 and ${atMost} or less.`;
  };
  const all: Partial<Record<keyof MeterDraft, string | undefined>> = {
    name: draft.name.trim() === '' ? 'It needs a name.' : undefined,
    lowest: numberProblem(draft.lowest),
    highest: numberProblem(draft.highest),
    cutoff: numberProblem(draft.cutoff) ?? orderProblem(draft),
    countdown: numberProblem(draft.countdown),
    swabNoise: noiseProblem(draft.swabNoise, HIGHEST_SWAB_NOISE),
    dayNoise: noiseProblem(draft.dayNoise, HIGHEST_DAY_NOISE),
  };
  return Object.fromEntries(Object.entries(all).filter(([, problem]) => problem !== undefined)) as MeterProblems;
}

function orderProblem({ lowest, cutoff, highest }: MeterDraft): string | undefined {
  const [low, cut, high] = [lowest, cutoff, highest].map(parseDecimal);
  if (low === undefined || cut === undefined || high === undefined) return undefined;
  return low < cut && cut < high ? undefined : "The cut-off lies between the meter's lowest and highest number.";
}

export function sayMeter(meter: Meter): SaidLines {
  const from = (isAssumed: boolean) => (isAssumed ? 'assumed' : 'measured here');
  return [
    ['Name', meter.name],
    ['Shows', `${formatNumber(meter.lowestRlu)} to ${formatNumber(meter.highestRlu)} RLU`],
    ['Cut-off', `${formatNumber(meter.cutoffRlu)} RLU`],
    ['Count-down', `${meter.countdownS} s`],
    ['Swab noise', `${toPercent(meter.cvAnalytical)} %, ${from(meter.cvAnalyticalAssumed)}`],
    ['Day to day', `${toPercent(meter.cvWithinPerson)} %, ${from(meter.cvWithinPersonAssumed)}`],
  ];
}
