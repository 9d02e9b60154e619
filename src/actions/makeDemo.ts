import { content } from '../content/allContent.ts';
import { addDays } from '../content/demo/days.ts';
import { demoMembers } from '../content/demo/members.ts';
import { buildDemoPeople, type DemoPerson, type DemoVisit } from '../content/demo/people.ts';
import { buildDemoPractice } from '../content/demo/practice.ts';
import type { Level, RiskResult } from '../core/risk/types.ts';
import { assessVisit } from '../core/visit/assessVisit.ts';
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
}

/** Who does what in the demonstration. */
interface DemoTeam {
  readonly hygienist: ActionContext;
  readonly dentist: ActionContext;
}

/**
 * Fills an empty store with the invented practice: its team, thirty people, and their past visits, each opened, answered, assessed,
 * confirmed, signed and closed by the same actions that a real practice uses, at the time at which it would have happened.
 */
export async function makeDemo(
  founding: FoundingContext,
  { today, seed = SEED }: MakeDemoInput,
): Promise<{ scope: SiteScope; firstMemberId: string }> {
  const people = buildDemoPeople(seed, today);
  const newcomersAt = `${addDays(today, -1)}T16:30:00.000Z`;
  const steps = people.flatMap((person) => listSteps(person, newcomersAt)).sort((a, b) => (a.at < b.at ? -1 : a.at > b.at ? 1 : 0));
  const clock = buildClock(addDays(steps[0]?.at.slice(0, 10) ?? today, -1));
  const { scope, team } = await makeTeam({ ...founding, now: clock.now }, today);
  const patientIds = new Map<DemoPerson, string>();
  for (const { person, visit, at } of steps) {
    clock.moveTo(at);
    const { name, birthDate, language } = person;
    const patientId = patientIds.get(person) ?? (await addPatient(team.hygienist, { name, birthDate, language })).patientId;
    patientIds.set(person, patientId);
    if (visit) await makeVisit(team, clock, patientId, visit);
  }
  return { scope, firstMemberId: team.hygienist.actor.memberId };
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

async function makeTeam(founding: FoundingContext, today: string): Promise<{ scope: SiteScope; team: DemoTeam }> {
  const [lead, ...others] = demoMembers;
  if (!lead) throw new RangeError('the demonstration has no members');
  const { scope, memberId } = await createPractice(founding, {
    practice: buildDemoPractice(today),
    locale: 'en-GB',
    firstMember: { name: lead.name, roles: lead.roles, trainedSwab: lead.trainedSwab },
  });
  const contextOf = (actor: MemberIdentity): ActionContext => ({ ...founding, scope, actor });
  const hygienist = contextOf({ memberId, name: lead.name, roles: lead.roles });
  let dentist = hygienist;
  for (const { name, roles, trainedSwab } of others) {
    const added = await addMember(hygienist, { name, roles, trainedSwab });
    if (roles.includes('dentist')) dentist = contextOf({ memberId: added.memberId, name, roles });
  }
  return { scope, team: { hygienist, dentist } };
}

async function makeVisit({ hygienist, dentist }: DemoTeam, clock: DemoClock, patientId: string, visit: DemoVisit): Promise<void> {
  const { onDate, startedAt } = visit;
  const { id: visitId } = await openVisit(hygienist, { patientId, kind: 'chair', onDate });
  clock.moveTo(minutesAfter(startedAt, 12));
  await saveDraft(hygienist, visitId, visit);
  clock.moveTo(minutesAfter(startedAt, 20));
  await confirmAsDrawn(hygienist, visitId, visit);
  clock.moveTo(minutesAfter(startedAt, 26));
  if (visit.signs) await signWhatWaits(dentist, visitId);
  clock.moveTo(minutesAfter(startedAt, 30));
  await finishVisit(hygienist, visitId);
}

/** Every field of the draft in one transaction, where a page would save one after the other. */
async function saveDraft({ db, scope, actor, now }: ActionContext, visitId: string, visit: DemoVisit): Promise<void> {
  const { findings, allExamined, meterId, reading } = visit;
  const answers = Object.entries(visit.answers).map(([id, answer]) => [`answers.${id}`, answer] as const);
  const fields = [...answers, ...Object.entries({ findings, allExamined, meterId, reading })];
  await db.transaction().execute(async (trx) => {
    for (const [path, value] of fields) {
      await saveDraftField(trx, scope, { visitId, path, value: JSON.stringify(value), memberId: actor.memberId, savedAt: now() }, 0);
    }
  });
}

async function confirmAsDrawn(context: ActionContext, visitId: string, { confirmation }: DemoVisit): Promise<void> {
  const { input } = await loadVisit(context.db, context.scope, visitId);
  const { proposed, versions } = assessVisit(input, content);
  if (!proposed) return;
  const level = stepFrom(proposed, confirmation.step);
  const reason =
    level === proposed.level ? undefined : (confirmation.reason ?? 'Not everything is known yet; taken as the least it can be');
  await confirmLevel(context, {
    visitId,
    protocol: proposed.protocol,
    edition: proposed.edition,
    proposed: proposed.level,
    level,
    reason,
    inputDigest: digestOf(input),
    codeVersion: versions.code,
    contentVersion: versions.content,
  });
}

/** A level up or down on the list, where there is one. */
function stepFrom({ level, notYet, levels }: RiskResult, step: -1 | 0 | 1): Level {
  const from = level ?? notYet?.atLeast ?? 'moderate';
  return levels[levels.indexOf(from) + step] ?? from;
}

async function signWhatWaits(dentist: ActionContext, visitId: string): Promise<void> {
  const { input } = await loadVisit(dentist.db, dentist.scope, visitId);
  const waiting = assessVisit(input, content).plan.lines.filter(({ state }) => state === 'waiting-for-signature');
  for (const { shelfItemId } of waiting) await signItem(dentist, { visitId, shelfItemId, stops: [] });
}
