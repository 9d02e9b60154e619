import type { PersonFacts } from '../regimen/types.ts';
import { isInAgeRange } from '../risk/conditions.ts';
import type { Items } from '../risk/types.ts';
import type { AnswerValue } from './answer.ts';
import { fluorideFacts } from './fluorideFacts.ts';
import { listOf, numberOf } from './knownValues.ts';
import type { Question } from './question.ts';

export interface PersonFactsInput {
  readonly ageYears: number;
  readonly ageMonths: number;
  /** Answers that count today, by question id. */
  readonly known: Readonly<Record<string, AnswerValue>>;
  readonly items: Items;
  readonly questions: readonly Question[];
}

const GLAND_CONDITIONS = ['sjogren', 'head-neck-radiotherapy', 'salivary-glands-lost'];
const DENTURES = ['partial-denture', 'full-denture'];

/** Whether a question is put to a person of this age, in completed years. */
export const isAskedAtAge = (id: string, ageYears: number, questions: readonly Question[]): boolean =>
  questions.some((question) => question.id === id && isInAgeRange(question, ageYears));

/**
 * What the safety rules ask of a person, from the answers that count today. A fact whose question is not answered is left out: the rules
 * then ask first. Only where a question is not put at an age is its fact settled by the age: pregnancy outside 11 to 55, and spitting
 * from 7, unless a condition says otherwise.
 */
export function personFacts({ ageYears, ageMonths, known, items, questions }: PersonFactsInput): PersonFacts {
  const conditions = joinLists(listOf(known, 'conditions'), listOf(known, 'private_conditions'));
  const household = listOf(known, 'household');
  const appliance = listOf(known, 'appliance');
  const asksAtAge = (id: string) => isAskedAtAge(id, ageYears, questions);
  const pregnancy = asksAtAge('pregnant') ? known['pregnant'] : 'no';
  return withoutUnknown({
    ageYears,
    ageMonths,
    weightKg: numberOf(known, 'weight_kg'),
    pregnant: pregnancy === undefined ? undefined : pregnancy === 'pregnant',
    breastfeeding: pregnancy === undefined ? undefined : pregnancy === 'breastfeeding',
    canSpit: canSpit(known, conditions, asksAtAge('can_spit')),
    allergies: listOf(known, 'allergies'),
    medicines: listOf(known, 'medicines'),
    conditions,
    dogAtHome: household?.includes('dog'),
    youngChildAtHome: household?.includes('young-child'),
    dryMouth: hasDryMouth(known, items, conditions),
    dentures: known['natural_teeth'] === 'overdenture-roots' || appliance?.some((id) => DENTURES.includes(id)),
    braces: appliance?.includes('fixed-brace'),
    jawPain: conditions?.includes('jaw-joint-pain'),
    waterFluorideMgPerL: numberOf(known, 'water_fluoride_mg_per_l'),
    ...fluorideFacts(known),
  });
}

/** From 7 the question is not put, and only a recorded condition says that somebody cannot; nor before the first tooth, when nobody can. */
function canSpit(known: PersonFactsInput['known'], conditions: readonly string[] | undefined, isAsked: boolean): boolean | undefined {
  if (conditions?.includes('cannot-spit') || known['natural_teeth'] === 'none-yet') return false;
  if (isAsked) return typeof known['can_spit'] === 'boolean' ? known['can_spit'] : undefined;
  return conditions === undefined ? undefined : true;
}

/** A sign, a feeling or a cause is enough; only an answer of "no" without any of them settles that there is none. */
function hasDryMouth(known: PersonFactsInput['known'], items: Items, conditions: readonly string[] | undefined): boolean | undefined {
  const feels = known['dry_mouth'];
  const isLow = items['saliva_flow_reduced_measured'] === true || items['saliva_visually_inadequate'] === true;
  if (isLow || feels === 'sometimes' || feels === 'severe' || conditions?.some((id) => GLAND_CONDITIONS.includes(id))) return true;
  return feels === 'no' && conditions !== undefined ? false : undefined;
}

/** Known only when both are. */
function joinLists(a: readonly string[] | undefined, b: readonly string[] | undefined): readonly string[] | undefined {
  return a && b ? [...a, ...b] : undefined;
}

/** Unknown facts are absent, so that no reader can take an explicit `undefined` for an answer. */
function withoutUnknown<T extends object>(facts: T): { [K in keyof T]: Exclude<T[K], undefined> } {
  return Object.fromEntries(Object.entries(facts).filter(([, value]) => value !== undefined)) as {
    [K in keyof T]: Exclude<T[K], undefined>;
  };
}
