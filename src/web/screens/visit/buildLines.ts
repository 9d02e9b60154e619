import type { VisitBundle } from '../../../api/bundles.ts';
import type { PlanLine } from '../../../core/regimen/types.ts';
import type { Answers } from '../../../core/visit/answer.ts';
import { plannedAtHome } from '../../../core/visit/plannedAtHome.ts';
import type { Question, QuestionGroup } from '../../../core/visit/question.ts';
import { dayForUses } from '../../../core/visit/rhythmOfVisit.ts';
import { rhythmSaid } from '../../../core/visit/rhythmSaid.ts';
import type { VisitAssessment, VisitInput } from '../../../core/visit/types.ts';
import { content, shelfName } from '../../content.ts';
import { agreeLines } from './agreeLines.ts';
import { findingLines } from './findingChanges.ts';
import { type FindingDraft, newFindingLine } from './findings.ts';
import { type Line, lettersWithout } from './line.ts';
import { listSwaps, planLines } from './planLines.ts';
import { questionLines } from './questionLines.ts';
import { rhythmLine } from './rhythmLine.ts';
import type { Scope } from './scopes.ts';
import { sinceLines } from './sinceLines.ts';
import { SPEAKER_LETTERS, type SpeakerPlace, speakerLines } from './speakerLines.ts';
import { swabLines } from './swabLines.ts';

export interface LinesPlace {
  readonly bundle: VisitBundle;
  readonly input: VisitInput;
  readonly assessment: VisitAssessment;
  readonly questions: readonly Question[];
  readonly carried: Answers;
  readonly newFinding: FindingDraft | null;
  readonly levelChange: { readonly level: string | null } | null;
  readonly isClosed: boolean;
  /** Who else sees the page; absent = nobody. */
  readonly privacy?: Privacy | undefined;
}

export type VisitLines = Readonly<Record<Scope, readonly Line[]>>;

/** Letters that are commands of a scope, and so never the letter of a line. */
export const SCOPE_COMMANDS: Readonly<Record<Scope, string>> = {
  safety: '',
  swab: 'ut',
  food: '',
  home: '',
  health: '',
  look: '+fc',
  level: 'cg',
  plan: 'spruo',
  agree: 'zpv',
};

export const ALL_EXAMINED = 'allExamined';

export function buildLines(place: LinesPlace): VisitLines {
  const { bundle, input, assessment } = place;
  const { visit, practice } = input;
  const nameOf = (id: string) => shelfName(practice.shelf, id);
  return {
    safety: [
      ...speakerLines({
        ...speakerPlace(place),
        isPast: bundle.state !== 'open',
        isCorrecting: bundle.state !== 'open' && !place.isClosed,
      }),
      ...groupLines('safety', place),
    ],
    swab: swabLines({ reading: visit.reading ?? {}, lots: practice.lots, members: bundle.members, onDate: visit.onDate }),
    food: groupLines('food', place),
    home: homeLines(place),
    health: groupLines('health', place),
    look: lookLines(place),
    level: levelLines(place),
    plan: planLines({
      plan: assessment.plan,
      agreed: visit.agreed,
      commands: SCOPE_COMMANDS.plan,
      isWaiting: plannedAtHome(assessment.plan.lines, practice.shelf, visit.agreed).some(isWaiting),
      rhythm: dayForUses(visit) ? null : rhythmLineOf(visit),
      nameOf,
    }),
    agree: withoutPrivate(
      place.privacy,
      agreeLines({
        planLines: assessment.plan.lines,
        swapsFor: (id, why) => listSwaps(assessment.plan, id, why),
        nameOf,
        visit,
        proposed: assessment.leaflet,
        isClosed: place.isClosed,
      }),
    ),
  };
}

const isWaiting = ({ state }: { readonly state: PlanLine['state'] }): boolean => state === 'waiting-for-signature';

function rhythmLineOf(visit: VisitInput['visit']): Line {
  const { rhythmKept } = content.dayUses;
  return rhythmLine({ said: rhythmSaid(visit, rhythmKept), past: visit.pastRhythm, source: rhythmKept.source });
}

/** "shown": the patient, and whoever is with the patient, looks at the page. "overheard": somebody else speaks after private words. */
export type Privacy = 'shown' | 'overheard';

function withoutPrivate(privacy: Privacy | undefined, lines: readonly Line[]): readonly Line[] {
  return privacy === undefined ? lines : lines.filter((line) => !line.private);
}

