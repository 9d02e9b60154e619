import type { Answer, Answers, AnswerValue } from '../../core/visit/answer.ts';
import type { Question } from '../../core/visit/question.ts';
import type { Finding } from '../../core/visit/types.ts';
import { questions } from '../questions.ts';
import type { Chance } from './chance.ts';
import { ageAt, type VisitDraw } from './drawFindings.ts';
import { clamp } from './profile.ts';

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
  { profile, isFirst, earlier, findings }: AnswerDraw,
  ageYears: number,
  chance: Chance,
): Readonly<Record<string, AnswerValue>> {
  const { has, leaning } = profile;
  const newLesions = findings.filter(({ isNew }) => isNew).length;
  const filledLately = earlier.some(({ kind }) => kind === 'cavity');
  const snacks = clamp(profile.snacksPerDay + chance.whole(-1, 1), 0, 9);
  return {
    medicines: profile.medicines,
    allergies: has('milk-allergy') ? ['milk-protein'] : [],
    conditions: [
      ...(has('dry-mouth') ? ['sjogren'] : []),
      ...(has('insulin') ? ['diabetes-glucose-lowering'] : []),
      ...(has('acid-wear') ? ['reflux'] : []),
    ],
    private_conditions: [],
    pregnant: has('pregnant') ? (isFirst ? 'no' : 'pregnant') : 'no',
    weight_kg: Math.round(typicalWeightKg(ageYears) * (0.92 + 0.16 * chance.fraction()) * 10) / 10,
    can_spit: ageYears >= 5,
    snacks_per_day: snacks,
    sugars_at_meals: snacks <= 2,
    bottle: ageYears < 3 ? ['bedtime-not-water', ...(leaning > 0.5 ? ['in-bed', 'sweet'] : [])] : [],
    paste_times_per_day: profile.pasteTimesPerDay,
    paste_strength: '1000-1500',
    home_extras: chance.happens(0.15) ? ['naf-rinse-daily'] : [],
    professional_fluoride: isFirst ? 'none' : chance.pick(['none', 'varnish']),
    water_fluoridated: profile.waterFluoridated,
    water_drunk: profile.waterFluoridated,
    xylitol_carer: false,
    household: profile.household,
    dry_mouth: has('dry-mouth') ? 'severe' : profile.medicines.length > 1 ? 'sometimes' : 'no',
    tobacco: ageYears >= 18 && chance.happens(0.15) ? ['smoking'] : [],
    dental_home: !isFirst,
    family_decay_months: leaning > 0.5 ? 8 : 24,
    carer_decay_12m: leaning > 0.8,
    social: [],
    filling_recent: filledLately,
    filling_24m: filledLately,
    filling_24m_at_6: filledLately,
    lesions_3y: clamp(newLesions + earlier.filter(({ isNew }) => isNew).length, 0, 9),
    milk_teeth_dmf: clamp(newLesions, 0, 9),
    tooth_lost_to_decay: false,
    natural_teeth: has('no-teeth') ? 'none' : 'has-teeth',
    appliance: profile.appliance,
    plaque_heavy: chance.happens(clamp(0.3 + 0.2 * leaning, 0.02, 0.95)),
    gums_bleed: chance.happens(0.2),
    pits_deep: ageYears < 25 && chance.happens(0.4),
    filling_between_teeth: profile.filledTeeth.length > 4,
    enamel_defects: false,
    saliva_look: has('dry-mouth') ? 'inadequate' : 'enough',
    ...(has('dry-mouth') ? { resting_flow: 0.08 } : {}),
  };
}

/** A round figure for drawing only; doses never use it. */
function typicalWeightKg(ageYears: number): number {
  return ageYears < 11 ? 8.5 + 2.6 * ageYears : clamp(36 + 4.6 * (ageYears - 11), 36, 64);
}
