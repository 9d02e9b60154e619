import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, it, test } from 'vitest';
import { type BoundedRlu, censoredSummary } from './censoredSummary.ts';

const WORD = { left: 'at-most', right: 'at-least', none: 'exact' } as const;
interface Case {
  readonly id: string;
  readonly dataset: { readonly rlu: readonly number[]; readonly censor?: readonly (keyof typeof WORD)[]; readonly limit?: number };
  readonly outputs: Readonly<Record<'mu' | 'sigma' | 'geometric_mean' | 'gsd' | 'loglik_R', number>> & {
    readonly gm_ci95: readonly [number, number];
    readonly prob_above_1500?: number;
  };
}
const { cases }: { cases: readonly Case[] } = JSON.parse(readFileSync('test/reference/statistics/censored.json', 'utf8'));

function readingsOf(dataset: Case['dataset']): BoundedRlu[] {
  const { rlu, censor, limit = 0 } = dataset;
  return rlu.map((value, i) => {
    if (censor) return { rlu: value, bound: WORD[censor[i] ?? 'none'] };
    return value <= limit ? { rlu: limit, bound: 'at-most' } : { rlu: value };
  });
}

// Own seeded simulations fitted by survreg, R package survival 3.5-3 (test/reference/statistics/censored.json).
// Tolerance: 1e-6 relative, survreg's own stopping rule.
test.each(cases)('$id', ({ dataset, outputs }) => {
  const got = censoredSummary(readingsOf(dataset), 1500);
  expect(got).toMatchObject({ ok: true });
  if (!got.ok) return;
  const pairs: [number, number | undefined][] = [
    [got.value.meanLog, outputs.mu],
    [got.value.sdLog, outputs.sigma],
    [got.value.geometricMeanRlu, outputs.geometric_mean],
    [got.value.geometricSd, outputs.gsd],
    [got.value.geometricMeanInterval.low, outputs.gm_ci95[0]],
    [got.value.geometricMeanInterval.high, outputs.gm_ci95[1]],
    [got.value.logLikelihood, outputs.loglik_R],
    [got.value.probabilityAboveThreshold ?? Number.NaN, outputs.prob_above_1500],
  ];
  for (const [value, want] of pairs) if (want !== undefined) expect(Math.abs(value / want - 1)).toBeLessThan(1e-6);
});

describe('censoredSummary', () => {
  const rlu = fc.oneof(fc.constantFrom(40, 1000, 60_000), fc.integer({ min: 40, max: 60_000 }));
  const bound = fc.constantFrom('exact' as const, 'at-most' as const, 'at-least' as const);

  it('moves with the scale of the meter: mean by the factor, spread not at all', () => {
    const sets = fc.array(fc.record({ rlu, bound }), { minLength: 3, maxLength: 15 });
    fc.assert(
      fc.property(sets, fc.constantFrom(0.01, 3, 1000), (set, factor) => {
        const [plain, scaled] = [
          censoredSummary(set, 4200),
          censoredSummary(
            set.map((r) => ({ ...r, rlu: r.rlu * factor })),
            4200 * factor,
          ),
        ];
        expect(scaled.ok).toBe(plain.ok);
        if (!plain.ok || !scaled.ok) return;
        expect(scaled.value.meanLog).toBeCloseTo(plain.value.meanLog + Math.log(factor), 6);
        expect(scaled.value.sdLog / plain.value.sdLog).toBeCloseTo(1, 6);
        expect(scaled.value.probabilityAboveThreshold).toBeCloseTo(plain.value.probabilityAboveThreshold ?? Number.NaN, 6);
        expect(plain.value.geometricMeanInterval.low).toBeLessThanOrEqual(plain.value.geometricMeanRlu);
      }),
    );
  });

  it('without bounds is the geometric mean and the n-divisor sd of the logs', () => {
    fc.assert(
      fc.property(fc.array(rlu, { minLength: 2, maxLength: 20 }), (list) => {
        const logs = list.map(Math.log);
        const mean = logs.reduce((a, b) => a + b, 0) / logs.length;
        const sd = Math.sqrt(logs.reduce((a, b) => a + (b - mean) ** 2, 0) / logs.length);
        fc.pre(sd > 1e-6);
        const got = censoredSummary(list.map((value) => ({ rlu: value })));
        expect(got.ok && got.value.meanLog).toBeCloseTo(mean, 9);
        expect(got.ok && got.value.sdLog).toBeCloseTo(sd, 9);
        expect(got.ok && got.value.probabilityAboveThreshold).toBe(null);
      }),
    );
  });

  it('does not treat a limit as a number: lower readings than the limit pull the mean below the naive one', () => {
    const set: BoundedRlu[] = [{ rlu: 40, bound: 'at-most' }, { rlu: 40, bound: 'at-most' }, { rlu: 90 }, { rlu: 300 }];
    const got = censoredSummary(set);
    const naive = Math.exp((2 * Math.log(40) + Math.log(90) + Math.log(300)) / 4);
    expect(got.ok && got.value.geometricMeanRlu).toBeLessThan(naive);
  });

  it('says why there is no estimate', () =>
    expect(censoredSummary([{ rlu: 40, bound: 'at-most' }])).toEqual({ ok: false, reason: 'all-at-most' }));

  it('names the reading that cannot be', () => {
    expect(() => censoredSummary([{ rlu: 5 }, { rlu: 0 }])).toThrow(/readings\.1\.rlu/);
    expect(() => censoredSummary([{ rlu: 5 }, { rlu: 6 }], -1)).toThrow(/thresholdRlu/);
  });
});
