import { group } from 'd3-array';
import type { ActionContext } from '../../actions/context.ts';
import { loadVisit } from '../../actions/loadVisit.ts';
import type { DayLine, DayState, DayView, OpenElsewhere } from '../../api/day.ts';
import { AppError } from '../../api/errors.ts';
import { content } from '../../content/allContent.ts';
import { listDue } from '../../core/day/listDue.ts';
import { type LastBitewings, NEVER, planBitewings } from '../../core/regimen/planBitewings.ts';
import { withStock } from '../../core/shelf/withStock.ts';
import { assessVisit } from '../../core/visit/assessVisit.ts';
import { sayMonth } from '../../core/visit/dateOrMonth.ts';
import { lastBitewings } from '../../core/visit/lastBitewings.ts';
import { lookAtMouth } from '../../core/visit/lookAtMouth.ts';
import { wantedLines } from '../../core/visit/turnedDown.ts';
import type { PracticeFile } from '../../core/visit/types.ts';
import { type Appointment, listAppointmentsOfDay } from '../../store/read/appointments.ts';
import { listLastReasons } from '../../store/read/changes.ts';
import type { Course } from '../../store/read/courses.ts';
import { findPractice } from '../../store/read/sites.ts';
import { listCountedItems } from '../../store/read/stock.ts';
import { hasClosedVisit, listVisitsOfDay, type Visit } from '../../store/read/visits.ts';
import { localDate } from '../siteClock.ts';
import { type DayPerson, readDayPeople } from './readDayPeople.ts';

export type Reader = Pick<ActionContext, 'db' | 'scope' | 'now'>;

/** The people of one day, by time, with what is due and why. Only their rows are read, each kind of row at once. */
export async function listDay(context: Reader, date: string): Promise<DayView> {
  const { db, scope } = context;
  const stored = await findPractice(db, scope);
  if (!stored) throw new AppError('SITE_NOT_FOUND', 'This practice is not in the data file.');
  const today = await localDate(context);
  const onDate = date === 'today' ? today : date;
  const shelf = withStock(stored.practice.shelf, await listCountedItems(db, scope), { onDate });
  const practice = { ...stored.practice, shelf };
  const appointments = await listAppointmentsOfDay(db, scope, onDate);
  const visits = await listVisitsOfDay(db, scope, onDate);
  const charts = [...appointments, ...visits].map(({ patientId }) => patientId);
  const people = await readDayPeople(db, scope, charts, onDate);
  const put = appointments.filter(({ state }) => state !== 'planned').map(({ id }) => id);
  const reasons = await listLastReasons(db, scope, 'appointment', put);
  const waiting = await listWaiting(context, [...people.values()], practice);

  const cameTo = matchVisits(appointments, people, onDate, today);
  const planned = appointments.flatMap((appointment) => {
    const person = people.get(appointment.patientId);
    const visit = cameTo.get(appointment.id);
    return person ? [toLine({ person, appointment, visit, onDate, practice, waiting, reason: reasons.get(appointment.id) })] : [];
  });
  const expected = new Set(planned.map(({ patientId }) => patientId));
  const unplanned = visits
    .filter((visit) => visit.onDate === onDate && visit.state !== 'void')
    .flatMap(({ patientId }) => people.get(patientId) ?? [])
    .filter(({ patient }, index, all) => !expected.has(patient.id) && all.findIndex((p) => p.patient.id === patient.id) === index)
    .map((person) => toLine({ person, visit: visitsOn(person, onDate, today).at(-1), onDate, practice, waiting }));
  const lines = [...planned, ...unplanned];
  const shown = new Set(lines.map(({ patientId }) => patientId));
  return {
    onDate,
    today,
    lines,
    openElsewhere: onDate === today ? listOpenElsewhere(visits, people, shown) : [],
    isAnyoneSeen: await hasClosedVisit(db, scope),
    swabLots: practice.lots.filter((lot) => lot.expiresOn >= onDate).map(({ name }) => name),
  };
}

/** The visits of a day, oldest first; where there is none, the one that is still open from an earlier day. */
function visitsOn({ visits, open }: DayPerson, onDate: string, today: string): readonly Visit[] {
  const ofDay = visits.filter((visit) => visit.onDate === onDate && visit.state !== 'void');
  return ofDay.length > 0 || !open || onDate !== today ? ofDay : [open];
}

/**
 * Which visit belongs to which appointment, by appointment. Somebody with two in a day comes first to the first that still stands;
 * whoever was seen did come, also where every appointment was called off.
 */
function matchVisits(
  appointments: readonly Appointment[],
  people: ReadonlyMap<string, DayPerson>,
  onDate: string,
  today: string,
): ReadonlyMap<string, Visit> {
  const matched = new Map<string, Visit>();
  // A chart that was merged leads to the same person.
  for (const [person, own] of group(appointments, ({ patientId }) => people.get(patientId))) {
    if (!person) continue;
    const standing = own.filter(({ state }) => state === 'planned');
    const open = standing.length > 0 ? standing : own.slice(-1);
    for (const [index, visit] of visitsOn(person, onDate, today).entries()) {
      const appointment = open[Math.min(index, open.length - 1)];
      if (appointment) matched.set(appointment.id, visit);
    }
  }
  return matched;
}

interface LineInput {
  readonly person: DayPerson;
  readonly appointment?: Appointment | undefined;
  readonly visit: Visit | undefined;
  readonly reason?: string | undefined;
  readonly onDate: string;
  readonly practice: PracticeFile;
  /** Items that wait, by person. */
  readonly waiting: ReadonlyMap<string, ReadonlySet<string>>;
}

