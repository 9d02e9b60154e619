import { parseTakenAt, sayDate } from '../reading/parseTakenAt.ts';
import { sayNumber } from '../reading/sayRlu.ts';
import { sayCovers } from '../regimen/signatureCover.ts';
import type { PlanLine } from '../regimen/types.ts';
import type { ProtocolTable } from '../risk/protocol.ts';
import type { Answer } from '../visit/answer.ts';
import type { VisitCorrection } from '../visit/correction.ts';
import type { Question } from '../visit/question.ts';
import { sayDescribedDays } from '../visit/sayDescribedDays.ts';
import { wantedLines } from '../visit/turnedDown.ts';
import type { Finding, PastCare, VisitAssessment, VisitInput } from '../visit/types.ts';
import { DEFAULT_NOTE, type NoteSection } from './noteSections.ts';

/** The tables whose names a note uses. */
export interface NoteTables {
  readonly questions: readonly Question[];
  readonly protocols: readonly Pick<ProtocolTable, 'id' | 'screenName'>[];
}

export interface NoteInput {
  readonly input: VisitInput;
  readonly assessment: VisitAssessment;
  readonly tables: NoteTables;
  /** Which parts, in which order; absent = every part that holds nothing private. */
  readonly sections?: readonly NoteSection[] | undefined;
  /** What was corrected after the visit was closed. */
  readonly corrections?: readonly VisitCorrection[] | undefined;
}

/**
 * A visit as a plain-text note for the practice's own chart: one line for each thing, parts in the practice's order. What is not known
 * is said as not known, a level that nobody confirmed as not confirmed, an item without a signature as waiting.
 * Private answers stand in the part `private` alone, and only if that part is chosen; no other part reads a private answer.
 * @returns lines with line feeds between them, no empty line, nothing that a plain-text field could not hold
 */
export function buildNote(note: NoteInput): string {
  const { person, visit, practice } = note.input;
  const invented = practice.invented ? ' (an invented practice)' : '';
  const head = `${person.name}, born ${sayDate(person.birthDate)}. Visit of ${sayDate(visit.onDate)}, ${practice.name}${invented}.`;
  const sections = note.sections ?? DEFAULT_NOTE;
  const lines = sections.flatMap((section) => SECTIONS[section](note));
  return [head, ...lines, ...sayCorrections(note)].map((line) => line.replace(/\s+/g, ' ').trim()).join('\n');
}

const SECTIONS: Readonly<Record<NoteSection, (note: NoteInput) => readonly string[]>> = {
  level: sayLevel,
  findings: sayFindings,
  reading: sayReading,
  mouth: ({ assessment }) => (assessment.mouth.sentences.length === 0 ? [] : [`Mouth: ${assessment.mouth.sentences.join(' ')}`]),
  agreed: sayAgreed,
  declined: sayDeclined,
  signatures: saySignatures,
  'since-last-time': saySince,
  goals: sayGoals,
  'acid-day': ({ input: { visit } }) => (visit.acidDay ? [`Day as told: ${sayDescribedDays(visit.acidDay)}.`] : []),
  speaker: saySpeaker,
  next: sayNext,
  bitewings: sayBitewings,
  private: sayPrivate,
};

function sayLevel({ assessment, tables, input }: NoteInput): string[] {
  const { confirmed, proposed, mouth } = assessment;
  if (mouth.kind === 'level-does-not-apply') return ['Level: does not apply.'];
  if (!confirmed) return [`Level: not confirmed; ${sayProposed(assessment)}.`];
  const { level, protocol, edition, by, at, reason, changedFrom } = confirmed;
  const name = tables.protocols.find(({ id }) => id === protocol)?.screenName ?? protocol;
  const on = parseTakenAt(at, input.practice.timeZone)?.localDate ?? at.slice(0, 10);
  const changed = changedFrom ? `, changed from ${changedFrom}` : '';
  const because = reason ? `, because ${reason}` : '';
  const differs =
    proposed?.level && proposed.level !== level && proposed.level !== changedFrom ? [`The answers now propose ${proposed.level}.`] : [];
  return [`Level: ${level}, by ${name} (edition ${edition}), confirmed by ${by} on ${sayDate(on)}${changed}${because}.`, ...differs];
}

/** Without what is missing: its names may be private matters. */
function sayProposed({ proposed }: VisitAssessment): string {
  if (!proposed) return 'no list is set for this age';
  if (proposed.level === null) return `not yet assessable by ${proposed.screenName}`;
  const others = proposed.possibleLevels.filter((level) => level !== proposed.level);
  const open = others.length > 0 ? `, ${others.join(', ')} not excluded` : '';
  return `${proposed.screenName} proposes ${proposed.level}${open}`;
}

