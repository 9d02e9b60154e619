import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { fluorideContentPpm } from './fluorideContentPpm.ts';

const { ppm } = JSON.parse(readFileSync(new URL('../../../test/reference/regimen/data.json', import.meta.url), 'utf8')) as {
  ppm: Record<string, number>;
};

describe('strengths on sale', () => {
  // test/reference/regimen/data.json, ppm (derived from atomic masses, printed to whole ppm, 0.5 ppm or, for silver diamine fluoride,
  // 10 ppm). Tolerance: one unit of the last printed place (one row is cut off, not rounded); 5 ppm for the last row.
  test.each([
    { name: 'NaF 0.02%', compound: 'NaF', percent: 0.02 },
    { name: 'NaF 0.05%', compound: 'NaF', percent: 0.05 },
    { name: 'NaF 0.2%', compound: 'NaF', percent: 0.2 },
    { name: 'NaF 0.619%', compound: 'NaF', percent: 0.619 },
    { name: 'NaF 1.1%', compound: 'NaF', percent: 1.1 },
    { name: 'NaF 5% (varnish)', compound: 'NaF', percent: 5 },
    { name: 'SnF2 0.4%', compound: 'SnF2', percent: 0.4 },
    { name: 'SnF2 0.454%', compound: 'SnF2', percent: 0.454 },
    { name: 'MFP 0.76%', compound: 'Na2PO3F', percent: 0.76 },
    { name: 'MFP 1.14%', compound: 'Na2PO3F', percent: 1.14 },
    { name: 'SDF 38% w/v', compound: 'AgF(NH3)2', percent: 38 },
  ] as const)('$name', ({ name, compound, percent }) => {
    const printed = ppm[name];
    if (printed === undefined) throw new Error(`${name} is not in the reference`);
    const tolerance = compound === 'AgF(NH3)2' ? 5 : 1;
    expect(Math.abs(fluorideContentPpm(compound, percent) - printed)).toBeLessThanOrEqual(tolerance);
  });
});

test.each([Number.NaN, -1, 101, Number.POSITIVE_INFINITY])('refuses %s percent', (percent) => {
  expect(() => fluorideContentPpm('NaF', percent)).toThrow(RangeError);
});
