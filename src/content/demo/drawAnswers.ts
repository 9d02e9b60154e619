import type { Answer, Answers, AnswerValue } from '../../core/visit/answer.ts';
import type { Question } from '../../core/visit/question.ts';
import type { Finding } from '../../core/visit/types.ts';
import { questions } from '../questions.ts';
import type { Chance } from './chance.ts';
import { ageAt, DECAYED_KINDS, type VisitDraw } from './drawFindings.ts';
import { clamp } from './profile.ts';

/** How often each is so, by level: assumed, and chosen so that the practice's own list gives about the assumed shares of levels. */
const HEAVY_PLAQUE = { low: 0.08, moderate: 0.35, high: 0.65, extreme: 0.9 } as const;
const DEEP_PITS = { low: 0.1, moderate: 0.3, high: 0.5, extreme: 0.5 } as const;
const FILLED_LATELY = { low: 0.05, moderate: 0.1, high: 0.6, extreme: 0.6 } as const;

interface AnswerDraw extends VisitDraw {
  readonly findings: readonly Finding[];
}

/** Answers to every question that is put at this age, as asked on the day. A few are declined or not known, as in life. */
export function drawAnswers(visit: AnswerDraw, chance: Chance): Answers {
  const ageYears = ageAt(visit.profile, visit.onDate);
  const values = drawValues(visit, ageYears, chance);
  const isPut = ({ id, fromAgeYears = 0, belowAgeYears = Number.POSITIVE_INFINITY }: Question) =>
    id in values && ageYears >= fromAgeYears && ageYears < belowAgeYears;
  return Object.fromEntries(
    questions.filter(isPut).map((question) => [question.id, drawAnswer(question, values[question.id], visit.onDate, chance)]),
  );
}

function drawAnswer({ group }: Question, value: AnswerValue | undefined, onDate: string, chance: Chance): Answer {
  if (group === 'home' && chance.happens(0.04)) return { how: 'does-not-know' };
  if (value === undefined || (group === 'health' && chance.happens(0.02))) return { how: 'declined' };
  return { how: 'asked', value, askedOn: onDate };
}

/** What this person would say today, by question id. */
function drawValues(
  { profile, daysSince, earlier, findings }: AnswerDraw,
  ageYears: number,
  chance: Chance,
): Readonly<Record<string, AnswerValue>> {
  const { has, leaning, risk, past } = profile;
  const isFirst = daysSince === undefined;
  const hasLowSaliva = risk === 'extreme';
  const newLesions = findings.filter(({ isNew }) => isNew).length;
  const filledLately = isFirst
    ? past.filled.length > 0 && chance.happens(FILLED_LATELY[risk])
    : earlier.some(({ kind }) => kind === 'cavity' || kind === 'dentine-radiograph');
  const snacks = clamp(profile.snacksPerDay + chance.whole(-1, 1), 0, 9);
  return {
    medicines: profile.medicines,
    allergies: has('milk-allergy') ? ['milk-protein'] : [],
    conditions: [
      ...(has('dry-mouth') ? ['sjogren'] : []),
      ...(has('lost-glands') ? ['head-neck-radiotherapy', 'salivary-glands-lost'] : []),
      ...(has('implants-only') ? ['titanium-implants'] : []),
      ...(has('insulin') ? ['diabetes-glucose-lowering'] : []),
      ...(has('acid-wear') ? ['reflux'] : []),
    ],
    private_conditions: has('eating-disorder') ? ['eating-disorder', 'vomiting-often'] : [],
    pregnant: has('pregnant') ? (isFirst ? 'no' : 'pregnant') : 'no',
    weight_kg: Math.round(typicalWeightKg(ageYears) * (0.92 + 0.16 * chance.fraction()) * 10) / 10,
    can_spit: ageYears >= 5,
    snacks_per_day: snacks,
    sugars_at_meals: snacks <= 2,
    bottle: ageYears < 3 ? ['bedtime-not-water', ...(risk === 'high' ? ['in-bed', 'sweet'] : [])] : [],
    paste_times_per_day: profile.pasteTimesPerDay,
    paste_strength: '1000-1500',
    home_extras: chance.happens(0.15) ? ['naf-rinse-daily'] : [],
    professional_fluoride: isFirst || risk === 'extreme' ? 'none' : chance.pick(['none', 'varnish']),
    water_fluoridated: profile.waterFluoridated,
    water_drunk: profile.waterFluoridated,
    xylitol_carer: false,
    household: profile.household,
    dry_mouth: hasLowSaliva ? 'severe' : profile.medicines.length > 1 ? 'sometimes' : 'no',
    tobacco: ageYears >= 18 && chance.happens(0.15) ? ['smoking'] : [],
    dental_home: !isFirst,
    family_decay_months: leaning > 0.5 ? 8 : 24,
    carer_decay_12m: leaning > 0.8,
    social: [],
    filling_recent: filledLately,
    filling_24m: filledLately,
    filling_24m_at_6: filledLately,
    lesions_3y: clamp(newLesions + earlier.filter(({ isNew }) => isNew).length, 0, 9),
    milk_teeth_dmf: clamp(past.filled.length + findings.filter(({ kind }) => DECAYED_KINDS.includes(kind)).length, 0, 9),
    tooth_lost_to_decay: false,
    natural_teeth: naturalTeeth(profile),
    appliance: profile.appliance,
    plaque_heavy: chance.happens(HEAVY_PLAQUE[risk]),
    gums_bleed: chance.happens(0.2),
    pits_deep: ageYears < 25 && chance.happens(DEEP_PITS[risk]),
    filling_between_teeth: past.filled.length > 4,
    enamel_defects: false,
    saliva_look: hasLowSaliva ? 'inadequate' : 'enough',
    ...(hasLowSaliva ? { resting_flow: has('lost-glands') ? 0.02 : 0.08 } : {}),
  };
}

function naturalTeeth({ has }: AnswerDraw['profile']): string {
  if (has('no-teeth')) return 'none';
  if (has('implants-only')) return 'implants-only';
  return has('overdenture-roots') ? 'overdenture-roots' : 'has-teeth';
}

/** A round figure for drawing only; doses never use it. */
function typicalWeightKg(ageYears: number): number {
  return ageYears < 11 ? 8.5 + 2.6 * ageYears : clamp(36 + 4.6 * (ageYears - 11), 36, 64);
}