export const speakerPlace = ({ bundle, input, assessment }: Pick<LinesPlace, 'bundle' | 'input' | 'assessment'>): SpeakerPlace => ({
  profile: bundle.profile,
  ageYears: assessment.ageYears,
  speaker: input.visit.speaker,
});

/** What became of last time's home care and goals comes first, where there was any. */
function homeLines(place: LinesPlace): readonly Line[] {
  const questions = groupLines('home', place);
  const free = lettersWithout('').filter((letter) => !questions.some((line) => line.letter === letter));
  return [...withoutPrivate(place.privacy, sinceLines(place.input.visit, free)), ...questions];
}

/** Letters that other lines of the group's scope have. */
export function reservedLettersOf(group: QuestionGroup): string {
  if (group === 'look') return LOOK_LETTERS;
  return group === 'safety' ? SPEAKER_LETTERS : '';
}

function groupLines(group: QuestionGroup, { input, assessment, questions, carried, privacy }: LinesPlace): readonly Line[] {
  const couldChange = new Set(assessment.proposed?.missing.filter((m) => m.couldChangeLevel).map((m) => m.item));
  return questionLines({
    questions: questions.filter(({ id }) => !assessment.mouth.notAsked.includes(id)),
    group,
    ageYears: assessment.ageYears,
    onDate: input.visit.onDate,
    birthDate: input.person.birthDate,
    answers: input.visit.answers,
    carried,
    unknown: new Map(assessment.unknownAnswers.map((u) => [u.question, u.kind])),
    couldChangeLevel: new Set(questions.filter((q) => q.fills.some((f) => couldChange.has(f.item))).map((q) => q.id)),
    ...(assessment.weightDoubt === undefined ? {} : { doubts: { weight_kg: assessment.weightDoubt } }),
    reservedLetters: reservedLettersOf(group),
    privacy,
  });
}

const ALL_EXAMINED_LETTER = 'w';
const LOOK_LETTERS = `${ALL_EXAMINED_LETTER}${SCOPE_COMMANDS.look}`;

/** Findings first, as they are what changes most; questions keep their letters however many findings there are. */
function lookLines(place: LinesPlace): readonly Line[] {
  const { visit } = place.input;
  const asked = groupLines('look', place);
  const free = lettersWithout(LOOK_LETTERS + asked.map(({ letter }) => letter).join(''));
  return [
    ...findingLines(visit.findings, free),
    ...(place.assessment.mouth.kind === 'level-does-not-apply' ? [] : [allExaminedLine(visit.allExamined)]),
    ...asked,
    ...(place.newFinding ? [newFindingLine(place.newFinding, visit.findings)] : []),
  ];
}

const PLAIN = { mayBeUnknown: false, wanted: false, reconfirmable: false, private: false, sources: [] } as const;

function allExaminedLine(value: boolean | undefined): Line {
  return {
    ...PLAIN,
    id: ALL_EXAMINED,
    letter: ALL_EXAMINED_LETTER,
    label: 'Whole mouth examined',
    prompt: 'Every tooth and surface seen today? Only then does no finding mean sound.',
    entry: { kind: 'yes-no' },
    text: value === undefined ? 'not noted' : value ? 'yes' : 'no',
    tone: value === undefined ? 'unknown' : 'new',
    wanted: value === undefined,
    value,
  };
}

export const LEVEL_TO = 'level-to';
export const LEVEL_REASON = 'level-reason';

function levelLines({ assessment, levelChange }: LinesPlace): readonly Line[] {
  const levels = assessment.proposed?.levels ?? [];
  if (!levelChange || levels.length === 0) return [];
  const to: Line = {
    ...PLAIN,
    id: LEVEL_TO,
    letter: 'a',
    label: 'Change to',
    entry: { kind: 'choice', choices: levels.map((level) => ({ id: level, label: level })) },
    text: levelChange.level ?? 'not chosen',
    tone: 'new',
    wanted: levelChange.level === null,
    value: levelChange.level ?? undefined,
  };
  const reason: Line = {
    ...PLAIN,
    id: LEVEL_REASON,
    letter: 'b',
    label: 'Because',
    entry: { kind: 'text', hint: 'kept on the record' },
    text: '',
    tone: 'new',
    wanted: true,
  };
  return [to, reason];
}
