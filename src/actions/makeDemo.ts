import { content } from '../content/allContent.ts';
import { addDays } from '../content/demo/days.ts';
import type { DemoReply } from '../content/demo/drawReplies.ts';
import { demoMembers } from '../content/demo/members.ts';
import { buildDemoPeople, type DemoPerson, type DemoVisit } from '../content/demo/people.ts';
import { buildDemoPractice } from '../content/demo/practice.ts';
import type { PlanLine } from '../core/regimen/types.ts';
import type { Level, RiskResult } from '../core/risk/types.ts';
import { assessVisit } from '../core/visit/assessVisit.ts';
import type { VisitInput } from '../core/visit/types.ts';
import { listCoursesOfVisit } from '../store/read/courses.ts';
import type { MemberIdentity, SiteScope } from '../store/siteScope.ts';
import { saveDraftField } from '../store/write/draftFields.ts';
import { addMember } from './addMember.ts';
import { addPatient } from './addPatient.ts';
import { confirmLevel } from './confirmLevel.ts';
import type { ActionContext } from './context.ts';
import { createPractice, type FoundingContext } from './createPractice.ts';
import { digestOf, finishVisit } from './finishVisit.ts';
import { loadVisit } from './loadVisit.ts';
import { openVisit } from './openVisit.ts';
import { signItem } from './signItem.ts';

const SEED = 2_611;

export interface MakeDemoInput {
  /** ISO local date at the practice. */
  readonly today: string;
  readonly seed?: number | undefined;
  /** Told after every visit that was made. */
  readonly onProgress?: ((made: { readonly done: number; readonly of: number }) => void) | undefined;
}

/** The invented team, by the ids of `demoMembers`. */
interface DemoTeam {
  readonly lead: ActionContext;
  readonly of: (memberId: string) => ActionContext;
}

/**
 * Fills an empty store with the invented practice: its team, eighty people, and their past visits, each opened, answered, assessed,
 * confirmed, closed and signed by the same actions that a real practice uses, at the time at which it would have happened.
 */
export async function makeDemo(
  founding: FoundingContext,
  { today, seed = SEED, onProgress }: MakeDemoInput,
): Promise<{ scope: SiteScope; firstMemberId: string }> {
  const people = buildDemoPeople(seed, today);
  const newcomersAt = `${addDays(today, -1)}T16:30:00.000Z`;
  const steps = people.flatMap((person) => listSteps(person, newcomersAt)).sort((a, b) => (a.at < b.at ? -1 : a.at > b.at ? 1 : 0));
  const clock = buildClock(addDays(steps[0]?.at.slice(0, 10) ?? today, -1));
  const team = await makeTeam({ ...founding, now: clock.now }, today);
  const patientIds = new Map<DemoPerson, string>();
  for (const [done, { person, visit, at }] of steps.entries()) {
    clock.moveTo(at);
    const patientId = patientIds.get(person) ?? (await addPerson(team.lead, person));
    patientIds.set(person, patientId);
    if (visit) await makeVisit(team, clock, patientId, visit);
    onProgress?.({ done: done + 1, of: steps.length });
  }
  return { scope: team.lead.scope, firstMemberId: team.lead.actor.memberId };
}

async function addPerson(context: ActionContext, person: DemoPerson): Promise<string> {
  const { name, birthDate, language, interpreter, guardians, homes } = person;
  return (await addPatient(context, { name, birthDate, language, interpreter, guardians, homes })).patientId;
}

/** One thing to write: a visit, or a person who has had none yet. */
interface DemoStep {
  readonly person: DemoPerson;
  readonly visit?: DemoVisit;
  readonly at: string;
}

function listSteps(person: DemoPerson, newcomersAt: string): readonly DemoStep[] {
  if (person.visits.length === 0) return [{ person, at: newcomersAt }];
  return person.visits.map((visit) => ({ person, visit, at: visit.startedAt }));
}

/** The time at which things would have happened. It never runs back, so that the log is in order. */
interface DemoClock {
  readonly now: () => string;
  readonly moveTo: (time: string) => void;
}

function buildClock(startDate: string): DemoClock {
  let time = `${startDate}T09:00:00.000Z`;
  return {
    now: () => time,
    moveTo: (next) => {
      if (next > time) time = next;
    },
  };
}

const MINUTE_MS = 60_000;

function minutesAfter(time: string, minutes: number): string {
  return new Date(Date.parse(time) + minutes * MINUTE_MS).toISOString();
}