const sayWord = (id: string) => id.replaceAll('-', ' ');

function sayFinding({ tooth, surface, kind, activity }: Finding): string {
  const how = activity === undefined ? '' : activity === 'not-assessed' ? ', activity not assessed' : `, ${activity}`;
  return `${tooth}${surface ? ` ${surface}` : ''} ${sayWord(kind)}${how}`;
}

function sayFindings({ input: { visit } }: NoteInput): string[] {
  const fresh = visit.findings.filter((finding) => finding.isNew);
  const carried = visit.findings.filter((finding) => !finding.isNew);
  const examined =
    visit.allExamined === true
      ? 'whole mouth examined'
      : visit.allExamined === false
        ? 'not every tooth and surface examined'
        : 'whether the whole mouth was examined is not noted';
  const list = (findings: readonly Finding[]) => findings.map(sayFinding).join('; ');
  const isUnknown = visit.findings.length === 0 && visit.allExamined !== true;
  return [
    `Findings, new: ${fresh.length > 0 ? list(fresh) : isUnknown ? 'none noted' : 'none'} (${examined}).`,
    ...(carried.length > 0 ? [`Findings, from before: ${list(carried)}.`] : []),
  ];
}

/** The number with its verdict, or why there is none, with the conditions that were not met. */
function sayReading({ input, assessment: { reading } }: NoteInput): string[] {
  const meter = input.practice.meters.find(({ id }) => id === input.visit.meterId);
  const cutoff = reading.rlu !== undefined && meter ? ` Cut-off of ${meter.name}: ${sayNumber(meter.cutoffRlu)} RLU.` : '';
  const isCautioned = reading.counted && reading.state === 'flagged';
  const caution = isCautioned
    ? ` ${reading.sentences.find((sentence) => sentence.startsWith('Counted, with caution')) ?? 'Counted, with caution.'}`
    : '';
  const kept = reading.state === 'void' && reading.rlu !== undefined ? ` The number, ${sayNumber(reading.rlu)} RLU, decides nothing.` : '';
  const purpose = reading.counted ? ' It does not say decay and does not enter the level.' : '';
  return [`Swab reading: ${reading.headline}${cutoff}${caution}${kept}${purpose}`];
}

const nameOf = ({ input }: NoteInput, id: string): string => input.practice.shelf.find((item) => item.id === id)?.name ?? id;

/** "Paste, sodium fluoride 1.1 % (4,977 ppm F), 2 times a day". */
function sayLine({ name, use }: PlanLine): string {
  if (use.atVisit) return `${name}, at the visit`;
  return use.timesPerDay > 0 ? `${name}, ${use.timesPerDay === 1 ? 'once' : `${use.timesPerDay} times`} a day` : name;
}

function sayAgreed(note: NoteInput): string[] {
  const { plan } = note.assessment;
  const { agreed, stopUsing = [] } = note.input.visit;
  const word = (line: PlanLine) => agreed?.items?.[line.shelfItemId];
  const list = (lines: readonly PlanLine[]) => lines.map(sayLine).join('; ');
  const taken = plan.lines.filter((line) => word(line) === 'agreed');
  const open = plan.lines.filter((line) => word(line) === undefined);
  return [
    ...(plan.lines.length === 0 ? ['Home care: nothing offered.'] : []),
    ...(taken.length > 0 ? [`Agreed: ${list(taken)}.`] : []),
    ...(open.length > 0 ? [`Offered, no word noted: ${list(open)}.`] : []),
    ...(typeof agreed?.tasksAccepted === 'number' ? [`Tasks a day accepted at most: ${agreed.tasksAccepted}.`] : []),
    ...(agreed?.keep ? [`To keep: ${agreed.keep}`] : []),
    ...(agreed?.tryThis ? [`To try: ${agreed.tryThis}`] : []),
    ...(stopUsing.length > 0 ? [`To stop: ${stopUsing.join('; ')}.`] : []),
  ];
}

function sayDeclined(note: NoteInput): string[] {
  const { agreed } = note.input.visit;
  const said = Object.entries(agreed?.items ?? {});
  const instead = (id: string) => {
    const taken = agreed?.instead?.[id];
    return taken === undefined || taken === id ? '' : `; instead ${nameOf(note, taken)}`;
  };
  const list = (state: string, say: (id: string) => string) => said.filter(([, word]) => word === state).map(([id]) => say(id));
  const declined = list('declined', (id) => `${nameOf(note, id)} (${agreed?.declinedWhy?.[id] || 'reason not noted'}${instead(id)})`);
  const costly = list('not-affordable', (id) => `${nameOf(note, id)}${instead(id) ? ` (${instead(id).slice(2)})` : ''}`);
  return [
    ...(declined.length > 0 ? [`Declined: ${declined.join('; ')}.`] : []),
    ...(costly.length > 0 ? [`Not affordable: ${costly.join('; ')}.`] : []),
  ];
}

