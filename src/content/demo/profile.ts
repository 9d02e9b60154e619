import type { Level } from '../../core/risk/types.ts';
import { normalCdf } from '../../core/stats/normal.ts';
import type { Chance } from './chance.ts';
import { addDays } from './days.ts';
import type { DemoName, DemoTrait } from './names.ts';
import type { PastDecay } from './pastDecay.ts';

/** What stays with an invented person from visit to visit. */
export interface DemoProfile {
  readonly birthDate: string;
  readonly has: (trait: DemoTrait) => boolean;
  /** No tooth or root of his or her own. */
  readonly isToothless: boolean;
  /** Leaning towards decay, standard normal. */
  readonly leaning: number;
  /** The level that fits the leaning, before anybody looks: drives answers, lesions and, weakly, readings. */
  readonly risk: Level;
  /** How quickly this person's teeth decay beside others of the same level; 1 on average. */
  readonly frailty: number;
  /** Where this person stands among people of the same age, 0 (least) to 1 (most past decay). */
  readonly pastRank: number;
  /** As it stands at the first visit. */
  readonly past: PastDecay;
  readonly snacksPerDay: number;
  readonly pasteTimesPerDay: number;
  /** Mean of the natural logarithm of this person's readings. */
  readonly meanLogRlu: number;
  readonly waterFluoridated: boolean;
  readonly medicines: readonly string[];
  readonly appliance: readonly string[];
  readonly household: readonly string[];
}

/** Shares of the levels in a practice: assumed. Below 18 nobody is given the highest, which takes low saliva. */
const RISK_SHARES = { low: 0.25, moderate: 0.35, high: 0.34, extreme: 0.06 } as const;
/** Geometric mean and spread of readings by level: invented for the invented meter, with ratios and spread assumed; a deliberately weak tie. */
const GEOMETRIC_MEAN_RLU = { low: 2_240, moderate: 2_240 * 1.35, high: 2_240 * 1.85, extreme: 2_240 * 2.4 } as const;
const GSD_BETWEEN_PEOPLE = 2.3;
/** How far the past goes with the leaning, as a correlation: assumed. */
const PAST_WITH_LEANING = 0.5;
/** Gamma shape of the frailty: gives counts of new teeth the spread of a negative binomial with this k, which is assumed. */
const FRAILTY_SHAPE = 0.6;

const SNACKS = { low: 1.2, moderate: 2.2, high: 3.6, extreme: 4.6 } as const;
const PASTE_TWICE = { low: 0.95, moderate: 0.75, high: 0.5, extreme: 0.4 } as const;
const DAYS_PER_YEAR = 365.2425;

/** Everything but past decay, which follows from the age at the first visit. */
export type DrawnProfile = Omit<DemoProfile, 'past'>;

export function drawProfile({ ageYears, traits }: DemoName, chance: Chance, today: string): DrawnProfile {
  const has = (trait: DemoTrait) => traits.includes(trait);
  const leaning = chance.normal();
  const risk = drawRisk(leaning, ageYears, has);
  const isToothless = has('no-teeth') || has('implants-only');
  const pastRank = normalCdf(PAST_WITH_LEANING * leaning + Math.sqrt(1 - PAST_WITH_LEANING ** 2) * chance.normal());
  const isSchoolAge = ageYears >= 6 && ageYears < 20;
  return {
    birthDate: addDays(today, -Math.round(ageYears * DAYS_PER_YEAR + 2 + chance.fraction() * 360)),
    has,
    isToothless,
    leaning,
    risk,
    frailty: chance.gamma(FRAILTY_SHAPE),
    pastRank,
    snacksPerDay: clamp(Math.round(SNACKS[risk] + 0.8 * chance.normal() + (isSchoolAge ? 0.5 : 0)), 0, 8),
    pasteTimesPerDay: chance.happens(PASTE_TWICE[risk]) ? 2 : 1,
    meanLogRlu: Math.log(GEOMETRIC_MEAN_RLU[risk]) + Math.log(GSD_BETWEEN_PEOPLE) * chance.normal(),
    waterFluoridated: chance.happens(0.25),
    medicines: drawMedicines(ageYears, { has, risk }, chance),
    appliance: drawAppliance(ageYears, has, chance),
    household: [
      ...(chance.happens(0.3) ? ['dog'] : []),
      ...(ageYears < 6 || (ageYears > 24 && ageYears < 45 && chance.happens(0.4)) ? ['young-child'] : []),
    ],
  };
}

function drawRisk(leaning: number, ageYears: number, has: DemoProfile['has']): Level {
  if (has('dry-mouth') || has('lost-glands')) return 'extreme';
  const share = normalCdf(leaning);
  if (share < RISK_SHARES.low) return 'low';
  if (share < RISK_SHARES.low + RISK_SHARES.moderate) return 'moderate';
  return share < 1 - RISK_SHARES.extreme || ageYears < 18 ? 'high' : 'extreme';
}

function drawMedicines(ageYears: number, { has, risk }: Pick<DemoProfile, 'has' | 'risk'>, chance: Chance): readonly string[] {
  const common =
    ageYears < 45
      ? []
      : ['ace-inhibitor', 'diuretic', 'beta-blocker', 'proton-pump-inhibitor'].filter(() => chance.happens(ageYears / 300));
  const drying = risk === 'extreme' ? [has('dry-mouth') ? 'tricyclic-antidepressant' : chance.pick(['ssri-snri', 'opioid'])] : [];
  return [...common, ...(has('insulin') ? ['insulin'] : []), ...drying];
}

function drawAppliance(ageYears: number, has: DemoProfile['has'], chance: Chance): readonly string[] {
  if (has('no-teeth') || has('overdenture-roots')) return ['full-denture'];
  if (has('brace')) return ['fixed-brace'];
  if (has('retainer')) return ['bonded-retainer'];
  return ageYears >= 65 && chance.happens(0.25) ? ['partial-denture'] : [];
}

export function clamp(value: number, low: number, high: number): number {
  return Math.min(high, Math.max(low, value));
}
