import type { AnswerValue, SourceRef } from '../../../core/visit/answer.ts';
import type { Choice } from '../../../core/visit/question.ts';

/** How a line takes its answer. */
export type Entry =
  | { readonly kind: 'yes-no' }
  /** One digit is the whole answer. */
  | { readonly kind: 'digit'; readonly max: number; readonly unit?: string | undefined }
  /** A number and Enter; `bounds` lets "<40" and ">60000" stand for a reading beyond the meter's range. */
  | {
      readonly kind: 'number';
      readonly min?: number | undefined;
      readonly max?: number | undefined;
      readonly unit?: string | undefined;
      readonly bounds?: boolean;
    }
  | { readonly kind: 'choice'; readonly choices: readonly Choice[] }
  | { readonly kind: 'list'; readonly choices: readonly Choice[] }
  | { readonly kind: 'text'; readonly hint: string }
  | { readonly kind: 'date' }
  /** Two digits, and no Enter. */
  | { readonly kind: 'tooth' }
  /** A day or a month not after the visit; a choice may stand in its place. */
  | {
      readonly kind: 'past-date';
      readonly onDate: string;
      readonly birthDate?: string | undefined;
      readonly choices: readonly Choice[];
    }
  /** Opened to read and to act on, e.g. a line of the plan; takes no answer itself. */
  | { readonly kind: 'none' };

/** What was keyed; `stay` where more may follow on the same line. Declined and "does not know" are answers too: they say which kind of unknown. */
export type Reply =
  | { readonly how: 'asked'; readonly value: AnswerValue; readonly bound?: 'at-most' | 'at-least' | undefined; readonly stay?: boolean }
  | { readonly how: 'declined' }
  | { readonly how: 'does-not-know' };

export type Tone = 'new' | 'confirmed' | 'carried' | 'unknown';

/** One line of the work column. */
export interface Line {
  readonly id: string;
  readonly letter: string;
  readonly label: string;
  readonly prompt?: string | undefined;
  readonly entry: Entry;
  /** False where the kinds of unknown make no sense, e.g. the language of the leaflet. */
  readonly mayBeUnknown: boolean;
  readonly text: string;
  readonly tone: Tone;
  readonly note?: string | undefined;
  /** Nothing is known yet, or it is out of date: the line still wants a key. */
  readonly wanted: boolean;
  /** "=" can re-confirm it. */
  readonly reconfirmable: boolean;
  readonly private: boolean;
  readonly value?: AnswerValue | undefined;
  readonly sources: readonly SourceRef[];
}

/** Letters free for lines: d, n, x and y are answers, and each scope keeps some for its own commands. */
export function lettersWithout(reserved: string): readonly string[] {
  return [...'abcefghijklmopqrstuvwz'].filter((letter) => !reserved.includes(letter));
}

/** The digit that stands for the nth choice: 1 to 9, then 0. */
export const digitOfChoice = (index: number): string | undefined => (index < 9 ? String(index + 1) : index === 9 ? '0' : undefined);
