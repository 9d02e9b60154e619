import type { DaySheet } from '../../../api/day.ts';
import { sheetWords } from '../../../content/sheetWords.ts';
import type { Answers } from '../../../core/visit/answer.ts';
import { hasPrivate } from '../../../core/visit/privacy.ts';
import type { Question, QuestionGroup } from '../../../core/visit/question.ts';
import { formatMonth } from '../../format.ts';
import { reservedLettersOf } from '../visit/buildLines.ts';
import type { Entry } from '../visit/line.ts';
import { questionLines, valueText } from '../visit/questionLines.ts';

export interface SheetLine {
  readonly id: string;
  readonly group: QuestionGroup;
  /** The key of this question on the Visit page. */
  readonly letter: string;
  /** Null = asked in the room: private, or for the professional to see. */
  readonly ask: string | null;
  readonly entry: Entry;
  /** "2 a day, March 2026"; absent where there is none, and always for a private question. */
  readonly lastTime?: string | undefined;
}

export const SHEET_GROUPS = ['safety', 'food', 'home', 'health'] as const satisfies readonly QuestionGroup[];

/** What is to be asked at this visit, in the order of the keys that type it in. */
export function sheetLines(sheet: DaySheet, questions: readonly Question[]): readonly SheetLine[] {
  const { ageYears, onDate, answers } = sheet;
  const asked = questions.filter(({ id }) => !sheet.notAsked.includes(id));
  const unknown = new Map(sheet.unknown.map(({ question, kind }) => [question, kind]));
  return SHEET_GROUPS.flatMap((group) =>
    questionLines({
      questions: asked,
      group,
      ageYears,
      onDate,
      answers,
      carried: answers,
      unknown,
      couldChangeLevel: new Set(),
      reservedLetters: reservedLettersOf(group),
    })
      .filter((line) => line.wanted)
      .map(({ id, letter, entry, private: isPrivate }): SheetLine => {
        const question = asked.find((q) => q.id === id);
        const words = isPrivate ? undefined : sheetWords[id];
        const ask = words === undefined || words === 'in-the-room' ? null : words;
        return { id, group, letter, ask, entry: openEntry(entry), lastTime: question && sayLast(question, answers) };
      }),
  );
}

function openEntry(entry: Entry): Entry {
  return 'choices' in entry ? { ...entry, choices: entry.choices.filter((choice) => choice.private !== true) } : entry;
}

/** Of a list with a private choice nothing is said: what is left out would tell. */
function sayLast(question: Question, answers: Answers): string | undefined {
  const answer = answers[question.id];
  if (answer?.value === undefined || hasPrivate(question)) return undefined;
  const value = valueText(question, answer.value);
  return answer.askedOn === undefined ? value : `${value}, ${formatMonth(answer.askedOn)}`;
}
