import fc from 'fast-check';
import { expect, test } from 'vitest';
import { startHighs } from '../../bench/highsPeer.ts';
import type { Row, Terms } from '../../src/core/regimen/choice/row.ts';
import { smallestConflict } from '../../src/core/regimen/choice/smallestConflict.ts';
import { solveInOrder } from '../../src/core/regimen/choice/solveInOrder.ts';

const SEED = Number(process.env.EBBLINE_SEED ?? 20_261_126);
const LONG = process.env.EBBLINE_LONG === '1';
const PROGRAMMES = LONG ? 20_000 : 2_000;
/** Smaller ones take less time and still have needs, pairs and bounds in each. */
const MOST_PACKS = LONG ? 9 : 6;
const TIMEOUT = LONG ? 3_600_000 : 180_000;

/** Programmes of the same kind as a choice of packs: needs to cover, pairs apart, a bound with shares, goals in whole numbers. */
const programmes = fc.record({
  packs: fc.array(
    fc.record({
      serves: fc.subarray([0, 1, 2, 3], { minLength: 1, maxLength: 2 }),
      share: fc.oneof(
        fc.constantFrom(0, 0.25, 0.5, 1),
        fc.nat(110).map((percent) => percent / 100),
      ),
      goals: fc.tuple(fc.nat(2), fc.oneof(fc.constant(0), fc.nat(900))),
    }),
    { minLength: 1, maxLength: MOST_PACKS },
  ),
  pairs: fc.array(fc.tuple(fc.nat(8), fc.nat(8)), { maxLength: 4 }),
  bound: fc.constantFrom(0.5, 1, 1.5, 3),
  isMeetingAll: fc.boolean(),
});
type Random = typeof programmes extends fc.Arbitrary<infer T> ? T : never;

function toRows({ packs, pairs, bound, isMeetingAll }: Random): { rows: Row[]; goals: Terms[] } {
  const taken = (i: number) => `x${i}`;
  const needs = [0, 1, 2, 3].map((need): Row => {
    const serving = packs.flatMap((p, i) => (p.serves.includes(need) ? [[taken(i), 1] as const] : []));
    return { terms: isMeetingAll && serving.length > 0 ? serving : [[`s${need}`, 1], ...serving], atLeast: 1 };
  });
  const apart = pairs
    .filter(([i, j]) => i !== j && i < packs.length && j < packs.length)
    .map(
      ([i, j]): Row => ({
        terms: [
          [taken(i), 1],
          [taken(j), 1],
        ],
        atMost: 1,
      }),
    );
  const day: Row = { terms: packs.map((p, i) => [taken(i), p.share] as const), atMost: bound };
  const once = packs.map((_, i): Row => ({ terms: [[taken(i), 1]], atMost: 1 }));
  const unmet = [0, 1, 2, 3].map((need) => [`s${need}`, 2 ** (3 - need)] as const);
  const goals = [0, 1].map((g): Terms => packs.map((p, i) => [taken(i), p.goals[g] ?? 0] as const));
  return { rows: [...needs, ...apart, day, ...once], goals: [unmet, ...goals] };
}

/** One goal in which a step of an earlier one outweighs all of the later ones: nine packs of at most 900, and of at most 2. */
const WEIGHTS = [200_000, 10_000, 1];
const weighted = (goals: readonly Terms[]): Terms =>
  goals.flatMap((goal, g) => goal.map(([name, c]) => [name, c * (WEIGHTS[g] ?? 0)] as const));
const asOne = (optima: readonly number[]): number => optima.reduce((sum, optimum, g) => sum + optimum * (WEIGHTS[g] ?? 0), 0);

test(`the optima of ${PROGRAMMES} random programmes, one goal after the other, are the one that HiGHS finds with weights; so is what has no solution`, {
  timeout: TIMEOUT,
}, async () => {
  const solveByHighs = await startHighs();
  let unsolvable = 0;
  fc.assert(
    fc.property(programmes, (random) => {
      const { rows, goals } = toRows(random);
      const ours = solveInOrder(rows, goals)?.optima;
      expect(ours && asOne(ours)).toEqual(solveByHighs(rows, [weighted(goals)])?.optima[0]);
      if (!ours) unsolvable += 1;
    }),
    { seed: SEED, numRuns: PROGRAMMES },
  );
  expect(unsolvable).toBeGreaterThan(PROGRAMMES / 50);
});

test('the smallest conflict is the smallest that trying every set finds', () => {
  const sets = fc.array(fc.subarray(['a', 'b', 'c', 'd', 'e', 'f'], { minLength: 1 }), { minLength: 1, maxLength: 5 });
  fc.assert(
    fc.property(sets, (corrections) => {
      // Freeing any one whole correction mends everything, so a conflict is a set that has something of each.
      const groups = ['a', 'b', 'c', 'd', 'e', 'f'];
      const rows: Row[] = [
        { terms: corrections.map((_, k) => [`way ${k}`, 1] as const), atLeast: 1 },
        ...corrections.flatMap((set, k) =>
          set.map(
            (g): Row => ({
              terms: [
                [`way ${k}`, 1],
                [g, -1],
              ],
              atMost: 0,
            }),
          ),
        ),
      ];
      const found = smallestConflict({ rows, groups }) ?? [];
      const hits = (set: readonly string[]) => corrections.every((c) => c.some((g) => set.includes(g)));
      const all = Array.from({ length: 2 ** groups.length }, (_, bits) => groups.filter((_g, i) => (bits >> i) % 2 === 1)).filter(hits);
      expect(hits(found)).toBe(true);
      expect(found).toHaveLength(Math.min(...all.map((set) => set.length)));
    }),
    { seed: SEED, numRuns: 300 },
  );
});
