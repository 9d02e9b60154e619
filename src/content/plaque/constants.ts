import type { PlaqueConstant, PlaqueConstants, SourcedNumber } from '../../core/plaque/types.ts';
import type { SourceRef } from '../../core/visit/answer.ts';

const ours = (note: string): SourceRef => ({ key: 'project', status: 'proposal', note });
const fixedPlaque: SourceRef = { key: 'plaqueDiffusion', status: 'read', note: 'fixed plaque, 37 °C; a second study found less' };
const quarterOfWater = ours('a third to a quarter of that in water, as for the solutes that were measured');
const inWater: SourceRef = { key: 'diffusionInWater', status: 'memory', note: 'in water at 37 °C' };
const davies: SourceRef = { key: 'davies1962', status: 'derived', note: 'from the constants at 37 °C, to ionic strength 0.15 by Davies' };
const shellisDibdin: SourceRef = {
  key: 'shellisDibdin1988',
  status: 'proposal',
  note: 'that about nine tenths of the buffering are fixed, strong at pH 4 to 5.5 and 8 to 9, was read; the amounts are ours',
};
const bardow: SourceRef = { key: 'bardow2000', status: 'derived', note: 'line through the means of unstimulated and stimulated saliva' };

/** A number of the model, with the range within which a tuned one is varied. */
function row(value: number, unit: string, source: SourceRef, range?: readonly [low: number, high: number]): SourcedNumber {
  return range ? { value, unit, low: range[0], high: range[1], source } : { value, unit, source };
}

/**
 * Numbers of the model of plaque that are the same for everybody. Tuned means: chosen here so that published curves come out. Nothing else
 * was fitted.
 */
