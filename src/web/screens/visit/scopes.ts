import type { QuestionGroup } from '../../../core/visit/question.ts';

/** A scope is what letter keys and "=" act on: a section, or one group of Talk. */
export const SCOPES = ['safety', 'swab', 'food', 'home', 'health', 'look', 'level', 'plan', 'agree'] as const;
export type Scope = (typeof SCOPES)[number];

export const SECTIONS = [
  { number: 1, title: 'Safety check', scopes: ['safety'] },
  { number: 2, title: 'Swab', scopes: ['swab'] },
  { number: 3, title: 'Talk', scopes: ['food', 'home', 'health'] },
  { number: 4, title: 'Look', scopes: ['look'] },
  { number: 5, title: 'Level', scopes: ['level'] },
  { number: 6, title: 'Plan', scopes: ['plan'] },
  { number: 7, title: 'Agree', scopes: ['agree'] },
] as const satisfies readonly { number: number; title: string; scopes: readonly Scope[] }[];

export const GROUP_TITLES: Readonly<Record<QuestionGroup, string>> = {
  safety: 'Safety check',
  food: 'Food and drink',
  home: 'Home care',
  health: 'Health and mouth',
  look: 'Look',
};

export const QUESTION_SCOPES: readonly QuestionGroup[] = ['safety', 'food', 'home', 'health', 'look'];

export function isQuestionScope(scope: Scope): scope is QuestionGroup & Scope {
  return (QUESTION_SCOPES as readonly string[]).includes(scope);
}
