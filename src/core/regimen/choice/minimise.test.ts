import fc from 'fast-check';
import { expect, test } from 'vitest';
import { solve } from 'yalps';
import { minimise } from './minimise.ts';
import { sumAt, type UpperRow } from './tighten.ts';

const COUNT = 6;
const PLACES = Array.from({ length: COUNT }, (_, i) => i);

/** Needs to cover and shares of a bound, as packs have them. */
const programmes = fc.record({
  covers: fc.array(fc.subarray(PLACES, { minLength: 1 }), { minLength: 1, maxLength: 4 }),
  shares: fc.array(
    fc.oneof(
      fc.constantFrom(0.25, 0.5, 1),
      fc.integer({ min: 1, max: 110 }).map((percent) => percent / 100),
    ),
    {
      minLength: COUNT,
      maxLength: COUNT,
    },
  ),
  atMost: fc.constantFrom(0.5, 1, 1.5, 3),
  costs: fc.array(fc.oneof(fc.constant(0), fc.nat(900)), { minLength: COUNT, maxLength: COUNT }),
});
type Random = typeof programmes extends fc.Arbitrary<infer T> ? T : never;

const rowsOf = ({ covers, shares, atMost }: Random): readonly UpperRow[] => [
  ...covers.map((places): UpperRow => ({ places, coefficients: places.map(() => -1), atMost: -1 })),
  { places: PLACES, coefficients: shares, atMost },
];
const goalOf = ({ costs }: Random): UpperRow => ({ places: PLACES, coefficients: costs, atMost: Number.POSITIVE_INFINITY });
const box = { least: PLACES.map(() => 0), most: PLACES.map(() => 1) };

/** By trying every set. */
function bestOf(random: Random): number | undefined {
  const sets = Array.from({ length: 2 ** COUNT }, (_, bits) => PLACES.map((i) => (bits >> i) % 2));
  const kept = sets.filter((values) => rowsOf(random).every((row) => sumAt(row, values) <= row.atMost + 1e-9));
  return kept.length === 0 ? undefined : Math.min(...kept.map((values) => sumAt(goalOf(random), values)));
}

function byYalpsAlone(random: Random, maxPivots: number) {
  const rows = [...rowsOf(random), ...PLACES.map((i): UpperRow => ({ places: [i], coefficients: [1], atMost: 1 }))];
  const variables = PLACES.map((i): [string, [number, number][]] => [
    `x${i}`,
    [...rows.map((row, r): [number, number] => [r, row.coefficients[row.places.indexOf(i)] ?? 0]), [-1, random.costs[i] ?? 0]],
  ]);
  const constraints = rows.map(({ atMost }, r): [number, { max: number }] => [r, { max: atMost }]);
  return solve({ direction: 'minimize', objective: -1, constraints, variables, integers: true }, { maxPivots });
}

test('the optimum is the one that trying every set finds, even where the simplex method gives up in some branches or in all', () => {
  let lost = 0;
  fc.assert(
    fc.property(programmes, fc.constantFrom(undefined, 0, 3, 4, 5), (random, mostPivots) => {
      const goal = goalOf(random);
      const best = bestOf(random);
      const found = minimise({ rows: rowsOf(random), goal, box, mostPivots });
      expect(found && sumAt(goal, found)).toBe(best);
      // What is guarded against: yalps leaves out a branch in which the simplex method gave up, and claims an optimum all the same.
      const { status, result } = byYalpsAlone(random, mostPivots ?? 1_000);
      if ((status === 'optimal' && Math.round(result) !== best) || (status === 'infeasible' && best !== undefined)) lost += 1;
    }),
    { seed: 20_261_126, numRuns: 500 },
  );
  expect(lost).toBeGreaterThan(0);
});

test('what is known already is given back where nothing is better', () => {
  const rows: readonly UpperRow[] = [{ places: [0, 1], coefficients: [-1, -1], atMost: -1 }];
  const goal: UpperRow = { places: [0, 1], coefficients: [1, 1], atMost: Number.POSITIVE_INFINITY };
  const known = [0, 1];
  expect(minimise({ rows, goal, box: { least: [0, 0], most: [1, 1] }, known })).toBe(known);
  expect(minimise({ rows, goal, box: { least: [0, 0], most: [1, 1] }, known: [1, 1] })).not.toEqual([1, 1]);
});

test('a programme with more branches than can be looked at ends with an error, not with an answer', () => {
  const places = Array.from({ length: 40 }, (_, i) => i);
  // No 20 of 40 whole numbers add up to an odd one when each counts twice.
  const rows: readonly UpperRow[] = [
    { places, coefficients: places.map(() => 2), atMost: 41 },
    { places, coefficients: places.map(() => -2), atMost: -41 },
  ];
  const goal: UpperRow = { places, coefficients: places.map(() => 0), atMost: Number.POSITIVE_INFINITY };
  expect(() => minimise({ rows, goal, box: { least: places.map(() => 0), most: places.map(() => 1) } })).toThrow(/branches/);
});
