import { addDays } from '../content/demo/days.ts';
import type { DemoAppointment } from '../content/demo/drawAppointments.ts';
import { utcOf } from '../content/demo/londonTime.ts';
import { demoMembers } from '../content/demo/members.ts';
import { buildDemoPeople, type DemoPerson, type DemoVisit } from '../content/demo/people.ts';
import { buildDemoPractice } from '../content/demo/practice.ts';
import { inOneTransaction } from '../store/oneTransaction.ts';
import type { MemberIdentity, SiteScope } from '../store/siteScope.ts';
import { addAppointment } from './addAppointment.ts';
import { addMember } from './addMember.ts';
import { addPatient } from './addPatient.ts';
import { changeAppointment } from './changeAppointment.ts';
import type { ActionContext } from './context.ts';
import { createPractice, type FoundingContext } from './createPractice.ts';
import { listDemoChecks } from './makeDemoChecks.ts';
import { listDemoStock } from './makeDemoStock.ts';
import { type DemoClock, type DemoTeam, makeDemoVisit } from './makeDemoVisit.ts';

const SEED = 2_611;

export interface MakeDemoInput {
  /** ISO local date at the practice. */
  readonly today: string;
  readonly seed?: number | undefined;
  /** Told after everything that was made, one after the other. */
  readonly onProgress?: ((made: { readonly done: number; readonly of: number }) => void) | undefined;
}

export interface MadeDemo {
  readonly scope: SiteScope;
  readonly firstMemberId: string;
}

/**
 * Fills an empty store with the invented practice: its team, eighty people, and their past visits, each opened, answered, assessed,
 * confirmed, closed and signed by the same actions that a real practice uses, at the time at which it would have happened. All of it is written, or nothing.
 */
export function makeDemo(founding: FoundingContext, input: MakeDemoInput): Promise<MadeDemo> {
  return inOneTransaction(founding.db, (db) => makeInside({ ...founding, db }, input));
}

async function makeInside(founding: FoundingContext, { today, seed = SEED, onProgress }: MakeDemoInput): Promise<MadeDemo> {
  const people = buildDemoPeople(seed, today);
  const newcomersAt = `${addDays(today, -1)}T16:30:00.000Z`;
  const steps = [
    ...people.flatMap((person) => listSteps(person, newcomersAt)),
    ...listDemoChecks(seed, today),
    ...listDemoStock(today),
  ].sort((a, b) => (a.at < b.at ? -1 : a.at > b.at ? 1 : 0));
  const clock = buildClock(addDays(steps[0]?.at.slice(0, 10) ?? today, -1));
  const team = await makeTeam({ ...founding, now: clock.now }, today);
  const patientIds = new Map<DemoPerson, string>();
  for (const [done, step] of steps.entries()) {
    clock.moveTo(step.at);
    if ('make' in step) await step.make(team);
    else await makeStep(team, clock, patientIds, step);
    onProgress?.({ done: done + 1, of: steps.length });
  }
  clock.moveTo(newcomersAt);
  for (const [person, patientId] of patientIds) {
    if (person.today) await addAppointment(team.lead, { patientId, ...person.today });
  }
  return { scope: team.lead.scope, firstMemberId: team.lead.actor.memberId };
}

async function makeStep(team: DemoTeam, clock: DemoClock, patientIds: Map<DemoPerson, string>, { person, visit, lost }: DemoStep) {
  const patientId = patientIds.get(person) ?? (await addPerson(team.lead, person));
  patientIds.set(person, patientId);
  if (visit) await makeDemoVisit(team, clock, { patientId, visit });
  if (lost) await loseAppointment(team.lead, patientId, lost);
}

async function addPerson(context: ActionContext, person: DemoPerson): Promise<string> {
  const { name, birthDate, language, chartNumber, interpreter, permissions } = person;
  const guardians = person.guardians.length > 0 ? person.guardians : undefined;
  const homes = person.homes.length > 0 ? person.homes : undefined;
  const profile = { name, birthDate, language, chartNumber, interpreter, permissions, guardians, homes };
  return (await addPatient(context, profile)).patientId;
}

/** One thing to write: a visit, an appointment that was not kept, or a person who has had neither yet. */
interface DemoStep {
  readonly person: DemoPerson;
  readonly visit?: DemoVisit;
  readonly lost?: DemoAppointment;
  readonly at: string;
}

function listSteps(person: DemoPerson, newcomersAt: string): readonly DemoStep[] {
  if (person.visits.length === 0) return [{ person, at: newcomersAt }];
  const lost = person.appointments.filter(({ state }) => state !== 'planned');
  return [
    ...person.visits.map((visit) => ({ person, visit, at: visit.startedAt })),
    ...lost.map((appointment) => ({ person, lost: appointment, at: utcOf(appointment.onDate, appointment.atTime) })),
  ];
}

async function loseAppointment(context: ActionContext, patientId: string, { onDate, atTime, state, note }: DemoAppointment): Promise<void> {
  const { appointmentId } = await addAppointment(context, { patientId, onDate, atTime });
  await changeAppointment(context, { id: appointmentId, expectedVersion: 1, state, reason: note ?? 'did not come' });
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