function toLine({ person, appointment, visit, reason, onDate, practice, waiting }: LineInput): DayLine {
  const { patient, ageYears, answers, confirmed } = person;
  const { profile, birthDate } = patient;
  const waits = waiting.get(patient.id) ?? new Set();
  const looked = lookAtMouth({ answers, findings: [], onDate }, ageYears, content.questions);
  const nameOf = (id: string) => practice.shelf.find((item) => item.id === id)?.name ?? id;
  return {
    patientId: patient.id,
    name: profile.name,
    chartNumber: profile.chartNumber ?? null,
    birthDate,
    ageYears,
    atTime: appointment?.atTime ?? null,
    appointment: appointment ? { id: appointment.id, version: appointment.version, note: appointment.note, reason: reason ?? null } : null,
    state: stateOf(appointment, visit),
    visitId: visit?.id ?? null,
    due: visit?.state === 'closed' ? [] : dueOf(person, looked, onDate, practice),
    confirmed: confirmed ? { level: confirmed.level, protocol: confirmed.protocol, onDate: confirmed.onDate } : null,
    waiting: [...waits].map(nameOf),
    outOfStock: outOfStock(person, onDate, practice, waits),
    interpreter: profile.interpreter ?? null,
    guardians: ageYears < 18 && profile.guardians?.length ? profile.guardians.map(toGuardian) : null,
    swab: looked.mouth.swab?.site !== 'none',
  };
}

/** A visit is stronger than what was said of the appointment: whoever was seen did come. */
function stateOf(appointment: Appointment | undefined, visit: Visit | undefined): DayState {
  if (visit?.state === 'open') return 'open';
  if (visit?.state === 'closed') return 'closed';
  return appointment === undefined || appointment.state === 'planned' ? 'not-here' : appointment.state;
}

function toGuardian(guardian: {
  readonly name: string;
  readonly relation?: string | undefined;
  readonly mayConsent?: boolean | undefined;
}) {
  return { name: guardian.name, relation: guardian.relation ?? null, mayConsent: guardian.mayConsent ?? null };
}

function dueOf(
  { ageYears, open, last, tasks, answers, confirmed }: DayPerson,
  looked: LookedAt,
  onDate: string,
  { settings }: PracticeFile,
) {
  const { mouth, questions } = looked;
  const bitewings = lastBitewings(answers, questions, onDate);
  const plan = planBitewings({
    confirmed,
    mouth,
    facts: { ageYears },
    settings,
    tables: content.regimen,
    lastBitewings: bitewings,
    onDate,
  });
  return listDue({
    onDate,
    ageYears,
    openSince: open && open.onDate !== onDate ? open.onDate : undefined,
    lastVisitOn: last?.onDate,
    tasks,
    answers,
    questions,
    goals: last?.said?.goals ?? [],
    bitewings: sayBitewings(plan, bitewings),
  });
}

/** Without an interval of the practice's own nothing is called due, and a date that lies ahead is no news. */
function sayBitewings(plan: ReturnType<typeof planBitewings>, last: LastBitewings): string | undefined {
  if (plan.bitewings === null) return undefined;
  if ('unknown' in last) return 'last bitewings: date not known';
  if (last.on === NEVER) return 'bitewings: never taken';
  return plan.bitewingsDue?.isDue ? `bitewings due since ${sayMonth(plan.bitewingsDue.fromMonth)}` : undefined;
}

type LookedAt = ReturnType<typeof lookAtMouth>;

/** Of closed visits as the record says; of an open one as its plan stands, which no row holds yet. */
async function listWaiting(
  { db, scope }: Reader,
  people: readonly DayPerson[],
  { shelf }: PracticeFile,
): Promise<ReadonlyMap<string, ReadonlySet<string>>> {
  const waiting = new Map<string, Set<string>>();
  for (const { patient, open, courses, confirmed } of people) {
    const items = new Set(
      courses.filter(({ release, toDate }) => release === 'waiting' && toDate === null).map(({ shelfItemId }) => shelfItemId),
    );
    if (open && confirmed?.visitId === open.id && shelf.some((item) => item.release !== 'anyone')) {
      const { input } = await loadVisit(db, scope, open.id);
      for (const { state, shelfItemId } of wantedLines(assessVisit(input, content).plan.lines, input.visit.agreed))
        if (state === 'waiting-for-signature') items.add(shelfItemId);
    }
    waiting.set(patient.id, items);
  }
  return waiting;
}

/** Of what is in use on the day, or waits for a signature. */
function outOfStock({ courses }: DayPerson, onDate: string, { shelf }: PracticeFile, waits: ReadonlySet<string>): string[] {
  const newest = new Map(courses.map((course) => [course.shelfItemId, course]));
  const wanted = new Set([...waits, ...[...newest.values()].filter((c) => isRunning(c, onDate)).map((c) => c.shelfItemId)]);
  return shelf.filter((item) => wanted.has(item.id) && !item.inStock).map(({ name }) => name);
}

function isRunning({ state, release, toDate }: Course, onDate: string): boolean {
  return state === 'agreed' && (release === 'not-needed' || release === 'signed') && (toDate === null || toDate >= onDate);
}

function listOpenElsewhere(
  visits: readonly Visit[],
  people: ReadonlyMap<string, DayPerson>,
  shown: ReadonlySet<string>,
): readonly OpenElsewhere[] {
  return visits
    .filter(({ state }) => state === 'open')
    .flatMap(({ id, patientId, onDate }) => {
      const patient = people.get(patientId)?.patient;
      return patient && !shown.has(patient.id) ? [{ visitId: id, name: patient.profile.name, onDate }] : [];
    });
}
