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
  readonly funnel: RatioRange;
  /** On average further from the others than chance alone brings. */
  readonly isApart: boolean;
  /** The moving average of the latest is. */
  readonly isApartLately: boolean;
  /** Oldest first. */
  readonly points: readonly HandsPoint[];
  readonly says: string;
}

export interface RatioRange {
  readonly low: number;
  readonly high: number;
}

/** One control over the mean of its meter and lot. */
export interface HandsPoint {
  readonly id: string;
  /** UTC. */
  readonly takenAt: string;
  readonly ratio: number;
  /** Average up to here, in which the newest weigh most, and the limits that widen to a constant width; absent = void, in no average. */
  readonly moving?: (RatioRange & { readonly ratio: number }) | undefined;
}

/** Why hands cannot be compared yet. */
export type HandsComparison =
  | ({ readonly ok: true; readonly lines: readonly HandsLine[] } & HandsSpread)
  | { readonly ok: false; readonly says: string };

/** What the limits are made of: the spread within hands on ln(RLU), and how many controls there are of everybody. */
export interface HandsSpread {
  readonly sdLn: number;
  readonly all: number;
}

interface Residual {
  readonly id: string;
  readonly operator: string;
  readonly takenAt: string;
  readonly ln: number;
  readonly isVoid: boolean;
}

/** Fewer controls of one member say nothing of that member: our proposal. */
export const FEWEST_OF_ONE = 8;
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
  const counted = residuals.filter(({ isVoid }) => !isVoid);
  const operators = [...new Set(counted.map(({ operator }) => operator))].sort((a, b) => a.localeCompare(b));
  if (operators.length < 2) return { ok: false, says: 'Hands are compared once two members have taken controls of the same lot.' };
  const df = counted.length - operators.length - lots.length + 1;
  if (df < FEWEST_DF) return { ok: false, says: `Hands are compared once there are ${FEWEST_DF - df} more controls.` };
  const within = operators.flatMap((operator) => centredValues(lnOf(counted, operator)).deviations);
  const sdLn = Math.sqrt(within.reduce((sum, d) => sum + d * d, 0) / df);
  if (!(sdLn > 0)) return { ok: false, says: 'All controls gave the same number, so there is no spread to compare hands by.' };
  const spread = { sdLn, all: counted.length };
  const lines = operators.map((operator) =>
    lineOf(
      operator,
      residuals.filter((residual) => residual.operator === operator),
      spread,
    ),
  );
  return { ok: true, lines, ...spread };
}

const lnOf = (residuals: readonly Residual[], operator: string): number[] =>
  residuals.flatMap((residual) => (residual.operator === operator ? [residual.ln] : []));

function residualsOf({ controls }: JudgedLot): Residual[] {
  const named = controls.flatMap(({ control: { id, operator, takenAt, rlu, state } }) =>
    operator === null || !(rlu > 0) ? [] : [{ id, operator, takenAt, ln: Math.log(rlu), isVoid: state === 'void' }],
  );
  const counted = named.filter(({ isVoid }) => !isVoid);
  const hands = new Set(counted.map(({ operator }) => operator));
  // Where one member took them all, a lot says nothing of hands.
  if (hands.size < 2) return [];
  const { mean } = centredValues(counted.map(({ ln }) => ln));
  return named.map((control) => ({ ...control, ln: control.ln - mean }));
}

/**
 * Between these lies the mean of hands that do as the others: the fewer the controls, the wider.
 * @param controls  of one member, above 0 and at most `all`
 */
export function funnelAt(controls: number, { sdLn, all }: HandsSpread): RatioRange {
  // The others' mean holds this member's controls too, so the distance varies less than the mean itself.
  const half = FUNNEL * sdLn * Math.sqrt(1 / controls - 1 / all);
  return { low: Math.exp(-half), high: Math.exp(half) };
}

function lineOf(operator: string, residuals: readonly Residual[], spread: HandsSpread): HandsLine {
  const values = lnOf(
    residuals.filter(({ isVoid }) => !isVoid),
    operator,
  );
  const controls = values.length;
  const ratio = Math.exp(centredValues(values).mean);
  const funnel = funnelAt(controls, spread);
  const { points, isBeyond } = movingOf(residuals, spread);
  const isEnough = controls >= FEWEST_OF_ONE;
  const isApart = isEnough && (ratio > funnel.high || ratio < funnel.low);
  const isApartLately = isEnough && isBeyond;
  const state = !isEnough ? 'too-few' : isApart || isApartLately ? 'other-wise' : 'in-line';
  const line = { operator, controls, state, ratio, funnel, isApart, isApartLately, points } as const;
  return { ...line, says: sayLine(line) };
}

/** The moving average of one member, and whether its newest point lies beyond the limits. */
function movingOf(residuals: readonly Residual[], { sdLn }: HandsSpread) {
  const counted = residuals.filter(({ isVoid }) => !isVoid);
  const { values, halfWidths } = ewmaChart(
    counted.map(({ ln }) => ln / sdLn),
    MOVING.lambda,
    MOVING.limit,
  );
  const ratioOf = (sd: number) => Math.exp(sd * sdLn);
  const movingAt = new Map(
    counted.map(({ id }, i) => {
      const [value, half] = [values[i] ?? 0, halfWidths[i] ?? 0];
      return [id, { ratio: ratioOf(value), low: ratioOf(-half), high: ratioOf(half) }];
    }),
  );
  const points = residuals.map(({ id, takenAt, ln }): HandsPoint => ({ id, takenAt, ratio: Math.exp(ln), moving: movingAt.get(id) }));
  return { points, isBeyond: Math.abs(values.at(-1) ?? 0) > (halfWidths.at(-1) ?? Number.POSITIVE_INFINITY) };
}

/** About the way it is done, never about the person. */
function sayLine({ operator, controls, state, ratio, funnel, isApart }: Omit<HandsLine, 'says'>): string {
  const counted = `${operator}, ${controls} ${controls === 1 ? 'control' : 'controls'}`;
  if (state === 'too-few') return `${counted}: too few to compare; ${FEWEST_OF_ONE} are needed.`;
  const by = sayRatio(ratio);
  const chance = `chance alone brings up to ${sayPercent(Math.max(funnel.high - 1, 1 - funnel.low))}`;
  if (state === 'in-line') return `${counted}: in line, ${by}, and ${chance}.`;
  return isApart
    ? `${counted}: ${by}; ${chance}. ${SIDE_BY_SIDE}`
    : `${counted}: the latest differ from the others by more than chance brings. ${SIDE_BY_SIDE}`;
}

export const SIDE_BY_SIDE = 'Swab side by side once and see what differs.';

/** "8 % higher than all together". */
export function sayRatio(ratio: number): string {
  if (Math.abs(ratio - 1) < 0.005) return 'the same as all together';
  return `${sayPercent(Math.abs(ratio - 1))} ${ratio >= 1 ? 'higher' : 'lower'} than all together`;
}
