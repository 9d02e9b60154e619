import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { detectionLimit } from './detectionLimit.ts';

const { dataset, outputs } = JSON.parse(readFileSync('test/reference/statistics/dilution.json', 'utf8')).detectionLimit;
const blanks: number[] = dataset.rlu.filter((_: number, i: number) => dataset.kind[i] === 'blank');
const lows: { level: number; rlu: number }[] = dataset.rlu
  .map((rlu: number, i: number) => ({ level: dataset.level[i], rlu }))
  .filter((_: unknown, i: number) => dataset.kind[i] === 'low');

// Own seeded simulation, formulas in R 4.2.2 (test/reference/statistics/dilution.json). Tolerance: 1e-12 relative.
test('limits of 60 blanks and 60 low readings', () => {
  const got = detectionLimit(blanks, lows);
  const value = (limit: { ok: boolean; value?: number }) => limit.value ?? Number.NaN;
  expect(value(got.limitOfBlankRlu) / outputs.lob_parametric_z).toBeCloseTo(1, 12);
  expect(value(got.limitOfBlankRankRlu) / outputs.lob_nonparametric).toBeCloseTo(1, 12);
  expect(value(got.limitOfDetectionRlu) / outputs.lod_from_parametric).toBeCloseTo(1, 12);
  expect((got.sdLowRlu ?? 0) / outputs.pooled_sd_low).toBeCloseTo(1, 12);
  expect(got.dfLow).toBe(54);
});

test('the order of the readings says nothing', () => {
  expect(detectionLimit([...blanks].reverse(), [...lows].reverse()).limitOfBlankRankRlu).toEqual(
    detectionLimit(blanks, lows).limitOfBlankRankRlu,
  );
});

const low = (...rlus: number[]) => rlus.map((rlu, i) => ({ level: i % 2, rlu }));
test.each([
  { what: 'one blank', given: [[3], low(9, 8, 7, 6)], reasons: ['too-few-blanks', 'too-few-blanks', 'too-few-blanks'] },
  { what: 'blanks that are all 0', given: [new Array(20).fill(0), low(9, 8, 7, 6)], reasons: ['blanks-equal', undefined, 'blanks-equal'] },
  { what: 'nine blanks', given: [[1, 2, 3, 4, 5, 6, 7, 8, 9], low(9, 8, 7, 6)], reasons: [undefined, 'too-few-blanks', undefined] },
  { what: 'no low readings', given: [[1, 2], []], reasons: [undefined, 'too-few-blanks', 'no-low-replicates'] },
  { what: 'one low reading at each level', given: [[1, 2], low(9, 8)], reasons: [undefined, 'too-few-blanks', 'no-low-replicates'] },
  { what: 'low readings without spread', given: [[1, 2], low(9, 8, 9, 8)], reasons: [undefined, 'too-few-blanks', 'lows-equal'] },
] as { what: string; given: [number[], { level: number; rlu: number }[]]; reasons: (string | undefined)[] }[])(
  'says why with $what',
  ({ given, reasons }) => {
    const got = detectionLimit(...given);
    const limits = [got.limitOfBlankRlu, got.limitOfBlankRankRlu, got.limitOfDetectionRlu];
    expect(limits.map((limit) => (limit.ok ? undefined : limit.reason))).toEqual(reasons);
  },
);

test('names what is no number', () => {
  expect(() => detectionLimit([1, Number.NaN], [])).toThrow(/^blanksRlu.1 must/);
  expect(() => detectionLimit([1, 2], [{ level: 1, rlu: Number.NaN }])).toThrow(/^lows.0.rlu must/);
});
