import { group } from 'd3-array';
import type { ActionContext } from '../actions/context.ts';
import type { PersonLine } from '../api/apiTypes.ts';
import { ageOn } from '../core/visit/ageOn.ts';
import { listWaitingCourses } from '../store/read/courses.ts';
import { listPatients, type Patient } from '../store/read/patients.ts';
import { findConfirmedLevel } from '../store/read/results.ts';
import { listOpenTasks } from '../store/read/tasks.ts';
import { listVisits, type Visit } from '../store/read/visits.ts';
import { localDate } from './siteClock.ts';

/** Everybody active in the practice, by name, with what is due and why. */
export async function listPeople(context: Pick<ActionContext, 'db' | 'scope' | 'now'>): Promise<PersonLine[]> {
  const { db, scope } = context;
  const today = await localDate(context);
  const waitingByPatient = group(await listWaitingCourses(db, scope), (course) => course.patientId);
  const tasksByPatient = group(await listOpenTasks(db, scope), (task) => task.patientId);
  const people: PersonLine[] = [];
  for (const patient of await listPatients(db, scope)) {
    const visits = await listVisits(db, scope, patient.id);
    const open = visits.find((v) => v.state === 'open');
    const last = visits.filter((v) => v.state === 'closed').at(-1);
    const recall = tasksByPatient.get(patient.id)?.find((task) => task.kind === 'recall');
    people.push({
      ...nameAndAge(patient, today),
      lastVisitOn: last?.onDate ?? null,
      lastLevel: last ? ((await findConfirmedLevel(db, scope, last.id))?.level ?? null) : null,
      openVisitId: open?.id ?? null,
      nextOn: recall?.due ?? null,
      due: sayDue(open, last, recall?.due, today),
      waiting: waitingByPatient.get(patient.id)?.length ?? 0,
    });
  }
  return people;
}

function nameAndAge({ id, birthDate, profile }: Patient, today: string) {
  return { id, name: profile.name, birthDate, ageYears: birthDate > today ? 0 : ageOn(birthDate, today).ageYears };
}

function sayDue(open: Visit | undefined, last: Visit | undefined, recallOn: string | undefined, today: string): string {
  if (open) return open.onDate === today ? 'visit open since today' : `visit open since ${open.onDate}, not closed`;
  if (!last) return 'first visit';
  if (recallOn === undefined) return 'no next date set';
  return recallOn <= today ? `recall due since ${recallOn}` : '';
}
