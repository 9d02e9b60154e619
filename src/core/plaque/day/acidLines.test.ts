import { describe, expect, it } from 'vitest';
import { dayTables } from '../../../content/plaque/dayTables.ts';
import { mouthPresets } from '../../../content/plaque/presets.ts';
import { acidLines, findAcidSide } from './acidLines.ts';
import { buildDayModel } from './dayModel.ts';
import { mineralIndex } from './mineralIndex.ts';
import { runDay } from './runDay.ts';

describe('acidLines', () => {
  // honest-words: 5.3 for typical saliva, 4.9 for typical plaque fluid; tolerance 0.05, as they are said to one place.
  it('has the fluids that were not measured where they are said to be', () => {
    const lines = acidLines(dayTables);
    expect(lines.map(({ id }) => id)).toEqual(['ph-5.7', 'ph-5.5', 'ph-5.0', 'saliva', 'plaque-fluid']);
    const [, , , saliva, fluid] = lines;
    expect(Math.abs((saliva?.ph ?? 0) - 5.3)).toBeLessThan(0.05);
    expect(Math.abs((fluid?.ph ?? 0) - 4.9)).toBeLessThan(0.05);
    expect(saliva?.says).toBe('5.3 for typical saliva (not measured)');
    expect(saliva?.range?.low).toBeLessThan(saliva?.ph ?? 0);
    expect(saliva?.range?.high).toBeGreaterThan(saliva?.ph ?? 0);
    expect(findAcidSide(lines)).toBe(saliva);
  });

  it('takes what was measured, and says so; more calcium lowers the line', () => {
    const rich = acidLines(dayTables, { saliva: { calciumMmolPerL: 2, phosphateMmolPerL: 6 } })[3];
    expect(rich).toMatchObject({ measured: true, says: '5.1 for saliva as measured' });
    expect(rich?.range).toBeUndefined();
    const fluid = acidLines(dayTables, { plaqueFluid: { calciumMmolPerL: 7, phosphateMmolPerL: 23 } })[4];
    expect(fluid?.measured).toBe(true);
    expect(fluid?.ph).toBeLessThan(4.8);
  });

  it('names the fluid that has no critical pH', () => {
    expect(() => acidLines(dayTables, { saliva: { calciumMmolPerL: 0, phosphateMmolPerL: 5 } })).toThrow('saliva has no critical pH');
  });
});

describe('mineralIndex', () => {
  const { day, mouth } = dayTables.reference;
  const model = buildDayModel(mouth, dayTables);
  const curve = runDay(day, model, dayTables.foods);

  it('is 1 and 1 for the reference day, and less loss with fluoride in solution', () => {
    expect(mineralIndex(curve, dayTables)).toEqual({ loss: expect.closeTo(1, 9), gain: expect.closeTo(1, 9) });
    expect(mineralIndex(curve, dayTables, true).loss).toBeLessThan(1);
  });

  it('follows the pH: none of the loss at rest, none of the gain in acid', () => {
    expect(mineralIndex({ ph: new Float64Array(1441).fill(6.8) }, dayTables).loss).toBe(0);
    const acid = mineralIndex({ ph: new Float64Array(1441).fill(4.2) }, dayTables);
    expect(acid.gain).toBe(0);
    expect(acid.loss).toBeGreaterThan(1);
  });

  it('has a mouth that the tables name', () => {
    expect(mouth).toBe(mouthPresets.approximal);
  });
});
