import fc from 'fast-check';
import { allergens } from '../../src/content/allergens.ts';
import { conditions } from '../../src/content/conditions.ts';
import type { OtherFluoride, PersonFacts } from '../../src/core/regimen/types.ts';

const unknownOr = <T>(value: fc.Arbitrary<T>, weight = 4) =>
  fc.oneof({ weight: 1, arbitrary: fc.constant(undefined) }, { weight, arbitrary: value });
const flag = unknownOr(fc.boolean(), 9);
const mostlyNo = unknownOr(fc.oneof({ weight: 5, arbitrary: fc.constant(false) }, { weight: 1, arbitrary: fc.constant(true) }), 12);
const listOf = (ids: readonly string[]) =>
  unknownOr(
    fc.oneof(
      { weight: 3, arbitrary: fc.constant<string[]>([]) },
      { weight: 2, arbitrary: fc.uniqueArray(fc.constantFrom(...ids), { minLength: 1, maxLength: 2 }) },
    ),
    12,
  );

const ALLERGIES = allergens.map((a) => a.id);
const MEDICINES = [
  'insulin',
  'other-glucose-lowering',
  'glp-1-agonist',
  'disulfiram-or-metronidazole',
  'lithium',
  'thyroid-medicine',
  'ssri-snri',
  'other',
];
const CONDITIONS = conditions.map((c) => c.id);

/** Half of the ages stand at a limit of some rule, on the birthday or the month before the next one. */
const LIMIT_AGES = [0, 1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12, 15, 16, 17, 18];
const ageMonths = fc.oneof(
  fc.constantFrom(...LIMIT_AGES.flatMap((years) => [years * 12, years * 12 + 11]), 5, 6, 23, 24),
  fc.integer({ min: 0, max: 95 * 12 }),
);
/** Anybody, with anything unknown. */
export const anyone: fc.Arbitrary<PersonFacts> = ageMonths.chain((months) =>
  fc.record({
    ageYears: fc.constant(Math.floor(months / 12)),
    ageMonths: fc.constant(months),
    weightKg: unknownOr(
      fc.oneof(
        fc.constantFrom(4, 9.9, 10, 13, 20, 46.3),
        fc.double({ min: Math.min(40, 3 + months / 6), max: Math.min(180, 12 + months), noNaN: true }),
      ),
      3,
    ),
    pregnant: mostlyNo,
    breastfeeding: mostlyNo,
    canSpit: flag,
    allergies: listOf(ALLERGIES),
    medicines: listOf(MEDICINES),
    conditions: listOf(CONDITIONS),
    dogAtHome: flag,
    youngChildAtHome: flag,
    dryMouth: mostlyNo,
    dentures: mostlyNo,
    braces: mostlyNo,
    jawPain: mostlyNo,
    waterFluorideMgPerL: unknownOr(fc.constantFrom(0, 0.3, 0.6, 0.7, 1.5)),
    waterLitresPerDay: unknownOr(fc.constantFrom(0, 0.5, 2), 1),
    otherFluoride: unknownOr(
      fc.constantFrom<OtherFluoride[]>(
        [],
        [],
        ['fluoridated-salt'],
        ['fluoride-tablets-or-drops', 'other'],
        ['naf-rinse-daily', 'fluoridated-salt'],
      ),
      2,
    ),
    saltFluorideMgPerKg: unknownOr(fc.constantFrom(0, 250, 350)),
    saltGPerDay: unknownOr(fc.constantFrom(0, 2, 6)),
    supplementFluorideMgPerDay: unknownOr(fc.constantFrom(0, 0.25, 1)),
    varnishDaysPerYear: unknownOr(fc.constantFrom(0, 2, 4)),
    strongPasteInUse: flag,
    waterFluoridated: flag,
  }),
);

/** Nothing unknown and nothing wrong: whoever gets past the rules, so that what must hold between packs is looked at too. */
export const nothingWrong: fc.Arbitrary<PersonFacts> = ageMonths.map((months) => ({
  ageYears: Math.floor(months / 12),
  ageMonths: months,
  weightKg: Math.min(70, 4 + months / 4),
  pregnant: false,
  breastfeeding: false,
  canSpit: months >= 72,
  allergies: [],
  medicines: [],
  conditions: [],
  dogAtHome: false,
  youngChildAtHome: false,
  dryMouth: false,
  dentures: false,
  braces: false,
  jawPain: false,
  waterFluorideMgPerL: 0.3,
  waterLitresPerDay: 1,
  otherFluoride: [],
  varnishDaysPerYear: 0,
  strongPasteInUse: false,
  waterFluoridated: false,
}));
