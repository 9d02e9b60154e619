import { STOP_ANSWERS, type StopAnswer, type StopDone } from '../../../core/checks/control.ts';
import type { MultiRule } from '../../../core/stats/multiRules.ts';

const ANSWERS: Readonly<Record<StopAnswer, string>> = {
  'repeated-control': 'the control was taken again, nothing else',
  'new-solution': 'a new bottle of the solution was opened',
  'new-lot': 'a new lot of swabs was opened',
  'meter-cleaned': 'the meter was cleaned',
  other: 'something else',
};

export const STOP_OPTIONS = STOP_ANSWERS.map((id) => ({ id, label: ANSWERS[id] }));

export interface DoneDraft {
  readonly answer: StopAnswer | 'not-said';
  readonly note: string;
}

export const NOTHING_SAID: DoneDraft = { answer: 'not-said', note: '' };

/** undefined = not said. */
export function doneOf({ answer, note }: DoneDraft): StopDone | undefined {
  if (answer === 'not-said') return undefined;
  return note.trim() === '' ? { answer } : { answer, note: note.trim() };
}

/** What is missing, or nothing. */
export function doneProblem({ answer, note }: DoneDraft): string | undefined {
  if (answer === 'other' && note.trim() === '') return 'What was done: a few words are needed beside "something else".';
  return answer === 'not-said' && note.trim() !== '' ? 'What was done: choose one of the list, or "something else".' : undefined;
}

/** "a new bottle of the solution was opened: the old one had stood in the sun" */
export function sayDone({ answer, note }: StopDone): string {
  if (answer === 'other') return note ?? ANSWERS.other;
  return note === undefined ? ANSWERS[answer] : `${ANSWERS[answer]}: ${note}`;
}

/** Rules that see several controls together: what they see began before the control that fired. */
const LOOKS_BACK: Partial<Readonly<Record<MultiRule, string>>> = {
  '2-2s': 'two',
  'R-4s': 'two',
  '4-1s': 'four',
  '10-x': 'ten',
};

/** Empty for a rule that looks at one control alone. */
export function sayLooksBack(rule: MultiRule | undefined): string {
  const controls = rule && LOOKS_BACK[rule];
  return controls === undefined ? '' : `This rule looks at ${controls} controls, so what it saw may have begun earlier.`;
}
