import { describe, expect, it } from 'vitest';
import { oralFluids } from '../../content/oralFluids.ts';
import { criticalPh } from './criticalPh.ts';
import { fluidCriticalPh } from './fluidCriticalPh.ts';
import { sayCriticalPh } from './sayCriticalPh.ts';

const { saliva, plaqueFluid } = oralFluids;

describe('fluidCriticalPh', () => {
  it('is typical where nothing was measured, with a range', () => {
    const typical = fluidCriticalPh(saliva);
    expect(typical).toMatchObject({ basis: 'typical', measured: [] });
    expect(typical.pH).toBeCloseTo(5.3, 1);
    expect(typical.range).toEqual({ low: expect.closeTo(5.11, 1), high: expect.closeTo(5.47, 1) });
    expect(typical.sources.map(({ key }) => key)).toEqual(expect.arrayContaining(['shellis1993', 'bardow2000', 'oralHandbook']));
  });

  it('is lower in plaque fluid', () => {
    const plaque = fluidCriticalPh(plaqueFluid);
    expect(plaque.pH).toBeCloseTo(4.9, 1);
    expect(plaque.range?.high ?? 9).toBeLessThan(fluidCriticalPh(saliva).pH ?? 0);
  });

  it('takes what was measured, and says so', () => {
    const measured = fluidCriticalPh(saliva, { calcium: 2, phosphate: 7 });
    expect(measured).toMatchObject({ basis: 'measured', measured: ['calcium', 'phosphate'] });
    expect(measured.assumed).not.toContain('calcium');
    const { carbonate, sodium, potassium, chloride, fluoride } = Object.fromEntries(
      Object.entries(saliva.ions).map(([ion, { typical }]) => [ion, typical]),
    );
    expect(measured.pH).toBe(criticalPh({ calcium: 2, phosphate: 7, carbonate, sodium, potassium, chloride, fluoride }, 'enamel'));
    // Fluoride is all that is left to vary, and enamel hardly feels it.
    expect((measured.range?.high ?? 9) - (measured.range?.low ?? 0)).toBeLessThan(0.001);
  });

  it('is partly measured with one of the two, and its range is then narrower', () => {
    const partly = fluidCriticalPh(saliva, { calcium: 1.3 });
    const typical = fluidCriticalPh(saliva);
    const width = (of: typeof partly) => (of.range?.high ?? 9) - (of.range?.low ?? 0);
    expect(partly.basis).toBe('partly');
    expect(partly.pH).toBe(typical.pH);
    expect(width(partly)).toBeLessThan(width(typical));
  });

  it('has none where calcium was measured as absent, and says so', () => {
    expect(fluidCriticalPh(saliva, { calcium: 0 })).toMatchObject({ pH: null, range: null });
  });

  it('names what it cannot take', () => {
    expect(() => fluidCriticalPh(saliva, { calcium: -1 })).toThrow(/^measured.calcium must be 0..1000/);
  });
});

describe('sayCriticalPh', () => {
  it('never calls typical what is measured, or the other way round', () => {
    expect(sayCriticalPh(fluidCriticalPh(saliva), saliva.name)).toBe(
      '5.3 for typical saliva (not measured here; 5.1 to 5.5 as people vary)',
    );
    expect(sayCriticalPh(fluidCriticalPh(saliva, { calcium: 1.3, phosphate: 5 }), 'saliva')).toBe(
      '5.3 from the calcium and phosphate measured in saliva',
    );
    expect(sayCriticalPh(fluidCriticalPh(saliva, { phosphate: 5 }), 'saliva')).toMatch(
      /^5.3 for saliva \(measured in part; 5.\d to 5.\d with/,
    );
    expect(sayCriticalPh(fluidCriticalPh(saliva, { calcium: 0 }), 'saliva')).toMatch(/^no critical pH for this saliva/);
  });
});
