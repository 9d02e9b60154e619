import type { VisitBundle } from '../../../api/bundles.ts';
import type { PlanLine } from '../../../core/regimen/types.ts';
import type { AnswerValue } from '../../../core/visit/answer.ts';
import { isPrivateChoice } from '../../../core/visit/privacy.ts';
import type { Question } from '../../../core/visit/question.ts';
import type { VisitAssessment, VisitInput } from '../../../core/visit/types.ts';
import { agreeField, allAgreed, swapItems } from './agreeLines.ts';
import { ALL_EXAMINED, LEVEL_REASON, LEVEL_TO, type Privacy } from './buildLines.ts';
import { findingsAfter } from './findingChanges.ts';
import { afterFindingReply, type FindingDraft, NEW_FINDING } from './findings.ts';
import { nextWanted } from './keys.ts';
import type { Line, Reply } from './line.ts';
import { MORE_REGIMENS, OTHER_REGIMEN, TASKS_ACCEPTED, tasksOfReply } from './planLines.ts';
import { isOtherReason } from './reasons.ts';
import { RHYTHM, rhythmOfReply } from './rhythmLine.ts';
import { isQuestionScope, SCOPES, type Scope } from './scopes.ts';
import { isSinceLine, sinceField } from './sinceLines.ts';
import { markAlone, SPEAKER, type SpeakerPlace, speakerAfter } from './speakerLines.ts';
import { presetLot, readingAfter, readingProblem } from './swabLines.ts';

export interface Place {
  readonly scope: Scope;
  readonly line: string | null;
}

export interface LevelChangeDraft {
  readonly level: string | null;
}

export interface ReplyPlace {
  readonly input: VisitInput;
  readonly members: VisitBundle['members'];
  readonly memberId: string;
  /** ISO time. */
  readonly now: string;
  readonly newFinding: FindingDraft | null;
  readonly levelChange: LevelChangeDraft | null;
  readonly questions: readonly Question[];
  readonly speaker: SpeakerPlace;
  readonly privacy?: Privacy | undefined;
}

/** What an answer does: fields to save, drafts that change, and where the keys go from there. */
export interface ReplyEffect {
  readonly puts: readonly { readonly path: string; readonly value: unknown }[];
  /** `next`: decided on the lines as they are once the answer is in. */
  readonly to: 'next' | 'stay' | Place;
  readonly problem?: string;
  readonly newFinding?: FindingDraft | null;
  readonly levelChange?: LevelChangeDraft;
  readonly confirm?: { readonly level: string; readonly reason: string };
}

const NOTHING: ReplyEffect = { puts: [], to: 'stay' };

export function effectOfReply(scope: Scope, line: string, reply: Reply, place: ReplyPlace): ReplyEffect {
  const effect = TAKERS[scope](line, reply, place);
  return reply.how === 'asked' && reply.stay && effect.to === 'next' ? { ...effect, to: 'stay' } : effect;
}

type Taker = (line: string, reply: Reply, place: ReplyPlace) => ReplyEffect;

const takeQuestion: Taker = (line, reply, { input, questions, privacy }) => {
  const askedOn = input.visit.onDate;
  const question = questions.find((q) => q.id === line);
  const alone = question?.private === true ? markAlone(input.visit, line) : {};
  const before = privacy === undefined ? undefined : input.visit.answers[line]?.value;
  const answer =
    reply.how === 'asked'
      ? { how: reply.how, value: question ? keepHidden(question, reply.value, before) : reply.value, askedOn, ...alone }
      : { how: reply.how, askedOn, ...alone };
  return { puts: [{ path: `answers.${line}`, value: answer }], to: 'next' };
};

/** A choice that was out of sight is not taken off by choosing among the others. */
function keepHidden(question: Question, value: AnswerValue, before: AnswerValue | undefined): AnswerValue {
  if (!Array.isArray(value) || !Array.isArray(before)) return value;
  return [...value, ...before.filter((choice) => isPrivateChoice(question, choice) && !value.includes(choice))];
}

const takeSafety: Taker = (line, reply, place) => {
  const speaker = speakerAfter(line, reply, place.speaker);
  if (speaker) return { puts: [{ path: 'speaker', value: speaker }], to: 'next' };
  return line.startsWith(SPEAKER) ? NOTHING : takeQuestion(line, reply, place);
};