async function makeTeam(founding: FoundingContext, today: string): Promise<DemoTeam> {
  const [lead, ...others] = demoMembers;
  if (!lead) throw new RangeError('the demonstration has no members');
  const { scope, memberId } = await createPractice(founding, {
    practice: buildDemoPractice(today),
    locale: 'en-GB',
    firstMember: { name: lead.name, roles: lead.roles, trainedSwab: lead.trainedSwab },
  });
  const contextOf = (actor: MemberIdentity): ActionContext => ({ ...founding, scope, actor });
  const leading = contextOf({ memberId, name: lead.name, roles: lead.roles });
  const contexts = new Map([[lead.id, leading]]);
  for (const { id, name, roles, trainedSwab } of others) {
    const added = await addMember(leading, { name, roles, trainedSwab });
    contexts.set(id, contextOf({ memberId: added.memberId, name, roles }));
  }
  return {
    lead: leading,
    of: (id) => {
      const context = contexts.get(id);
      if (!context) throw new RangeError(`the demonstration has no member ${id}`);
      return context;
    },
  };
}

async function makeVisit(team: DemoTeam, clock: DemoClock, patientId: string, visit: DemoVisit): Promise<void> {
  const { onDate, startedAt } = visit;
  const hygienist = team.of(visit.by);
  const { id: visitId } = await openVisit(hygienist, { patientId, kind: 'chair', onDate });
  clock.moveTo(minutesAfter(startedAt, 12));
  const { findings, allExamined, meterId, reading } = visit;
  const answers = Object.entries(visit.answers).map(([id, answer]) => [`answers.${id}`, answer] as const);
  await saveDraft(hygienist, visitId, [...answers, ...Object.entries({ findings, allExamined, meterId, reading })]);
  clock.moveTo(minutesAfter(startedAt, 20));
  const input = await confirmAsDrawn(hygienist, visitId, visit);
  clock.moveTo(minutesAfter(startedAt, 26));
  await saveDraft(hygienist, visitId, [['agreed', replyTo(assessVisit(input, content).plan.lines, visit.replies)]]);
  clock.moveTo(minutesAfter(startedAt, 30));
  const { plan } = await finishVisit(hygienist, visitId);
  clock.moveTo(minutesAfter(startedAt, 34));
  if (visit.signs) await signWhatWaits(team.of('ahlgren'), visitId, plan.lines);
}

/** Fields of the draft in one transaction, where a page would save one after the other. */
async function saveDraft(
  { db, scope, actor, now }: ActionContext,
  visitId: string,
  fields: readonly (readonly [path: string, value: unknown])[],
): Promise<void> {
  await db.transaction().execute(async (trx) => {
    for (const [path, value] of fields) {
      await saveDraftField(trx, scope, { visitId, path, value: JSON.stringify(value), memberId: actor.memberId, savedAt: now() }, 0);
    }
  });
}

/** Confirms the level of the saved answers. @returns the visit with what was confirmed */
async function confirmAsDrawn(context: ActionContext, visitId: string, { confirmation }: DemoVisit): Promise<VisitInput> {
  const { input } = await loadVisit(context.db, context.scope, visitId);
  const { proposed } = assessVisit(input, content);
  if (!proposed) return input;
  const level = stepFrom(proposed, confirmation.step);
  const reason =
    level === proposed.level ? undefined : (confirmation.reason ?? 'Not everything is known yet; taken as the least it can be');
  const confirmed = await confirmLevel(context, {
    visitId,
    protocol: proposed.protocol,
    edition: proposed.edition,
    proposed: proposed.level,
    level,
    reason,
    inputDigest: digestOf(input),
    codeVersion: content.versions.code,
    contentVersion: content.versions.content,
  });
  return { ...input, visit: { ...input.visit, confirmed } };
}

/** A level up or down on the list, where there is one. */
function stepFrom({ level, notYet, levels }: RiskResult, step: -1 | 0 | 1): Level {
  const from = level ?? notYet?.atLeast ?? 'moderate';
  return levels[levels.indexOf(from) + step] ?? from;
}

function replyTo(lines: readonly PlanLine[], replies: readonly DemoReply[]): NonNullable<VisitInput['visit']['agreed']> {
  const said = lines.flatMap(({ shelfItemId }, i) => {
    const reply = replies[i];
    return reply ? [{ shelfItemId, ...reply }] : [];
  });
  return {
    items: Object.fromEntries(said.map(({ shelfItemId, said: state }) => [shelfItemId, state])),
    declinedWhy: Object.fromEntries(said.flatMap(({ shelfItemId, why }) => (why === undefined ? [] : [[shelfItemId, why]]))),
  };
}

async function signWhatWaits(dentist: ActionContext, visitId: string, lines: readonly PlanLine[]): Promise<void> {
  const courses = await listCoursesOfVisit(dentist.db, dentist.scope, visitId);
  const waits = (line: PlanLine) => courses.some(({ shelfItemId, state }) => shelfItemId === line.shelfItemId && state === 'waiting');
  for (const { shelfItemId } of lines.filter(waits)) await signItem(dentist, { visitId, shelfItemId, stops: [], waits: true });
}