function saySignatures({ assessment: { plan }, input }: NoteInput): string[] {
  const signed = plan.lines.filter((line) => line.state === 'signed');
  const waiting = wantedLines(plan.lines, input.visit.agreed).filter((line) => line.state === 'waiting-for-signature');
  return [
    ...signed.map(
      (line) => `Signed: ${line.name}, by ${line.signedBy?.name ?? 'a name that is not noted'}${sayFor(line)}${sayOverride(line)}.`,
    ),
    ...(waiting.length > 0 ? [`Waiting for a signature: ${waiting.map((line) => line.name).join('; ')}.`] : []),
  ];
}

/** How far the signature goes; one that is used at the visit goes no further. */
const sayFor = ({ signedBy, use }: PlanLine): string => (signedBy && use.atVisit !== true ? `, for ${sayCovers(signedBy, sayDate)}` : '');

const sayOverride = ({ signedBy }: PlanLine): string =>
  signedBy?.override ? `, against rule ${signedBy.override.ruleId}, because ${signedBy.override.reason}` : '';

function saySince({ input: { visit } }: NoteInput): string[] {
  const { pastCare = [], used = {} } = visit;
  const inUse = pastCare.filter((care) => !care.turnedDown && (care.until === undefined || used[care.shelfItemId]));
  if (inUse.length === 0) return [];
  const say = ({ shelfItemId, name }: PastCare) => {
    const said = used[shelfItemId];
    return `${name}: ${said ? sayWord(said.adherence) : 'not asked'}${said?.why ? ` (${said.why})` : ''}`;
  };
  return [`Since last time: ${inUse.map(say).join('; ')}.`];
}

function sayGoals({ input: { visit } }: NoteInput): string[] {
  const { goals = [], pastGoals = [], goalsSince = {} } = visit;
  const past = pastGoals.map(({ id, text }) => `"${text}": ${sayWord(goalsSince[id] ?? 'not asked')}`);
  return [
    ...(past.length > 0 ? [`Goals of earlier visits: ${past.join('; ')}.`] : []),
    ...(goals.length > 0 ? [`Goals, in the patient's words: ${goals.map((goal) => `"${goal}"`).join('; ')}.`] : []),
  ];
}

function saySpeaker({ input: { visit } }: NoteInput): string[] {
  const { speaker } = visit;
  if (!speaker) return [];
  const { who, name, interpreter } = speaker;
  return [`Spoke for the visit: ${who}${name ? `, ${name}` : ''}; interpreter ${interpreter ? sayWord(interpreter) : 'not asked'}.`];
}

function sayNext({ input: { visit }, assessment: { plan } }: NoteInput): string[] {
  if (visit.nextOn) return [`Next visit: ${sayDate(visit.nextOn)}.`];
  if (!plan.recall) return ['Next visit: no date agreed.'];
  const { fromMonths, toMonths } = plan.recall;
  const months = fromMonths === toMonths ? `${fromMonths}` : `${fromMonths} to ${toMonths}`;
  return [`Next visit: no date agreed; suggested in ${months} months.`];
}

function sayBitewings({ assessment: { plan } }: NoteInput): string[] {
  return plan.bitewingsSentence === '' ? [] : [plan.bitewingsSentence];
}

function sayPrivate({ input: { visit }, tables }: NoteInput): string[] {
  const answered = tables.questions.filter((question) => question.private && visit.answers[question.id]);
  if (answered.length === 0) return [];
  return [`Private: ${answered.map((question) => `${question.label}: ${sayAnswer(question, visit.answers[question.id])}`).join('; ')}.`];
}

function sayAnswer({ choices = [], unit }: Question, answer: Answer | undefined): string {
  const value = answer?.value;
  if (value === undefined) return sayWord(answer?.how ?? 'not-asked');
  const label = (id: string) => choices.find((choice) => choice.id === id)?.label ?? id;
  if (typeof value === 'boolean') return value ? 'yes' : 'no';
  if (typeof value === 'number') return unit ? `${sayNumber(value)} ${unit}` : sayNumber(value);
  if (typeof value === 'string') return label(value);
  return value.length === 0 ? 'none' : value.map(label).join(', ');
}

/** That and why it was corrected; the note itself shows how it stands now. */
function sayCorrections({ corrections = [] }: NoteInput): string[] {
  return corrections.map(({ on, by, reason }) => `Corrected on ${sayDate(on)} by ${by}: ${reason}.`);
}