export const plaqueConstants: Readonly<Record<PlaqueConstant, SourcedNumber>> = {
  plaqueDiffusionSugar: row(3, '1e-10 m2/s', fixedPlaque),
  plaqueDiffusionLactate: row(4.8, '1e-10 m2/s', fixedPlaque),
  plaqueDiffusionAcetate: row(5, '1e-10 m2/s', fixedPlaque),
  plaqueDiffusionPhosphate: row(4, '1e-10 m2/s', quarterOfWater),
  plaqueDiffusionCarbonate: row(6, '1e-10 m2/s', quarterOfWater),
  plaqueDiffusionUrea: row(5.5, '1e-10 m2/s', quarterOfWater),
  plaqueDiffusionAmmonia: row(7, '1e-10 m2/s', quarterOfWater),
  plaqueDiffusionProton: row(15, '1e-10 m2/s', quarterOfWater),
  filmDiffusionSugar: row(7, '1e-10 m2/s', inWater),
  filmDiffusionLactate: row(13, '1e-10 m2/s', inWater),
  filmDiffusionAcetate: row(15, '1e-10 m2/s', inWater),
  filmDiffusionPhosphate: row(12, '1e-10 m2/s', inWater),
  filmDiffusionCarbonate: row(18, '1e-10 m2/s', inWater),
  filmDiffusionUrea: row(18, '1e-10 m2/s', inWater),
  filmDiffusionAmmonia: row(25, '1e-10 m2/s', inWater),
  filmDiffusionProton: row(70, '1e-10 m2/s', inWater),
  filmThicknessMm: row(0.1, 'mm', { key: 'dawes1989', status: 'read', note: 'abstract; 0.06 to 0.09 mm in children' }),
  filmLengthMm: row(5, 'mm', ours('length of plaque that the film passes'), [3, 8]),
  filmVelocityFlowMlPerMin: row(0.32, 'mL/min', ours('resting flow at which the velocities of the sites are taken')),
  filmVelocityLeastFactor: row(0.02, '', ours('the film never stands quite still')),
  filmVelocityMostFactor: row(40, '', { key: 'dawes1989velocity', status: 'read', note: 'abstract: 2 to 40 times on stimulation' }),
  rinseExchangePerS: row(1, '1/s', ours('a rinse renews the film within seconds'), [0.5, 2]),
  eatingExchangePerS: row(0.075, '1/s', ours('food and drink renew the film within a quarter of a minute'), [0.05, 0.1]),
  mixingTimeS: row(5, 's', ours('in which the fluid around the teeth becomes the food'), [3, 10]),
  lacticPk: row(3.75, 'pH', davies),
  aceticPk: row(4.64, 'pH', davies),
  phosphatePk: row(6.82, 'pH', davies),
  carbonicPk: row(6.1, 'pH', {
    key: 'bardow2000',
    status: 'derived',
    note: 'Davies would give 6.18; 6.1 is kept because it reproduces the published pH of saliva, 6.79 for 6.8',
  }),
  bicarbonatePk: row(9.87, 'pH', davies),
  ammoniumPk: row(9, 'pH', { key: 'oralHandbook', status: 'memory', note: '37 °C, ionic strength 0.15: 8.9 to 9.1' }),
  waterPk: row(13.5, 'pH', davies),
  fixedBuffer1MmolPerL: row(90, 'mmol/L', shellisDibdin, [60, 120]),
  fixedBuffer2MmolPerL: row(35, 'mmol/L', shellisDibdin, [22, 48]),
  fixedBuffer3MmolPerL: row(20, 'mmol/L', shellisDibdin, [13, 27]),
  fixedBuffer4MmolPerL: row(60, 'mmol/L', shellisDibdin, [40, 80]),
  fixedBuffer1Pk: row(4.3, 'pH', shellisDibdin),
  fixedBuffer2Pk: row(5.6, 'pH', shellisDibdin),
  fixedBuffer3Pk: row(7, 'pH', shellisDibdin),
  fixedBuffer4Pk: row(8.8, 'pH', shellisDibdin),
  uptakeHalfMmolPerL: row(1, 'mmol/L', ours('concentration of sugar at which uptake is half its fastest'), [0.5, 2]),
  sensitiveHalfPh: row(5.6, 'pH', {
    key: 'benderMarquis1986',
    status: 'proposal',
    note: 'that the rate falls steadily with pH, and that species differ, was read; the midpoints are ours',
  }),
  aciduricHalfPh: row(4.6, 'pH', ours('midpoint of the rate of bacteria that go on making acid in acid'), [4.3, 4.9]),
  phSlope: row(1.3, '1/pH', ours('how steeply the rate falls with pH'), [1, 1.7]),
  lactateYield: row(0.8, 'of each half of a hexose', ours('mostly lactate from plenty of sugar'), [0.7, 0.9]),
  acetateYield: row(0.1, 'of each half of a hexose', ours('mostly lactate from plenty of sugar')),
  scarceLactateYield: row(
    0.3,
    'mol per mol of hexose',
    ours('mixed acids from scarce sugar; the carbon left over is formate and ethanol, which the model does not carry'),
  ),
  scarceAcetateYield: row(1.4, 'mol per mol of hexose', ours('mixed acids from scarce sugar')),
  carbonateYield: row(0.2, 'mol per mol of hexose', ours('carbon dioxide beside the acids')),
  storedShare: row(0.1, '', ours('share of the sugar taken up that is stored'), [0.05, 0.2]),
  storeUsePerS: row(3e-4, '1/s', ours('how fast stored sugar is used once none comes'), [1.5e-4, 6e-4]),
  storeMostMmolPerL: row(120, 'mmol/L', ours('where the store is full')),
  basalAcidMmolPerLPerS: row(0.013, 'mmol/L/s', ours('acid from what saliva always brings; sets the pH at rest'), [0.01, 0.016]),
  basalDepthMm: row(0.43, 'mm', {
    key: 'project',
    status: 'derived',
    note: 'how deep 2 mmol/L of bound sugar of saliva reaches when used at the basal rate: the root of 2 x diffusion x concentration / rate',
  }),
  ureaseMmolPerLPerS: row(0.45, 'mmol/L/s', ours('fastest splitting of urea'), [0.3, 0.7]),
  ureaseHalfMmolPerL: row(50, 'mmol/L', ours('urea at which splitting is half its fastest'), [25, 75]),
  salivaCarbonDioxideMmolPerL: row(0.9, 'mmol/L', bardow),
  salivaBicarbonateAtRest: row(1.77, 'mmol/L at no flow', bardow),
  salivaBicarbonatePerFlow: row(4.775, 'mmol/L for each mL/min', bardow),
  salivaBicarbonateMost: row(25, 'mmol/L', { key: 'salivaBicarbonate', status: 'read', note: 'abstract: never above that of plasma' }),
  salivaPhosphateLowFlow: row(5, 'mmol/L', bardow),
  salivaPhosphateHighFlow: row(4, 'mmol/L', bardow),
  salivaUreaLowFlow: row(3.5, 'mmol/L', { key: 'oralHandbook', status: 'memory', note: 'below plasma; less at high flow' }),
  salivaUreaHighFlow: row(2.5, 'mmol/L', { key: 'oralHandbook', status: 'memory', note: 'below plasma; less at high flow' }),
  salivaLowFlowMlPerMin: row(0.3, 'mL/min', ours('below it phosphate and urea of saliva no longer change')),
  salivaHighFlowMlPerMin: row(1.5, 'mL/min', ours('above it phosphate and urea of saliva no longer change')),
  salivaAcetateMmolPerL: row(1, 'mmol/L', ours('acetate of saliva')),
  flowPerHexose: row(0.00075, 'mL/min for each mmol/L of hexose', {
    key: 'watanabeDawes1988',
    status: 'derived',
    note: '3.8 mL/min on 80 % sucrose against 0.32 at rest, in proportion',
  }),
};

/** The values alone, as the model takes them. */
export const plaqueValues: PlaqueConstants = valuesOf(plaqueConstants);

function valuesOf(table: Readonly<Record<PlaqueConstant, SourcedNumber>>): PlaqueConstants {
  return Object.fromEntries(Object.entries(table).map(([name, { value }]) => [name, value])) as unknown as PlaqueConstants;
}
