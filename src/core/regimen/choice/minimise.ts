import { relax } from './relax.ts';
import { type Box, KEPT_WITHIN, sumAt, tighten, type UpperRow } from './tighten.ts';

/** Of a relaxed optimum that stands for a whole number, this much is rounding. */
const ROUNDING = 1e-5;
/** Enough for programmes many times as large; more means that the simplex method goes in a circle. */
const MOST_PIVOTS = 1_000;
/** Programmes of a shelf need some tens. */
const MOST_BRANCHES = 30_000;

/** Values by place. */
export type Values = readonly number[];

export interface WholeProgramme {
  readonly rows: readonly UpperRow[];
  /** Coefficients are whole numbers, 0 or more. */
  readonly goal: UpperRow;
  /** Whole numbers, 0 or more. */
  readonly box: Box;
  /** Values that keep the rows; given back where nothing is better. */
  readonly known?: Values | undefined;
  /** Of one relaxed programme. */
  readonly mostPivots?: number | undefined;
}

/**
 * The whole numbers in a box that keep the rows with the smallest goal. yalps solves the relaxed programmes; the branches are made here,
 * because its own search leaves out a branch whose simplex method goes in a circle and says nothing of it. Here such a branch is split
 * further. As the goal is a whole number, a branch is followed only where it could be better by 1.
 * @returns undefined when no whole numbers keep the rows
 * @throws Error when there are too many branches
 */
export function minimise({ rows, goal, box: whole, known, mostPivots = MOST_PIVOTS }: WholeProgramme): Values | undefined {
  let best = known;
  let isBetter = betterThan(best, goal);
  const boxes = [{ least: [...whole.least], most: [...whole.most] }];
  for (let branches = 0; ; branches += 1) {
    const box = boxes.pop();
    if (!box) return best;
    if (branches === MOST_BRANCHES) throw new Error(`a programme of ${rows.length} rows has more than ${MOST_BRANCHES} branches`);
    if (!tighten([isBetter, ...rows], box)) continue;
    const relaxed = relax({ rows, goal, box, mostPivots });
    if (relaxed === 'infeasible') continue;
    const { optimum, values } = relaxed === 'circling' ? { optimum: sumAt(goal, box.least), values: box.least } : relaxed;
    const rounded = values.map(Math.round);
    if (sumAt(goal, rounded) <= isBetter.atMost && keepsAll(rounded, rows, box)) {
      best = rounded;
      isBetter = betterThan(best, goal);
    }
    if (optimum <= isBetter.atMost + ROUNDING) boxes.push(...split(box, values));
  }
}

const betterThan = (best: Values | undefined, goal: UpperRow): UpperRow => ({
  ...goal,
  atMost: best ? sumAt(goal, best) - 1 : Number.POSITIVE_INFINITY,
});

const keepsAll = (values: Values, rows: readonly UpperRow[], { least, most }: Box): boolean =>
  values.every((value, i) => value >= (least[i] ?? 0) && value <= (most[i] ?? 0)) &&
  rows.every((row) => sumAt(row, values) <= row.atMost + KEPT_WITHIN);

/** In two, where a value is furthest from a whole number in the box; the half that is nearer to it comes last and is looked at first. */
function split({ least, most }: Box, values: Values): readonly Box[] {
  let [at, furthest] = [-1, -1];
  for (const [i, value] of values.entries()) {
    const [low, high] = [least[i] ?? 0, most[i] ?? 0];
    const distance = value > high ? 1 : Math.abs(value - Math.round(value));
    if (low < high && distance > furthest) [at, furthest] = [i, distance];
  }
  if (at < 0) return [];
  const value = values[at] ?? 0;
  const down = Math.min(Math.floor(value), (most[at] ?? 0) - 1);
  const halves = [
    { least, most: most.with(at, down) },
    { least: least.with(at, down + 1), most },
  ];
  return value - down < 0.5 ? halves.toReversed() : halves;
}
