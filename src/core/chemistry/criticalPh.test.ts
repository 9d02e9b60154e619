import { readFileSync } from 'node:fs';
import { describe, expect, it, test } from 'vitest';
import { criticalPh } from './criticalPh.ts';
import { saturation } from './saturation.ts';
import type { Mineral, Totals } from './types.ts';

interface Case {
  readonly id: string;
  readonly totalsMmolPerKg: Totals;
  readonly criticalPh: Partial<Record<Mineral, number>>;
}
const reference: { criticalPh: readonly Case[] } = JSON.parse(readFileSync('test/reference/chemistry/data.json', 'utf8'));

// PHREEQC 3.8.8-39-g8176af0c (test/reference/chemistry), error below 0.0005. Tolerance asked: 0.005; held: 0.0005.
test.each(reference.criticalPh)('$id', ({ totalsMmolPerKg, criticalPh: theirs }) => {
  for (const [mineral, pH] of Object.entries(theirs) as [Mineral, number][]) {
    expect([mineral, criticalPh(totalsMmolPerKg, mineral)]).toEqual([mineral, expect.closeTo(pH, 3)]);
  }
  expect(Object.keys(theirs).length).toBeGreaterThan(2);
});

describe('criticalPh', () => {
  const saliva: Totals = { calcium: 1.3, phosphate: 5, fluoride: 0.001, sodium: 8, potassium: 22, chloride: 25 };

  it('is where the index is 0', () => {
    const pH = criticalPh(saliva, 'enamel') ?? 0;
    expect(Math.abs(saturation(saliva, pH).saturationIndex.enamel ?? 1)).toBeLessThan(1e-8);
  });

  it('is null without an ion of the mineral, and where the fluid is never saturated', () => {
    expect(criticalPh({ ...saliva, fluoride: 0 }, 'fluorapatite')).toBeNull();
    expect(criticalPh({ ...saliva, calcium: 0 }, 'hydroxyapatite')).toBeNull();
    expect(criticalPh({ calcium: 1e-6, phosphate: 1e-6 }, 'hydroxyapatite')).toBeNull();
  });

  it('is null where the fluid is saturated even at pH 2', () => {
    expect(criticalPh({ calcium: 1, fluoride: 500 }, 'fluorite')).toBeNull();
  });

  it('names what makes the fluid too strong', () => {
    expect(() => criticalPh({ ...saliva, sodium: 700, chloride: 700 }, 'enamel')).toThrow(/^totalsMmolPerKg must/);
  });
});
