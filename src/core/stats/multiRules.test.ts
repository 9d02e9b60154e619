import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, it, test } from 'vitest';
import { MULTI_RULES, type MultiRule, multiRuleFlags } from './multiRules.ts';

interface Flagged {
  readonly z: readonly number[];
  readonly flags: Record<MultiRule, readonly number[]>;
}
const { series, handmade }: Record<'series' | 'handmade', Flagged> = JSON.parse(
  readFileSync('test/reference/statistics/control.json', 'utf8'),
);

// Flags by an independent program in R 4.2.2 (test/reference/statistics/control.json). Exact.
test.each([
  { name: 'simulated controls', ...series },
  { name: 'made by hand', ...handmade },
])('every flag of the $name', ({ z, flags }) => expect(multiRuleFlags(z)).toEqual(flags));

/** Each rule from its definition, looking back from the point. */
const DEFINITIONS: Record<MultiRule, (z: readonly number[]) => boolean> = {
  '1-2s': (z) => last(z, 1, (v) => v > 2),
  '1-3s': (z) => last(z, 1, (v) => v > 3),
  '2-2s': (z) => last(z, 2, (v) => v > 2),
  'R-4s': (z) => z.length > 1 && Math.min(...z.slice(-2)) < -2 && Math.max(...z.slice(-2)) > 2,
  '4-1s': (z) => last(z, 4, (v) => v > 1),
  '10-x': (z) => last(z, 10, (v) => v > 0),
};
function last(z: readonly number[], count: number, holds: (v: number) => boolean): boolean {
  const points = z.slice(-count);
  return points.length === count && (points.every(holds) || points.every((v) => holds(-v)));
}

/** Half of the points lie exactly on a limit, and long runs on one side are common. */
const side = fc.array(fc.oneof(fc.constantFrom(0, 1, 2, 3), fc.constantFrom(0.5, 1.5, 2.5, 3.5)), { minLength: 1, maxLength: 14 });
const chart = fc
  .array(fc.tuple(side, fc.constantFrom(1, -1)), { minLength: 1, maxLength: 5 })
  .map((runs) => runs.flatMap(([z, sign]) => z.map((v) => v * sign)));

describe('multiRuleFlags', () => {
  it('flags a point exactly when the definition of the rule holds there', () => {
    fc.assert(
      fc.property(chart, (z) => {
        const flags = multiRuleFlags(z);
        for (const rule of MULTI_RULES) {
          const want = z.flatMap((_, i) => (DEFINITIONS[rule](z.slice(0, i + 1)) ? [i] : []));
          expect([rule, flags[rule]]).toEqual([rule, want]);
        }
      }),
    );
  });

  it('is the same when the chart is turned over', () => {
    fc.assert(
      fc.property(chart, (z) => {
        expect(multiRuleFlags(z.map((v) => -v))).toEqual(multiRuleFlags(z));
      }),
    );
  });

  it('refuses what is no number', () => expect(() => multiRuleFlags([0, Number.NaN])).toThrow('z.1'));
});
