import { describe, expect, it, test } from 'vitest';
import { loadByComposition, loadByTitration } from './acidLoad.ts';
import { sayEnamel, workOutAdded } from './addedCalcium.ts';
import { amountFields, strengthFields, workOutFluoride } from './fluorideFigures.ts';
import { protocolProblems, rinseFields, workOutRinse } from './hypochloriteRinse.ts';
import { measuredOf, typedOf } from './measuredFluids.ts';
import { readNumbers } from './readNumbers.ts';
import { sayAmount, sayIndex } from './sayAmount.ts';
import { sayRefusal } from './useWorkOut.ts';

describe('readNumbers', () => {
  it('names every field with what is allowed, and takes both decimal signs', () => {
    const typed = { targetPercent: '0.26', stockPercent: '', volumeMl: '1,250' };
    expect(readNumbers(typed, rinseFields, {})).toEqual({
      isComplete: false,
      problems: {
        targetPercent: 'Strength that the protocol says must be above 0 and at most 0.25 % sodium hypochlorite, weight by volume.',
        stockPercent: 'Strength on the bottle must be above 0 and at most 20 %.',
        volumeMl: 'Rinse to be made must be above 0 and at most 5000 mL. Write 1250 without the comma.',
      },
    });
    expect(readNumbers({ targetPercent: '0,25', stockPercent: '5.25', volumeMl: '250' }, rinseFields, {})).toMatchObject({
      isComplete: true,
      numbers: { targetPercent: 0.25, stockPercent: 5.25, volumeMl: 250 },
    });
  });

  it.each(['0', '0.0'])('takes no %s where something is needed', (text) => {
    expect(readNumbers({ use: text }, {}, amountFields('mL')).problems).toHaveProperty('use');
  });

  it('leaves what is empty out, never as zero', () => {
    expect(readNumbers({ strength: '0.05', use: ' ' }, strengthFields('NaF'), amountFields('mL'))).toEqual({
      isComplete: true,
      numbers: { strength: 0.05 },
      problems: {},
    });
  });
});

// Masses of IUPAC (atomicMasses, table read), worked out once outside this repository (derived). Tolerance: the last printed place.
test.each([
  { labelOf: 'NaF', strength: 0.05, ppm: 226.2, use: 10, mg: 2.3 },
  { labelOf: 'NaF', strength: 5, ppm: 22_623, use: 0.25, mg: 5.66 },
  { labelOf: 'SnF2', strength: 0.4, ppm: 970, use: 1, mg: 0.97 },
  { labelOf: 'Na2PO3F', strength: 1.14, ppm: 1505, use: 1, mg: 1.5 },
  { labelOf: 'ppm', strength: 226, ppm: 226, use: 15, mg: 3.4 },
] as const)('$strength of $labelOf is $ppm ppm, $mg mg in one use', ({ labelOf, strength, ppm, use, mg }) => {
  const figures = workOutFluoride({ strength, use, pack: 500 }, labelOf, 'mL');
  expect(Math.abs(figures.ppm - ppm)).toBeLessThan(Number.isInteger(ppm) ? 0.6 : 0.06);
  expect(figures.mgPerUse).toBeCloseTo(mg, 1);
  expect(figures.mgPerPack).toBeCloseTo(figures.ppm / 2, 8);
  expect(workOutFluoride({ strength }, labelOf, 'g')).toMatchObject({ mgPerUse: undefined, mgPerPack: undefined });
});

describe('hypochlorite', () => {
  const whole = { name: 'Gum rinse', by: 'A. Dentist', date: '2026-09-01' };
  const today = '2026-11-26';

  it('is off without a named, written and dated protocol', () => {
    expect(protocolProblems(whole, today)).toEqual({});
    expect(Object.keys(protocolProblems({ name: ' ', by: '', date: '' }, today))).toEqual(['name', 'by', 'date']);
    expect(protocolProblems({ ...whole, date: '2026-11-27' }, today)).toEqual({ date: 'Date of the protocol must be today or before.' });
    expect(protocolProblems({ ...whole, date: '2026-02-31' }, today)).toHaveProperty('date');
  });

  it('refuses above the highest strength in the arithmetic too', () => {
    const numbers = { targetPercent: 0.25, stockPercent: 5, volumeMl: 250 };
    expect(workOutRinse(numbers, 'sodium-hypochlorite').stockMl).toBeCloseTo(12.5, 10);
    expect(() => workOutRinse({ ...numbers, targetPercent: 0.2501 }, 'sodium-hypochlorite')).toThrow(
      /^targetPercent must .* at most 0.25 %/,
    );
  });
});

