import type { DaySheet } from '../../api/day.ts';
import { content } from '../../content/allContent.ts';
import { knownAnswers } from '../../core/risk/knownAnswers.ts';
import { lookAtMouth } from '../../core/visit/lookAtMouth.ts';
import { hasPrivate } from '../../core/visit/privacy.ts';
import { listAppointmentsOfDay } from '../../store/read/appointments.ts';
import { localDate } from '../siteClock.ts';
import type { Reader } from './listDay.ts';
import { type DayPerson, readDayPeople } from './readDayPeople.ts';

/** An open list with a private choice too: what of it is left out would tell. */
const PRIVATE = new Set(content.questions.filter(hasPrivate).map(({ id }) => id));

/** One for each person who is still expected on the day, by time. Private answers stay on the server. */
export async function listSheets(context: Reader, date: string): Promise<DaySheet[]> {
  const { db, scope } = context;
  const onDate = date === 'today' ? await localDate(context) : date;
  const expected = (await listAppointmentsOfDay(db, scope, onDate)).filter(({ state }) => state === 'planned');
  const people = await readDayPeople(
    db,
    scope,
    expected.map(({ patientId }) => patientId),
    onDate,
  );
  const sheets = new Map<string, DaySheet>();
  for (const { patientId, atTime } of expected) {
    const person = people.get(patientId);
    if (!person || sheets.has(person.patient.id) || person.visits.some((v) => v.onDate === onDate && v.state === 'closed')) continue;
    sheets.set(person.patient.id, toSheet(person, atTime, onDate));
  }
  return [...sheets.values()];
}

function toSheet({ patient, ageYears, answers }: DayPerson, atTime: string | null, onDate: string): DaySheet {
  const { mouth } = lookAtMouth({ answers, findings: [], onDate }, ageYears, content.questions);
  const { unknown } = knownAnswers({ answers, questions: content.questions, ageYears, onDate });
  return {
    patientId: patient.id,
    name: patient.profile.name,
    birthDate: patient.birthDate,
    ageYears,
    atTime,
    language: patient.profile.language ?? null,
    interpreter: patient.profile.interpreter ?? null,
    onDate,
    answers: Object.fromEntries(Object.entries(answers).filter(([id]) => !PRIVATE.has(id))),
    unknown,
    notAsked: mouth.notAsked,
  };
}
