import { unknownKindOf } from '../../../core/risk/knownAnswers.ts';
import type { Answer, Answers, AnswerValue, UnknownKind } from '../../../core/visit/answer.ts';
import { isDateOrMonth } from '../../../core/visit/dateOrMonth.ts';
import { isPut } from '../../../core/visit/followUps.ts';
import { openValue } from '../../../core/visit/privacy.ts';
import type { Question, QuestionGroup } from '../../../core/visit/question.ts';
import { formatDate, formatMonth, formatNumber } from '../../format.ts';
import { type Entry, type Line, lettersWithout, type Tone } from './line.ts';

export interface QuestionLinesInput {
  readonly questions: readonly Question[];
  readonly group: QuestionGroup;
  readonly ageYears: number;
  readonly onDate: string;
  readonly birthDate?: string | undefined;
  readonly answers: Answers;
  /** The answers as they came into the visit. */
  readonly carried: Answers;
  /** Question id to kind of unknown, as the assessment judged it. */
  readonly unknown: ReadonlyMap<string, UnknownKind>;
  /** Question ids whose answer could move the proposed level. */
  readonly couldChangeLevel: ReadonlySet<string>;
  /** Answers that cannot be right, by question, with the sentence that asks them back. */
  readonly doubts?: Readonly<Record<string, string>> | undefined;
  readonly reservedLetters: string;
  /** Where somebody else sees the page, private questions are left out, and of an open one its private choices. */
  readonly privacy?: 'shown' | 'overheard' | undefined;
}

export function isForAge(question: Question, ageYears: number): boolean {
  return ageYears >= (question.fromAgeYears ?? 0) && ageYears < (question.belowAgeYears ?? Number.POSITIVE_INFINITY);
}

/** The lines of one group, in the order of the questions, each with a letter of its own. */
export function questionLines(input: QuestionLinesInput): readonly Line[] {
  const ofGroup = input.questions.filter((q) => q.group === input.group && isForAge(q, input.ageYears));
  const letterOf = lettersOf(ofGroup, lettersWithout(input.reservedLetters));
  return ofGroup
    .filter((question) => isPut(question, input))
    .map((question) => questionLine(question, letterOf.get(question.id) ?? '', input))
    .filter((line) => input.privacy === undefined || !line.private)
    .map((line) => (input.privacy === undefined ? line : withoutPrivateChoices(line, input)));
}

/** A follow-up has a letter from the end, whether it is put or not: no other letter changes when it comes. */
function lettersOf(questions: readonly Question[], letters: readonly string[]): ReadonlyMap<string, string> {
  const always = questions.filter(({ askedIf }) => askedIf === undefined);
  const followUps = questions.filter(({ askedIf }) => askedIf !== undefined);
  return new Map([
    ...always.map(({ id }, i) => [id, letters[i] ?? ''] as const),
    ...followUps.map(({ id }, i) => [id, letters.at(-1 - i) ?? ''] as const),
  ]);
}

function questionLine(question: Question, letter: string, input: QuestionLinesInput): Line {
  const answer = input.answers[question.id];
  // An optional question is missing only where this mouth is the reason to ask it.
  const isOptional = question.optional === true && !(question.wantedIn && input.unknown.has(question.id));
  const unknown = input.unknown.get(question.id) ?? (isOptional ? unknownKindOf(answer, question, input.onDate) : undefined);
  const isLeftOut = isOptional && unknown === 'not-asked';
  const tone = toneOf(question, unknown, input);
  return {
    id: question.id,
    letter,
    label: question.label,
    prompt: question.prompt,
    entry: entryOf(question, input),
    mayBeUnknown: true,
    text: isLeftOut
      ? leftOutWords(question)
      : tone === 'unknown'
        ? unknownWords(unknown ?? 'not-asked')
        : valueText(question, answer?.value),
    tone: isLeftOut ? 'carried' : tone,
    note: isLeftOut ? undefined : (input.doubts?.[question.id] ?? noteOf(question, tone, input)),
    wanted:
      input.doubts?.[question.id] !== undefined ||
      (!isOptional && tone === 'unknown' && unknown !== 'does-not-know' && unknown !== 'declined'),
    reconfirmable: answer?.how === 'carried' && answer.value !== undefined,
    private: question.private === true,
    value: answer?.value,
    sources: question.sources,
  };
}

const NOT_SHOWN = 'recorded, not shown here';

