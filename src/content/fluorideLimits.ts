import type {
  FluorideLimit,
  FluorideTables,
  PackLimit,
  PasteAmount,
  SwallowedShare,
  VarnishAmount,
  VisitFluoride,
} from '../core/regimen/tables.ts';
import type { SourceRef } from '../core/visit/answer.ts';
import { weightForAge } from './weightForAge.ts';

const read = (key: string, note?: string): SourceRef => ({ key, status: 'read', note });
const mixed = (key: string, note?: string): SourceRef => ({ key, status: 'mixed', note });

const MONTHS = 12;
const ADULT_END = 200 * MONTHS;

const iom = (fromAgeMonths: number, belowAgeMonths: number, value: number, source: SourceRef): FluorideLimit => ({
  name: 'Upper intake level, US 1997',
  kind: 'upper-intake-level',
  unit: 'mg/day',
  fromAgeMonths,
  belowAgeMonths,
  value,
  source,
});
const efsa = (kind: 'upper-intake-level' | 'safe-level', fromAgeMonths: number, belowAgeMonths: number, value: number): FluorideLimit => ({
  name: kind === 'safe-level' ? 'Safe level, European 2025' : 'Upper intake level, European 2025',
  kind,
  unit: 'mg/day',
  fromAgeMonths,
  belowAgeMonths,
  value,
  source: read('efsa2025'),
});
const LABEL = 'Label of 2,800 and 5,000 ppm fluoride pastes (UK), all sources together';

/** Named limits of fluoride a day, each with its kind. Bands are half-open in completed months; the band 4 to 8 years ends at 9. */
export const fluorideLimits: readonly FluorideLimit[] = [
  iom(0, 7, 0.7, read('iom1997')),
  iom(7, 12, 0.9, read('iom1997')),
  iom(12, 48, 1.3, read('iom1997')),
  iom(48, 108, 2.2, read('iom1997', 'secondary table, and 0.10 mg/kg at 22 kg')),
  iom(108, ADULT_END, 10, read('iom1997')),
  {
    name: 'Upper intake level per kg, US 1997',
    kind: 'upper-intake-level',
    unit: 'mg/kg/day',
    fromAgeMonths: 0,
    belowAgeMonths: 108,
    value: 0.1,
    source: read('iom1997'),
  },
  efsa('upper-intake-level', 0, 12, 1),
  efsa('upper-intake-level', 12, 48, 1.6),
  efsa('upper-intake-level', 48, 108, 2),
  efsa('safe-level', 108, ADULT_END, 3.3),
  {
    name: LABEL,
    kind: 'label-cap',
    unit: 'mg/kg/day',
    fromAgeMonths: 0,
    belowAgeMonths: ADULT_END,
    value: 0.05,
    source: read('smpcHighFluoride'),
  },
  {
    name: LABEL,
    kind: 'label-cap',
    unit: 'mg/day',
    fromAgeMonths: 0,
    belowAgeMonths: ADULT_END,
    value: 1,
    source: read('smpcHighFluoride'),
  },
  {
    name: 'Adequate intake',
    kind: 'intake-target',
    unit: 'mg/kg/day',
    fromAgeMonths: 6,
    belowAgeMonths: ADULT_END,
    value: 0.05,
    source: read('iom1997'),
  },
];

const ourShare: SourceRef = {
  key: 'project',
  status: 'derived',
  note: 'share swallowed: ours, above the means that were read (0.62 at 3 to 4 years, 0.14 at 8 to 12)',
};

/** Share of paste or rinse taken as swallowed in checks of limits. */
export const swallowedShares: readonly SwallowedShare[] = [
  { fromAgeYears: 0, belowAgeYears: 6, fraction: 1, source: ourShare },
  { fromAgeYears: 6, belowAgeYears: 9, fraction: 0.35, source: ourShare },
  { fromAgeYears: 9, belowAgeYears: 13, fraction: 0.2, source: ourShare },
  { fromAgeYears: 13, belowAgeYears: 200, fraction: 0.1, source: ourShare },
];

