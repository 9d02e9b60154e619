import { LANGUAGE_NAMES } from '../../../core/leaflet/languages.ts';
import type { SwabReading } from '../../../core/reading/types.ts';
import type { Answer } from '../../../core/visit/answer.ts';
import type { DescribedDays } from '../../../core/visit/describedDays.ts';
import { sayDescribedDays } from '../../../core/visit/sayDescribedDays.ts';
import type { Finding, PastCare, PastGoal, Speaker, UsedSince, VisitInput } from '../../../core/visit/types.ts';
import { findQuestion, shelfName } from '../../content.ts';
import { formatDate } from '../../format.ts';
import { sayFinding, sayPlace } from './findings.ts';
import { unknownWords, valueText } from './questionLines.ts';
import { RHYTHM_NAMES } from './sayUses.ts';
import type { Scope } from './scopes.ts';
import { SPEAKER, saySpeakerInFull } from './speakerLines.ts';
import { sayWholeReading } from './swabLines.ts';

/** What the words of a value need besides the value. */
export interface FieldContext {
  readonly practice: Pick<VisitInput['practice'], 'lots' | 'shelf' | 'meters'>;
  readonly visit?: Pick<VisitInput['visit'], 'pastCare' | 'pastGoals'> | undefined;
}

const FIELD_NAMES: Readonly<Record<string, string>> = {
  reading: 'The reading',
  findings: 'The findings',
  allExamined: 'Whole mouth examined',
  agreed: 'What was agreed',
  stopUsing: 'What to stop using',
  nextOn: 'The next visit',
  language: 'The language of the leaflet',
  meterId: 'The meter',
  speaker: 'Who spoke',
  goals: 'The goals',
  goalsSince: 'What became of the goals',
  used: 'What was used since last time',
  acidDay: 'The described day',
  level: 'The level',
};

const LANGUAGES: Readonly<Record<string, string>> = LANGUAGE_NAMES;

const questionOf = (path: string) => (path.startsWith('answers.') ? findQuestion(path.slice('answers.'.length)) : undefined);

export const fieldName = (path: string): string => questionOf(path)?.label ?? FIELD_NAMES[path] ?? path;

/** Hidden where private matters are: a private question, a list with a private choice, and what holds a person's own words. */
export function isPrivateField(path: string): boolean {
  const question = questionOf(path);
  return OWN_WORDS.has(path) || question?.private === true || question?.choices?.some((choice) => choice.private) === true;
}

const OWN_WORDS: ReadonlySet<string> = new Set(['agreed', 'used', 'goals', 'goalsSince', 'acidDay']);

/** The value of a saved field in words, never as it is stored. */
export function sayFieldValue(path: string, value: unknown, context: FieldContext): string {
  if (value === null || value === undefined) return 'nothing noted';
  if (path.startsWith('answers.')) return sayAnswer(path, value as Answer);
  return (SAY[path] ?? sayPlain)(value, context);
}

function sayAnswer(path: string, { how, value }: Answer): string {
  if (how !== 'asked' && how !== 'carried') return unknownWords(how);
  return valueText(questionOf(path) ?? {}, value);
}

const SAY: Readonly<Record<string, (value: unknown, context: FieldContext) => string>> = {
  reading: (value, { practice }) => sayWholeReading(value as SwabReading, practice.lots),
  findings: (value) => (value as readonly Finding[]).map((f) => `${sayPlace(f)}: ${sayFinding(f)}`).join('; ') || 'none',
  allExamined: (value) => (value ? 'yes' : 'no'),
  agreed: (value, context) => sayAgreed(value as NonNullable<VisitInput['visit']['agreed']>, context),
  stopUsing: (value) => (value as readonly string[]).join('; ') || 'nothing',
  goals: (value) => (value as readonly string[]).join('; ') || 'none',
  nextOn: (value) => formatDate(String(value)),
  language: (value) => LANGUAGES[String(value)] ?? String(value),
  meterId: (value, { practice }) => practice.meters.find(({ id }) => id === value)?.name ?? String(value),
  used: (value, { visit, practice }) => sayUsed(value as Readonly<Record<string, UsedSince>>, visit?.pastCare ?? [], practice.shelf),
  goalsSince: (value, { visit }) => sayGoals(value as Readonly<Record<string, string>>, visit?.pastGoals ?? []),
  acidDay: (value) => sayDescribedDays(value as DescribedDays),
  speaker: (value) => saySpeakerInFull(value as Speaker),
};

