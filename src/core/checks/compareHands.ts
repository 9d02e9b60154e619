import { sayPercent } from '../reading/sayNoise.ts';
import { centredValues } from '../stats/centredValues.ts';
import { ewmaChart } from '../stats/ewmaChart.ts';
import type { JudgedLot } from './judgeControls.ts';

/** One member's controls beside everybody's. Ratios of RLU: 1 = as the others. */
export interface HandsLine {
  readonly operator: string;
  readonly controls: number;
  /** `too-few` = nothing is said; `other-wise` = further from the others than chance alone brings, on average or lately. */
  readonly state: 'too-few' | 'in-line' | 'other-wise';
  readonly ratio: number;
  /** Within these lies the ratio of hands that do the same as the others: wide where there are few controls. */
  readonly funnel: { readonly low: number; readonly high: number };
  /** Moving average of the latest controls, each a distance in sd; oldest first. */
  readonly moving: readonly number[];
  /** Half-width of the limits at each point. */
  readonly movingLimits: readonly number[];
  readonly says: string;
}

/** Why hands cannot be compared yet. */
export type HandsComparison =
  | { readonly ok: true; readonly lines: readonly HandsLine[]; readonly sdLn: number }
  | { readonly ok: false; readonly says: string };

/** Fewer controls of one member say nothing of that member: our proposal. */
const FEWEST = 8;
/** With fewer degrees of freedom the spread itself is a guess: our proposal. */
const FEWEST_DF = 10;
/** Limits of an average, in its sd: beyond them lies about one member in 370 who does just the same. */
const FUNNEL = 3;
/** A run of about 500 controls between false alarms (Lucas and Saccucci 1990, from memory, recomputed in ewmaRunLength.test.ts). */
const MOVING = { lambda: 0.2, limit: 2.962 };

/**
 * Do some hands read the same control solution higher or lower than the others? Each control is held against the mean of its own lot and
 * meter, so that a drift of the meter, which all hands share, is nobody's.
 * @param lots  controls by meter and lot; void ones and those without a name are passed over
 * @source lucas-saccucci1990; common-practice
 */
export function compareHands(lots: readonly JudgedLot[]): HandsComparison {
  const residuals = lots.flatMap(residualsOf).sort((a, b) => (a.takenAt < b.takenAt ? -1 : 1));
  const byOperator = new Map<string, number[]>();
  for (const { operator, ln } of residuals) byOperator.set(operator, [...(byOperator.get(operator) ?? []), ln]);
  if (byOperator.size < 2) return { ok: false, says: 'Hands are compared once two members have taken controls of the same lot.' };
  const df = residuals.length - byOperator.size - lots.length + 1;
  if (df < FEWEST_DF) return { ok: false, says: `Hands are compared once there are ${FEWEST_DF - df} more controls.` };
  const sdLn = Math.sqrt(
    [...byOperator.values()].flatMap((values) => centredValues(values).deviations).reduce((sum, d) => sum + d * d, 0) / df,
  );
  if (!(sdLn > 0)) return { ok: false, says: 'All controls gave the same number, so there is no spread to compare hands by.' };
  const lines = [...byOperator].map(([operator, values]) => lineOf(operator, values, { sdLn, all: residuals.length }));
  return { ok: true, sdLn, lines: lines.sort((a, b) => a.operator.localeCompare(b.operator)) };
}

function residualsOf({ controls }: JudgedLot) {
  const counted = controls.flatMap(({ control }) =>
    control.state === 'void' || control.operator === null || !(control.rlu > 0)
      ? []
      : [{ operator: control.operator, takenAt: control.takenAt, ln: Math.log(control.rlu) }],
  );
  const hands = new Set(counted.map(({ operator }) => operator));
  // Where one member took them all, a lot says nothing of hands.
  if (hands.size < 2) return [];
  const { deviations } = centredValues(counted.map(({ ln }) => ln));
  return counted.map((control, i) => ({ ...control, ln: deviations[i] ?? 0 }));
}

function lineOf(operator: string, values: readonly number[], { sdLn, all }: { readonly sdLn: number; readonly all: number }): HandsLine {
  const controls = values.length;
  const { mean } = centredValues(values);
  // The others' mean holds this member's controls too, so the distance varies less than the mean itself.
  const half = FUNNEL * sdLn * Math.sqrt(1 / controls - 1 / all);
  const { values: moving, halfWidths: movingLimits } = ewmaChart(
    values.map((value) => value / sdLn),
    MOVING.lambda,
    MOVING.limit,
  );
  const isLately = Math.abs(moving.at(-1) ?? 0) > (movingLimits.at(-1) ?? Number.POSITIVE_INFINITY);
  const state = controls < FEWEST ? 'too-few' : Math.abs(mean) > half || isLately ? 'other-wise' : 'in-line';
  const line = { operator, controls, state, ratio: Math.exp(mean), funnel: { low: Math.exp(-half), high: Math.exp(half) } } as const;
  return { ...line, moving, movingLimits, says: sayLine(line, isLately && Math.abs(mean) <= half) };
}

/** About the way it is done, never about the person. */
function sayLine(
  { operator, controls, state, ratio, funnel }: Pick<HandsLine, 'operator' | 'controls' | 'state' | 'ratio' | 'funnel'>,
  onlyLately: boolean,
): string {
  const counted = `${operator}, ${controls} ${controls === 1 ? 'control' : 'controls'}`;
  if (state === 'too-few') return `${counted}: too few to compare; ${FEWEST} are needed.`;
  const side = ratio >= 1 ? 'higher' : 'lower';
  const isSame = Math.abs(ratio - 1) < 0.005;
  const by = isSame ? 'the same as all together' : `${sayPercent(Math.abs(ratio - 1))} ${side} than all together`;
  const chance = `chance alone brings up to ${sayPercent(Math.max(funnel.high - 1, 1 - funnel.low))}`;
  if (state === 'in-line') return `${counted}: in line, ${by}, and ${chance}.`;
  const advice = 'Swab side by side once and see what differs.';
  return onlyLately
    ? `${counted}: the latest differ from the others by more than chance brings. ${advice}`
    : `${counted}: ${by}; ${chance}. ${advice}`;
}
