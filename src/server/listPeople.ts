import { group } from 'd3-array';
import type { ActionContext } from '../actions/context.ts';
import type { PersonLine } from '../api/apiTypes.ts';
import { ageOn } from '../core/visit/ageOn.ts';
import { listWaitingCourses } from '../store/read/courses.ts';
import { listMergedCharts, listPatients, type Patient } from '../store/read/patients.ts';
import { listConfirmedLevels } from '../store/read/results.ts';
import { listOpenTasks } from '../store/read/tasks.ts';
import { listVisitHeads, type VisitHead } from '../store/read/visits.ts';
import { localDate } from './siteClock.ts';

/** Everybody active in the practice, by name, with what is due and why. One query for each kind of row. */
export async function listPeople(context: Pick<ActionContext, 'db' | 'scope' | 'now'>): Promise<PersonLine[]> {
  const { db, scope } = context;
  const today = await localDate(context);
  const personOf = standingChart(await listMergedCharts(db, scope));
  const ofPerson = <T extends { readonly patientId: string }>(rows: readonly T[]) => group(rows, (row) => personOf(row.patientId));
  const waitingOf = ofPerson(await listWaitingCourses(db, scope));
  const tasksOf = ofPerson(await listOpenTasks(db, scope));
  const visitsOf = ofPerson(await listVisitHeads(db, scope));
  const patients = await listPatients(db, scope);
  const lastOf = new Map(patients.map(({ id }) => [id, visitsOf.get(id)?.findLast((v) => v.state === 'closed')]));
  const levels = await listConfirmedLevels(
    db,
    scope,
    [...lastOf.values()].flatMap((last) => last?.id ?? []),
  );
  return patients.map((patient) => {
    const open = visitsOf.get(patient.id)?.find((v) => v.state === 'open');
    const last = lastOf.get(patient.id);
    const recall = tasksOf.get(patient.id)?.find((task) => task.kind === 'recall');
    return {
      ...nameAndAge(patient, today),
      lastVisitOn: last?.onDate ?? null,
      lastLevel: (last && levels.get(last.id)?.level) ?? null,
      openVisitId: open?.id ?? null,
      nextOn: recall?.due ?? null,
      due: sayDue(open, last, recall?.due, today),
      waiting: waitingOf.get(patient.id)?.length ?? 0,
    };
  });
}

/** The chart that a merged one belongs to now, by way of others too. */
function standingChart(merged: readonly { readonly id: string; readonly mergedInto: string | null }[]): (chartId: string) => string {
  const into = new Map(merged.map(({ id, mergedInto }) => [id, mergedInto]));
  const find = (id: string): string => {
    const next = into.get(id);
    return next ? find(next) : id;
  };
  return find;
}

function nameAndAge({ id, birthDate, profile, searchKey }: Patient, today: string) {
  return { id, name: profile.name, birthDate, searchKey, ageYears: birthDate > today ? 0 : ageOn(birthDate, today).ageYears };
}

function sayDue(open: VisitHead | undefined, last: VisitHead | undefined, recallOn: string | undefined, today: string): string {
  if (open) return open.onDate === today ? 'visit open since today' : `visit open since ${open.onDate}, not closed`;
  if (!last) return 'first visit';
  if (recallOn === undefined) return 'no next date set';
  return recallOn <= today ? `recall due since ${recallOn}` : '';
}
