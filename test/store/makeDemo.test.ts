import { randomBytes } from 'node:crypto';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { v7 as newId } from 'uuid';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { loadVisit } from '../../src/actions/loadVisit.ts';
import { makeDemo } from '../../src/actions/makeDemo.ts';
import { foodsById } from '../../src/content/foods.ts';
import { questions } from '../../src/content/questions.ts';
import { checkVisit } from '../../src/core/visit/checkVisit.ts';
import type { Store } from '../../src/store/openStore.ts';
import { listAppointmentsOfDay } from '../../src/store/read/appointments.ts';
import { listMembers } from '../../src/store/read/members.ts';
import { listPatients } from '../../src/store/read/patients.ts';
import { findConfirmedLevel } from '../../src/store/read/results.ts';
import { listVisits } from '../../src/store/read/visits.ts';
import { setUpSqliteStore } from '../../src/store/setUpStore.ts';
import type { SiteScope } from '../../src/store/siteScope.ts';
import { verify } from '../../src/store/verify.ts';

const TODAY = '2026-11-25';
let folder: string;
let store: Store;
let scope: SiteScope;

beforeAll(async () => {
  folder = mkdtempSync(join(tmpdir(), 'ebbline-demo-'));
  ({ store } = await setUpSqliteStore({ folder, passphrase: 'a passphrase for tests', random: randomBytes }));
  const now = () => `${TODAY}T08:00:00.000Z`;
  ({ scope } = await makeDemo({ db: store.db, now, newId, random: randomBytes }, { today: TODAY }));
});
afterAll(async () => {
  await store.close();
  rmSync(folder, { recursive: true, force: true });
});

async function listClosed() {
  const patients = await listPatients(store.db, scope);
  return (await Promise.all(patients.map((patient) => listVisits(store.db, scope, patient.id)))).flat();
}

test('eighty people, a team of five, every past visit closed', async () => {
  expect(await listPatients(store.db, scope)).toHaveLength(80);
  const members = await listMembers(store.db, scope);
  expect(members.map(({ name }) => name).sort()).toEqual(['Dr. Ahlgren', 'Ines Marrow', 'Tomas Quill', 'Una Sorrel-Bahk', 'Wim Tansy']);
  const visits = await listClosed();
  expect(visits.length).toBeGreaterThan(249);
  expect(visits.filter(({ state, onDate }) => state !== 'closed' || onDate >= TODAY)).toEqual([]);
});

test('what is on the record passes the checks of a visit file', async () => {
  for (const { id } of await listClosed()) {
    const { input } = await loadVisit(store.db, scope, id);
    expect(checkVisit(input, questions, foodsById)).toEqual([]);
  }
});

describe('confirmed levels', () => {
  test('are of every kind, none of them most of all, and a few were changed with a reason', async () => {
    const confirmed = (await Promise.all((await listClosed()).map(({ id }) => findConfirmedLevel(store.db, scope, id)))).filter(
      (one) => one !== undefined,
    );
    const share = (level: string) => confirmed.filter((one) => one.level === level).length / confirmed.length;
    for (const level of ['low', 'moderate', 'high']) {
      expect({ level, share: share(level) }).toEqual({ level, share: expect.toSatisfy((s: number) => s > 0.08 && s < 0.7) });
    }
    expect(share('extreme')).toBeGreaterThan(0);
    const changed = confirmed.filter(({ changedFrom }) => changedFrom !== undefined);
    expect(changed.length).toBeGreaterThan(0);
    expect(changed.length).toBeLessThan(confirmed.length / 4);
    expect(changed.filter(({ reason }) => !reason)).toEqual([]);
  });

  test('are dated by the day of their visit', async () => {
    for (const { id, onDate } of await listClosed()) {
      const confirmed = await findConfirmedLevel(store.db, scope, id);
      if (confirmed) expect(confirmed.at.slice(0, 10)).toBe(onDate);
    }
  });
});

test('charts carry numbers, guardians, homes, interpreters and dated permissions', async () => {
  const profiles = (await listPatients(store.db, scope)).map(({ profile }) => profile);
  expect(new Set(profiles.map(({ chartNumber }) => chartNumber)).size).toBe(80);
  expect(profiles.filter(({ guardians }) => guardians && guardians.length > 1).length).toBeGreaterThan(2);
  expect(profiles.filter(({ homes }) => homes && homes.length > 1)).toHaveLength(2);
  expect(profiles.filter(({ interpreter }) => interpreter).length).toBeGreaterThan(2);
  const permissions = profiles.flatMap((profile) => (profile.permissions ? [profile.permissions] : []));
  expect(permissions).toHaveLength(76);
  expect(permissions.some((given) => given['use-of-data']?.given === false)).toBe(true);
});

test('ten are expected today; who missed or cancelled before is on the list with a reason', async () => {
  expect(await listAppointmentsOfDay(store.db, scope, TODAY)).toHaveLength(10);
  const past = await store.db.selectFrom('appointment').select(['id', 'state']).where('onDate', '<', TODAY).execute();
  expect(new Set(past.map(({ state }) => state))).toEqual(new Set(['cancelled', 'missed']));
  expect(past.length).toBeGreaterThan(60);
  const reasons = await store.db.selectFrom('change').select('reason').where('action', '=', 'changeAppointment').execute();
  expect(reasons.filter(({ reason }) => reason)).toHaveLength(past.length);
});

test('home care was agreed, declined, not affordable, signed and still waiting, and what became of it is told with reasons', async () => {
  const courses = await store.db.selectFrom('course').select(['state', 'release', 'adherence', 'stopReason']).execute();
  expect(new Set(courses.map(({ state }) => state))).toEqual(new Set(['agreed', 'declined', 'not-affordable']));
  expect(new Set(courses.map(({ release }) => release))).toEqual(new Set(['not-needed', 'signed', 'waiting']));
  const told = courses.filter(({ adherence }) => adherence !== null);
  expect(new Set(told.map(({ adherence }) => adherence))).toEqual(new Set(['as-agreed', 'less-often', 'stopped', 'not-begun']));
  expect(told.filter(({ adherence, stopReason }) => adherence !== 'as-agreed' && !stopReason)).toEqual([]);
});

test('the log is whole and in the order of time', async () => {
  const report = await verify(store.db);
  expect(report.problems).toEqual([]);
  expect(report.checked.changes).toBeGreaterThan(400);
  const times = (
    await store.db.selectFrom('change').select('at').where('siteId', '=', scope.siteId).orderBy('stream').orderBy('seq').execute()
  ).map(({ at }) => at);
  expect(times).toEqual([...times].sort());
});