const takeSwab: Taker = (line, reply, { input, members, memberId, now }) => {
  const { visit, practice } = input;
  const before = visit.reading ?? {};
  const taker = members.find((m) => m.id === memberId);
  const operator = taker?.trainedSwab ? { name: taker.name, trained: true } : undefined;
  const swabPlace = { reading: before, lots: practice.lots, members, onDate: visit.onDate };
  const reading = readingAfter(before, line, reply, swabPlace, { now, lotId: presetLot(practice.lots, visit.onDate), operator });
  const onlyMeter = practice.meters.length === 1 ? practice.meters[0] : undefined;
  const meter = practice.meters.find((m) => m.id === visit.meterId) ?? onlyMeter;
  const problem = readingProblem(reading, meter, practice.lots);
  if (problem) return { ...NOTHING, problem };
  const meterPut = visit.meterId === undefined && onlyMeter && reading.rlu !== undefined ? [{ path: 'meterId', value: onlyMeter.id }] : [];
  return { puts: [...meterPut, { path: 'reading', value: reading }], to: 'next' };
};

const takeLook: Taker = (line, reply, place) => {
  if (line === NEW_FINDING) return takeFinding(line, reply, place);
  if (line === ALL_EXAMINED) return reply.how === 'asked' ? { puts: [{ path: ALL_EXAMINED, value: reply.value }], to: 'next' } : NOTHING;
  const changed = reply.how === 'asked' ? findingsAfter(place.input.visit.findings, line, String(reply.value)) : undefined;
  if (changed) return { puts: [{ path: 'findings', value: changed }], to: { scope: 'look', line: null } };
  return takeQuestion(line, reply, place);
};

const takeFinding: Taker = (line, reply, { input, newFinding }) => {
  const { findings } = input.visit;
  const next = afterFindingReply(newFinding ?? {}, reply, findings);
  if ('open' in next) return { puts: [], newFinding: null, to: { scope: 'look', line: next.open } };
  if ('problem' in next) return { ...NOTHING, problem: next.problem };
  if ('draft' in next) return { puts: [], newFinding: next.draft, to: { scope: 'look', line } };
  return {
    puts: [{ path: 'findings', value: [...findings, next.finding] }],
    newFinding: null,
    to: { scope: 'look', line: null },
  };
};

const takeLevel: Taker = (line, reply, { levelChange }) => {
  if (reply.how !== 'asked') return NOTHING;
  const text = String(reply.value);
  if (line === LEVEL_TO) return { puts: [], levelChange: { level: text }, to: { scope: 'level', line: LEVEL_REASON } };
  if (line !== LEVEL_REASON || !levelChange?.level) return { ...NOTHING, problem: 'Choose the level first.' };
  if (text === '') return { ...NOTHING, problem: 'A reason is needed to change the level.' };
  return { ...NOTHING, confirm: { level: levelChange.level, reason: text } };
};

const takeHome: Taker = (line, reply, place) => {
  if (!isSinceLine(line)) return takeQuestion(line, reply, place);
  const field = sinceField(line, reply, place.input.visit);
  if (!field) return NOTHING;
  return { puts: [field], to: reply.how === 'asked' && isOtherReason(String(reply.value)) ? { scope: 'home', line } : 'next' };
};

/** Another pack in the place of the open one, another regimen, how the days run, or how many tasks are accepted; what the person says to it is asked under Agree. */
const takePlan: Taker = (line, reply, { input }) => {
  if (reply.how !== 'asked') return NOTHING;
  const { agreed = {} } = input.visit;
  const taken = String(reply.value);
  if (line === TASKS_ACCEPTED)
    return { puts: [{ path: 'agreed', value: { ...agreed, tasksAccepted: tasksOfReply(taken) } }], to: PLAN_HEAD };
  if (line === RHYTHM) return { puts: [{ path: 'agreed', value: { ...agreed, rhythm: rhythmOfReply(taken) } }], to: PLAN_HEAD };
  if (line === MORE_REGIMENS || line === OTHER_REGIMEN)
    return { puts: [{ path: 'agreed', value: { ...agreed, regimen: taken } }], to: PLAN_HEAD };
  return {
    puts: [{ path: 'agreed', value: { ...agreed, instead: swapItems(agreed.instead ?? {}, line, taken) } }],
    to: { scope: 'plan', line: taken },
  };
};

