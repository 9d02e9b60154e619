import type { Chance } from './chance.ts';
import { addDays } from './days.ts';
import type { DemoName, DemoTrait } from './names.ts';

/** What stays with an invented person from visit to visit. */
export interface DemoProfile {
  readonly birthDate: string;
  readonly has: (trait: DemoTrait) => boolean;
  /** Leaning towards decay, standard normal; drives snacks, lesions and, weakly, readings. */
  readonly leaning: number;
  readonly snacksPerDay: number;
  readonly pasteTimesPerDay: number;
  /** Mean of the natural logarithm of this person's readings. */
  readonly meanLogRlu: number;
  readonly waterFluoridated: boolean;
  readonly medicines: readonly string[];
  readonly appliance: readonly string[];
  readonly household: readonly string[];
  /** Teeth with an old filling. */
  readonly filledTeeth: readonly string[];
}

/** Between people the readings spread about threefold; these two numbers are invented, as the meter is. */
const TYPICAL_RLU = 2_900;
const SD_LOG_BETWEEN_PEOPLE = 0.9;
const DAYS_PER_YEAR = 365.2425;
const FILLABLE_TEETH = ['16', '26', '36', '46', '15', '25', '37', '47', '14', '24'];

export function drawProfile({ ageYears, traits }: DemoName, chance: Chance, today: string): DemoProfile {
  const has = (trait: DemoTrait) => traits.includes(trait);
  const leaning = chance.normal();
  const isSchoolAge = ageYears >= 6 && ageYears < 20;
  return {
    birthDate: addDays(today, -Math.round(ageYears * DAYS_PER_YEAR + 2 + chance.fraction() * 360)),
    has,
    leaning,
    snacksPerDay: clamp(Math.round(2.2 + leaning + (isSchoolAge ? 1 : 0)), 0, 7),
    pasteTimesPerDay: chance.happens(0.8 - 0.12 * leaning) ? 2 : 1,
    meanLogRlu: Math.log(TYPICAL_RLU) + SD_LOG_BETWEEN_PEOPLE * (0.45 * leaning + 0.9 * chance.normal()),
    waterFluoridated: chance.happens(0.25),
    medicines: drawMedicines(ageYears, has, chance),
    appliance: drawAppliance(ageYears, has, chance),
    household: [
      ...(chance.happens(0.3) ? ['dog'] : []),
      ...(ageYears < 6 || (ageYears > 24 && ageYears < 45 && chance.happens(0.4)) ? ['young-child'] : []),
    ],
    filledTeeth: has('no-teeth')
      ? []
      : FILLABLE_TEETH.slice(0, ageYears < 14 ? 0 : chance.whole(0, Math.min(10, Math.floor(ageYears / 8)))),
  };
}

function drawMedicines(ageYears: number, has: DemoProfile['has'], chance: Chance): readonly string[] {
  const common =
    ageYears < 45
      ? []
      : ['ace-inhibitor', 'diuretic', 'beta-blocker', 'proton-pump-inhibitor'].filter(() => chance.happens(ageYears / 250));
  return [...common, ...(has('insulin') ? ['insulin'] : []), ...(has('dry-mouth') ? ['tricyclic-antidepressant'] : [])];
}

function drawAppliance(ageYears: number, has: DemoProfile['has'], chance: Chance): readonly string[] {
  if (has('no-teeth')) return ['full-denture'];
  if (has('brace')) return ['fixed-brace'];
  return ageYears >= 60 && chance.happens(0.35) ? ['partial-denture'] : [];
}

export function clamp(value: number, low: number, high: number): number {
  return Math.min(high, Math.max(low, value));
}