describe('acid', () => {
  // Mean of fruit juices, mL of 1 M alkali for 50 mL (drinkGroups, read).
  it('counts a titration for a litre and a portion', () => {
    expect(loadByTitration({ baseMl: 2.5, portionMl: 200 })).toEqual({
      mmolPerL: 50,
      mmolPerPortion: 10,
      pH: undefined,
      takenAsNone: undefined,
    });
  });

  it('says which acids of a composition were left empty', () => {
    const load = loadByComposition({ pH: 3, acetate: 20 });
    expect(load.takenAsNone).toEqual(['lactate', 'phosphate', 'carbonate']);
    expect(load.mmolPerL).toBeGreaterThan(18);
    expect(load.mmolPerPortion).toBeUndefined();
  });
});

describe('added calcium', () => {
  // larsenNyvad1999, a copy of the article read: juice of pH 4 with 40 mmol calcium and 30 mmol phosphate. Citrate is not counted.
  const juice = { pH: 4, calcium: 2, phosphate: 5, potassium: 50 };

  it('sets a drink as it is beside what it becomes', () => {
    const figures = workOutAdded({ ...juice, addedCalcium: 38, addedPhosphate: 25 });
    expect(figures.before.saturationIndex.hydroxyapatite).toBeLessThan(-5);
    expect(figures.after.saturationIndex.hydroxyapatite).toBeGreaterThan(0);
    expect(figures).toMatchObject({ isAnythingAdded: true, isFluorideKnown: false });
    expect(figures.takenAsNone).not.toContain('potassium');
    expect(figures.after.saturationIndex.fluorapatite).toBeNull();
  });

  it('does not add fluoride to what is not known', () => {
    expect(() => workOutAdded({ ...juice, addedFluoridePpm: 5 })).toThrow(/^fluoridePpm must be given/);
    expect(workOutAdded({ ...juice, fluoridePpm: 0, addedFluoridePpm: 5 }).after.saturationIndex.fluorapatite).not.toBeNull();
  });

  it('says what becomes of enamel', () => {
    // Sources give a pK of 57.7 to 58.8 (constants37); the index is at 57.77.
    expect([null, -1.1, -0.9, 0, 0.1].map(sayEnamel)).toEqual([
      'enamel dissolves in it, for it holds no calcium or no phosphate',
      'enamel can dissolve in it',
      'it is too close to call whether enamel dissolves in it',
      'it is too close to call whether enamel dissolves in it',
      'enamel does not dissolve in it',
    ]);
  });
});

test('what was measured is mmol/L, and what is empty stays not measured', () => {
  const { saliva, plaqueFluid } = measuredOf({ salivaCalcium: 1.2, salivaFluoride: 0.019 });
  expect(saliva).toEqual({ calcium: 1.2, phosphate: undefined, fluoride: expect.closeTo(0.001, 5) });
  expect(Object.values(plaqueFluid)).toEqual([undefined, undefined, undefined]);
  expect(typedOf(undefined)).toEqual({});
  expect(typedOf({ calciumMmolPerL: 1.2, phosphateMmolPerL: 4 })).toEqual({ salivaCalcium: '1.2', salivaPhosphate: '4' });
});

test('a refusal of the arithmetic is said by the label of its field', () => {
  const refused = (message: string) => sayRefusal(new RangeError(message), rinseFields);
  expect(refused('stockPercent must be at least as strong as the target of 0.2 %: 0.1')).toEqual({
    stockPercent: 'Strength on the bottle must be at least as strong as the target of 0.2 %: 0.1.',
  });
  expect(refused('totalsMmolPerKg must give an ionic strength of at most 0.5 mol/kg')).toEqual({
    '': 'The amounts together must give an ionic strength of at most 0.5 mol/kg.',
  });
});

test('figures keep three places, and every whole one', () => {
  expect([5.6557, 22_623.4, 0.04567, 226.2].map(sayAmount)).toEqual(['5.66', '22,623', '0.0457', '226']);
  expect([-7.64, 0.31, -0.04].map(sayIndex)).toEqual(['−7.6', '+0.3', '0.0']);
});