/** Varnish and gel at most every 3 months; of a gel what stays with suction and spitting out, the upper figure. */
export const visitFluoride: readonly VisitFluoride[] = [
  { agentId: 'F_VARNISH', timesPerYear: 4, source: read('varnishMonographs', 'every 6 months, may be every 3') },
  {
    agentId: 'F_GEL_APF',
    timesPerYear: 4,
    mostMgSwallowed: 7.5,
    source: read('lecompte1987', '2 to 7.5 mg stay with suction and spitting out; every 3 to 6 months (ada2013)'),
  },
  { agentId: 'SDF38', timesPerYear: 2, source: read('slayton2018') },
];

/** 2.26 % fluoride. */
const VARNISH_MG_PER_ML = 22.6;

/** Emergency from 5 mg/kg. Less is not declared harmless. */
export const EMERGENCY_MG_PER_KG = 5;
/** Source of the emergency dose, for pages that name it. */
export const emergencySource: SourceRef = read('whitford1987');

export const fluorideTables: FluorideTables = {
  limits: fluorideLimits,
  weights: weightForAge,
  swallowed: swallowedShares,
  atVisit: visitFluoride,
  varnishMgPerMl: VARNISH_MG_PER_ML,
  homeRinse: { ppm: 226, amountMl: 10, source: read('rinseLabels', '10 mL once a day') },
  emergencyMgPerKg: EMERGENCY_MG_PER_KG,
};

/** Most fluoride in one pack for the home. Packs for the practice are exempt. */
export const packLimits = [
  { id: 'paste-pack', name: 'Pack of toothpaste without prescription, US', mgF: 276, source: read('fdaMonograph', 'section 20(a)(1)') },
  {
    id: 'gel-or-rinse-pack',
    name: 'Pack of gel or rinse without prescription, US',
    mgF: 120,
    source: read('fdaMonograph', 'section 20(a)(2)'),
  },
  {
    id: 'dispensed-at-once',
    name: 'Dispensed at one time, older council advice: 264 mg sodium fluoride',
    mgF: 120,
    source: read('bayless1985', 'one tube of 5,000 ppm (255 mg) or 2,800 ppm (280 mg) is above it: P08 warns where a young child lives'),
  },
] as const satisfies readonly PackLimit[];

/** Paste a time, twice a day. The pea holds through age 6. */
export const pasteAmounts: readonly PasteAmount[] = [
  {
    fromAgeYears: 0,
    belowAgeYears: 3,
    kind: 'smear',
    amount: 'a smear, like a grain of rice',
    amountG: 0.1,
    preferredPpm: [850, 1_150],
    note: 'An adult brushes.',
    source: read('adaPaste'),
  },
  {
    fromAgeYears: 3,
    belowAgeYears: 6,
    kind: 'pea',
    amount: 'the size of a pea',
    amountG: 0.25,
    preferredPpm: [850, 1_150],
    note: 'An adult puts it on and helps. Spit out or wipe off, do not rinse.',
    source: mixed('AAPD2022p270', 'with the UK toolkit: pea through age 6'),
  },
  {
    fromAgeYears: 6,
    belowAgeYears: 7,
    kind: 'pea',
    amount: 'the size of a pea',
    amountG: 0.25,
    preferredPpm: [1_350, 1_600],
    note: 'An adult puts it on and helps. Spit out or wipe off, do not rinse.',
    source: mixed('AAPD2022p270', 'with the UK toolkit: pea through age 6'),
  },
  {
    fromAgeYears: 7,
    belowAgeYears: 200,
    kind: 'ribbon',
    amount: 'a ribbon of 1 to 2 cm',
    amountG: 1,
    preferredPpm: [1_350, 1_600],
    note: 'Spit out, do not rinse.',
    source: mixed('preventionToolkit', 'weight of a ribbon from memory'),
  },
];

const ofTeeth = read('varnishMonographs', 'amounts by teeth; which ages have them is ours');

/** Most varnish a visit, by the usual teeth of the age. */
export const varnishAmounts: readonly VarnishAmount[] = [
  { fromAgeYears: 0, belowAgeYears: 6, amountMl: 0.25, note: 'At most 0.25 mL for primary teeth.', source: ofTeeth },
  { fromAgeYears: 6, belowAgeYears: 12, amountMl: 0.4, note: 'At most 0.4 mL for mixed teeth.', source: ofTeeth },
  { fromAgeYears: 12, belowAgeYears: 200, amountMl: 0.75, note: 'At most 0.75 mL for permanent teeth.', source: ofTeeth },
];