const PLAN_HEAD: Place = { scope: 'plan', line: null };

const takeAgree: Taker = (line, reply, { input }) => {
  const field = agreeField(line, reply, input.visit);
  if (!field) return NOTHING;
  const asksWords = line.startsWith('why ') && reply.how === 'asked' && isOtherReason(String(reply.value));
  return { puts: [field], to: asksWords ? { scope: 'agree', line } : 'next' };
};

const TAKERS: Readonly<Record<Scope, Taker>> = {
  safety: takeSafety,
  swab: takeSwab,
  food: takeQuestion,
  home: takeHome,
  health: takeQuestion,
  look: takeLook,
  level: takeLevel,
  plan: takePlan,
  agree: takeAgree,
};

/**
 * "=": every answer carried into the scope was asked again and has not changed; under Plan, how the days run; under Agree, every line of
 * the plan is agreed.
 * @param assess  gives the plan of this input
 */
export function effectOfReconfirm(
  scope: Scope,
  lines: readonly Line[],
  input: VisitInput,
  assess: () => Pick<VisitAssessment, 'plan'>,
): ReplyEffect {
  if (scope === 'agree') return { puts: [{ path: 'agreed', value: allAgreed(assess().plan.lines, input.visit.agreed) }], to: 'next' };
  if (scope === 'plan') return rhythmAgain(lines, input);
  if (!isQuestionScope(scope)) return NOTHING;
  const askedOn = input.visit.onDate;
  const again = lines.flatMap((line) => {
    // The answer itself, since a line may show only a part of it.
    const value = input.visit.answers[line.id]?.value;
    const alone = line.private ? markAlone(input.visit, line.id) : {};
    return line.reconfirmable && value !== undefined
      ? [{ path: `answers.${line.id}`, value: { how: 'asked', value, askedOn, ...alone } }]
      : [];
  });
  return { puts: again, to: 'next' };
}

function rhythmAgain(lines: readonly Line[], { visit: { agreed, pastRhythm } }: VisitInput): ReplyEffect {
  const isCarried = lines.some(({ id, reconfirmable }) => id === RHYTHM && reconfirmable);
  if (!isCarried || !pastRhythm) return NOTHING;
  return { puts: [{ path: 'agreed', value: { ...agreed, rhythm: pastRhythm.rhythm } }], to: PLAN_HEAD };
}

/** After an answer: the next line that wants a key, else the scope itself while "=" has work there, else the scope that follows. */
export function placeAfter({ scope, line }: Place, lines: Readonly<Record<Scope, readonly Line[]>>): Place {
  const next = nextWanted(lines[scope], line);
  if (next) return { scope, line: next };
  if (isQuestionScope(scope) && lines[scope].some((l) => l.reconfirmable)) return { scope, line: null };
  const following = SCOPES[SCOPES.indexOf(scope) + 1];
  return following ? enter(following, lines) : { scope, line: null };
}

/** A scope is entered at its heading when "=" has work there, else at its first line that wants a key. */
export function enter(scope: Scope, lines: Readonly<Record<Scope, readonly Line[]>>): Place {
  const canReconfirm = lines[scope].some((l) => l.reconfirmable);
  const first = isQuestionScope(scope) && !canReconfirm ? lines[scope].find((l) => l.wanted) : undefined;
  return { scope, line: first?.id ?? null };
}

/** Where a visit opens: for a dentist at what waits for a signature, else at the first questions that want a key. */
export function firstPlace(
  lines: Readonly<Record<Scope, readonly Line[]>>,
  plan: readonly Pick<PlanLine, 'shelfItemId' | 'state'>[],
): Place {
  const waiting = plan.find((line) => line.state === 'waiting-for-signature');
  if (waiting) return { scope: 'plan', line: waiting.shelfItemId };
  const scope = SCOPES.find((s) => isQuestionScope(s) && lines[s].some((l) => l.wanted || l.reconfirmable));
  return scope ? enter(scope, lines) : { scope: 'level', line: null };
}
