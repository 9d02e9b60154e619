import { type DateOrder, readBirthday } from './birthday.ts';

/** An ambiguous date of the list with both of its readings, so that somebody can choose. */
export interface DateExample {
  readonly text: string;
  readonly dayFirst: string;
  readonly monthFirst: string;
}

export interface DateOrderFinding {
  /** True where some dates can be read in two ways. */
  readonly isNeeded: boolean;
  /** What other dates of the list tell; absent = they tell nothing, or contradict each other. */
  readonly told?: DateOrder | undefined;
  /** The date that told it. */
  readonly because?: string | undefined;
  readonly examples: readonly DateExample[];
}

const MOST_EXAMPLES = 3;

/** Which number of the dates of one list is the day: what the list itself tells, and what somebody must choose. */
export function findDateOrder(birthdays: readonly string[]): DateOrderFinding {
  const examples = new Map<string, DateExample>();
  const telling = new Map<DateOrder, string>();
  for (const text of birthdays) {
    const birthday = readBirthday(text);
    if (birthday.kind === 'either') examples.set(text.trim(), { text: text.trim(), ...birthday });
    if (birthday.kind === 'one' && !telling.has(birthday.order)) telling.set(birthday.order, text.trim());
  }
  const [only] = telling.size === 1 ? [...telling] : [];
  return {
    isNeeded: examples.size > 0,
    ...(only ? { told: only[0], because: only[1] } : {}),
    examples: [...examples.values()].slice(0, MOST_EXAMPLES).map(({ text, dayFirst, monthFirst }) => ({ text, dayFirst, monthFirst })),
  };
}
