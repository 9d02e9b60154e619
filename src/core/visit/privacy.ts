import type { AnswerValue } from './answer.ts';
import type { Question } from './question.ts';
import type { VisitInput } from './types.ts';

/** The choices of one private answer that may stand on the leaflet. */
export interface ReleasedChoices {
  readonly question: string;
  readonly choices: readonly string[];
}

/**
 * Whether private matters stay out of sight on the page of work too: something private was told by the person alone, and it is not said
 * that the person is alone now. What a parent may be told is decided by local law; the page tells nothing by itself.
 */
export function isToldAlone({ speaker, answers }: Pick<VisitInput['visit'], 'speaker' | 'answers'>): boolean {
  return speaker?.who !== 'patient' && Object.values(answers).some(({ alone }) => alone === true);
}

/** Whether an answer of this kind of choice is hidden wherever private matters are: all of a private question, one choice of an open list. */
export function isPrivateChoice(question: Pick<Question, 'private' | 'choices'>, choice: string): boolean {
  return question.private === true || question.choices?.some(({ id, private: isPrivate }) => id === choice && isPrivate === true) === true;
}

/** Whether anything of its answer is private. */
export function hasPrivate(question: Pick<Question, 'private' | 'choices'>): boolean {
  return question.private === true || question.choices?.some((choice) => choice.private === true) === true;
}

/** A value without its private choices. */
export function openValue(question: Pick<Question, 'private' | 'choices'>, value: AnswerValue): AnswerValue {
  return Array.isArray(value) ? value.filter((choice) => !isPrivateChoice(question, choice)) : value;
}

/**
 * The private answers that the leaflet may print: asked today, released by a named professional, and only while the same person speaks
 * as at the release, so that what was released for a young person alone is not printed for a parent.
 */
export function listReleased({
  released = {},
  speaker,
  answers,
}: Pick<VisitInput['visit'], 'released' | 'speaker' | 'answers'>): readonly ReleasedChoices[] {
  return Object.entries(released).flatMap(([question, { by, heard }]) => {
    const { how, value } = answers[question] ?? {};
    if (how !== 'asked' || value === undefined || by.trim() === '' || heard !== speaker?.who) return [];
    return [{ question, choices: Array.isArray(value) ? value : [String(value)] }];
  });
}
