import type { SourceRef } from '../core/visit/answer.ts';
import type { MouthReason } from '../core/visit/mouthReason.ts';
import type { Question } from '../core/visit/question.ts';

const ours: SourceRef = { key: 'project', status: 'proposal', note: 'our wording and keep-for time' };
const notIn: readonly MouthReason[] = ['no-natural-teeth', 'implants-only', 'no-teeth-yet'];
const common = { group: 'home', kind: 'measure', min: 0, fills: [], keepForMonths: 6, notIn, sources: [ours] } as const;

/** How much fluoride is swallowed besides paste and water. Asked only of who takes it; not known stays not known. */
export const extraFluorideQuestions: readonly Question[] = [
  {
    ...common,
    id: 'salt_fluoride_mg_per_kg',
    label: 'Fluoride in the salt',
    prompt: 'From the pack of the salt, in mg of fluoride per kg of salt. It is often about 250.',
    unit: 'mg/kg',
    max: 1_000,
    askedIf: { question: 'home_extras', anyOf: ['fluoridated-salt'] },
  },
  {
    ...common,
    id: 'salt_g_per_day',
    label: 'How much of that salt',
    prompt: 'How many grams of that salt does one person eat a day, cooking included? A level teaspoon is about 6 g.',
    unit: 'g a day',
    max: 30,
    askedIf: { question: 'home_extras', anyOf: ['fluoridated-salt'] },
  },
  {
    ...common,
    id: 'supplement_fluoride_mg_per_day',
    label: 'Fluoride of the tablets or drops',
    prompt: 'From the pack, in mg of fluoride a day. 2.2 mg of sodium fluoride are 1 mg of fluoride.',
    unit: 'mg a day',
    max: 10,
    askedIf: { question: 'home_extras', anyOf: ['fluoride-tablets-or-drops'] },
  },
];

export const varnishDaysQuestion: Question = {
  ...common,
  id: 'varnish_days_12m',
  label: 'Varnish days, last 12 months',
  prompt: 'On how many days was varnish put on in the last 12 months, here, elsewhere or at school? 9 is 9 or more.',
  kind: 'count',
  unit: 'a year',
  min: 1,
  max: 9,
  keepForMonths: 0,
  optional: true,
  askedIf: { question: 'professional_fluoride', anyOf: ['varnish'] },
};

export const waterAmountQuestion: Question = {
  ...common,
  id: 'water_litres_per_day',
  label: 'Tap water drunk',
  prompt: 'How many litres of that water a day, drunk and cooked with, for a baby in the formula too? 4 glasses are about 1 L.',
  unit: 'L a day',
  max: 10,
  keepForMonths: 24,
  askedIf: { question: 'water_fluoride_mg_per_l', above: 0 },
};