function sayAgreed(
  { items = {}, declinedWhy = {}, keep, tryThis, regimen, tasksAccepted, rhythm }: NonNullable<VisitInput['visit']['agreed']>,
  { practice }: FieldContext,
): string {
  const said = Object.entries(items).map(([id, word]) => {
    const why = word === 'declined' && declinedWhy[id] ? ` (${declinedWhy[id]})` : '';
    return `${shelfName(practice.shelf, id)}: ${word.replaceAll('-', ' ')}${why}`;
  });
  const packs = regimen?.split('+').map((id) => shelfName(practice.shelf, id));
  const taken = [
    packs && `regimen taken: ${packs.join(' + ')}`,
    rhythm && `days run: ${RHYTHM_NAMES[rhythm]}`,
    tasksAccepted !== undefined && `tasks a day accepted: ${tasksAccepted}`,
  ];
  return [...said, ...taken, keep && `to keep: ${keep}`, tryThis && `to try: ${tryThis}`].filter(Boolean).join('; ') || 'nothing noted';
}

function sayUsed(used: Readonly<Record<string, UsedSince>>, past: readonly PastCare[], shelf: FieldContext['practice']['shelf']): string {
  const said = Object.entries(used).map(([id, { adherence, why }]) => {
    const name = past.find((care) => care.shelfItemId === id)?.name ?? shelfName(shelf, id);
    return `${name}: ${adherence.replaceAll('-', ' ')}${why ? ` (${why})` : ''}`;
  });
  return said.join('; ') || 'nothing noted';
}

function sayGoals(states: Readonly<Record<string, string>>, past: readonly PastGoal[]): string {
  const said = Object.entries(states).map(
    ([id, state]) => `${past.find((goal) => goal.id === id)?.text ?? 'a goal'}: ${state.replaceAll('-', ' ')}`,
  );
  return said.join('; ') || 'nothing noted';
}

/** A value whose field this page does not know still reads as words. */
function sayPlain(value: unknown): string {
  if (typeof value !== 'object' || value === null) return String(value);
  return Object.entries(value)
    .map(([key, part]) => `${key}: ${sayPlain(part)}`)
    .join(', ');
}

/** Where a field stands on the page. */
export function placeOfField(path: string): { readonly scope: Scope; readonly line: string | null } {
  const question = questionOf(path);
  if (question) return { scope: question.group, line: question.id };
  return { scope: FIELD_SCOPES[path] ?? 'agree', line: null };
}

const FIELD_SCOPES: Readonly<Record<string, Scope>> = {
  reading: 'swab',
  meterId: 'swab',
  findings: 'look',
  allExamined: 'look',
  used: 'home',
  goalsSince: 'home',
  acidDay: 'food',
  speaker: 'safety',
  level: 'level',
};

/** The saved field behind a line, whose history is shown. */
export function fieldOfLine(scope: Scope, line: string | null): string | null {
  if (scope === 'swab') return 'reading';
  if (scope === 'safety' && line?.startsWith(SPEAKER)) return 'speaker';
  if (scope === 'level') return 'level';
  if (line === null) return scope === 'look' ? 'findings' : null;
  if (line.startsWith('used')) return 'used';
  if (line.startsWith('goal ')) return 'goalsSince';
  if (scope === 'look' && line === 'allExamined') return 'allExamined';
  if (findQuestion(line)) return `answers.${line}`;
  if (scope === 'look') return 'findings';
  return ['stopUsing', 'nextOn', 'language', 'goals'].includes(line) ? line : 'agreed';
}