/** A list with a private choice says of every answer alike that it is there, and no more. */
function withoutPrivateChoices(line: Line, { questions, privacy }: QuestionLinesInput): Line {
  const question = questions.find((q) => q.id === line.id);
  const { entry } = line;
  if (!question?.choices?.some((choice) => choice.private) || entry.kind !== 'list') return line;
  const choices = entry.choices.filter((choice) => !choice.private);
  return {
    ...line,
    entry: privacy === 'shown' ? { kind: 'none' } : { ...entry, choices },
    text: line.tone === 'unknown' ? line.text : NOT_SHOWN,
    note: undefined,
    value: line.value === undefined ? undefined : openValue(question, line.value),
  };
}

function toneOf(question: Question, unknown: UnknownKind | undefined, { answers, carried, onDate }: QuestionLinesInput): Tone {
  const answer = answers[question.id];
  if (unknown !== undefined || answer?.value === undefined) return 'unknown';
  if (answer.how === 'carried') return 'carried';
  const before = carried[question.id];
  return before?.how === 'carried' && isSame(before.value, answer.value) && answer.askedOn === onDate ? 'confirmed' : 'new';
}

function noteOf(question: Question, tone: Tone, { answers, carried, onDate, couldChangeLevel }: QuestionLinesInput): string | undefined {
  const before = carried[question.id];
  const last =
    before?.value === undefined || !before.askedOn ? undefined : `${valueText(question, before.value)}, ${formatMonth(before.askedOn)}`;
  if (tone === 'confirmed') return 'asked today, no change';
  if (tone === 'carried') return dated(answers[question.id]);
  if (tone === 'new') return last && before?.askedOn !== onDate ? `was ${last}` : undefined;
  const weight = couldChangeLevel.has(question.id) ? 'could change the level' : undefined;
  return [last && `was ${last}`, weight].filter(Boolean).join('; ') || undefined;
}

const dated = (answer: Answer | undefined) => (answer?.askedOn ? `asked ${formatMonth(answer.askedOn)}` : undefined);

export function isSame(a: AnswerValue | undefined, b: AnswerValue | undefined): boolean {
  return JSON.stringify(Array.isArray(a) ? [...a].sort() : a) === JSON.stringify(Array.isArray(b) ? [...b].sort() : b);
}

/** Of what is only measured, or noted, where there is a reason. */
const LEFT_OUT = { measured: 'not measured', noted: 'not noted' } as const;
const leftOutWords = ({ kind }: Question): string => (kind === 'measure' ? LEFT_OUT.measured : LEFT_OUT.noted);
export const isLeftOutText = (text: string): boolean => text === LEFT_OUT.measured || text === LEFT_OUT.noted;

const UNKNOWN_WORDS: Readonly<Record<UnknownKind, string>> = {
  'not-asked': 'not asked',
  'does-not-know': 'does not know',
  declined: 'declined',
  'out-of-date': 'out of date',
};

export const unknownWords = (kind: UnknownKind): string => UNKNOWN_WORDS[kind];

function entryOf({ kind, min, max, unit, choices = [] }: Question, { onDate, birthDate }: QuestionLinesInput): Entry {
  if (kind === 'date') return { kind: 'past-date', onDate, birthDate, choices };
  if (kind === 'yes-no') return { kind };
  if (kind === 'choice' || kind === 'list') return { kind, choices };
  if (kind === 'count' && max !== undefined && max <= 9) return { kind: 'digit', max, unit };
  return { kind: 'number', min, max, unit };
}

/** An answer in words: "yes", "4 a day", "water", "antihistamine, diuretic", "none". */
export function valueText(question: Pick<Question, 'choices' | 'unit'>, value: AnswerValue | undefined): string {
  if (value === undefined) return '';
  if (typeof value === 'boolean') return value ? 'yes' : 'no';
  if (typeof value === 'number') return question.unit ? `${formatNumber(value)} ${question.unit}` : formatNumber(value);
  if (typeof value === 'string') return isDateOrMonth(value) ? sayDate(value) : labelOf(question, value);
  return value.length === 0 ? 'none' : value.map((id) => labelOf(question, id)).join(', ');
}

/** To the month where the day is not known. */
const sayDate = (text: string): string => (text.length === 7 ? formatMonth(`${text}-01`) : formatDate(text));

const labelOf = ({ choices }: Pick<Question, 'choices'>, id: string) => choices?.find((c) => c.id === id)?.label ?? id;
