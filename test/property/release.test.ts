import { randomBytes } from 'node:crypto';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import fc from 'fast-check';
import { v7 as newUuid } from 'uuid';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { addPatient } from '../../src/actions/addPatient.ts';
import { changeMember } from '../../src/actions/changeMember.ts';
import { closeVisit } from '../../src/actions/closeVisit.ts';
import type { ClosingCourse } from '../../src/actions/closingCourses.ts';
import type { ActionContext } from '../../src/actions/context.ts';
import { createPractice } from '../../src/actions/createPractice.ts';
import { openVisit } from '../../src/actions/openVisit.ts';
import { recordAnswer } from '../../src/actions/recordAnswer.ts';
import { refuseItem } from '../../src/actions/refuseItem.ts';
import { saveShelfItem } from '../../src/actions/saveShelfItem.ts';
import { saveStandingOrder } from '../../src/actions/saveStandingOrder.ts';
import { signItem } from '../../src/actions/signItem.ts';
import { withdrawRelease } from '../../src/actions/withdrawRelease.ts';
import { withdrawStandingOrder } from '../../src/actions/withdrawStandingOrder.ts';
import type { Role } from '../../src/api/apiTypes.ts';
import { errorCodeOf } from '../../src/api/errors.ts';
import { buildDemoPractice } from '../../src/content/demo/practice.ts';
import type { Store } from '../../src/store/openStore.ts';
import { listCatalog } from '../../src/store/read/catalog.ts';
import { readDraft } from '../../src/store/read/draftFields.ts';
import { findMember } from '../../src/store/read/members.ts';
import { setUpSqliteStore } from '../../src/store/setUpStore.ts';
import type { SiteScope } from '../../src/store/siteScope.ts';

const seed = Number(process.env.EBBLINE_SEED ?? 20_261_125);
const ATTEMPTS = process.env.EBBLINE_LONG === '1' ? 100_000 : 2_000;
const MINUTE = 60_000;
const TODAY = '2026-11-25';
const now = () => '2026-11-25T10:00:00.000Z';

const { shelf } = buildDemoPractice(TODAY);
const bound = shelf.filter((item) => item.release !== 'anyone').map((item) => item.id);

let folder: string;
let store: Store;
let scope: SiteScope;
let patientId: string;
let memberId: string;
beforeAll(async () => {
  folder = mkdtempSync(join(tmpdir(), 'ebbline-release-'));
  ({ store } = await setUpSqliteStore({ folder, passphrase: 'a passphrase of the test', random: randomBytes }));
  const base = { db: store.db, now, newId: newUuid };
  const firstMember = { name: 'Ines Marrow', roles: ['lead', 'hygienist'] as Role[] };
  const made = await createPractice(base, { practice: buildDemoPractice(TODAY), locale: 'en-GB', firstMember });
  scope = made.scope;
  memberId = made.memberId;
  const lead = { ...base, scope, actor: { memberId: made.memberId, ...firstMember } };
  patientId = (await addPatient(lead, { name: 'Somebody Invented', birthDate: '1980-01-01' })).patientId;
});
afterAll(async () => {
  await store.close();
  rmSync(folder, { recursive: true, force: true });
});

const roles = fc.constantFrom<Role[]>(['hygienist'], ['assistant'], ['hygienist', 'lead'], ['assistant', 'lead'], ['lead'], []);
const itemId = fc.oneof(fc.constantFrom(...bound), fc.constantFrom(...shelf.map((item) => item.id)), fc.constant('no-such-item'));
const state = fc.constantFrom<ClosingCourse['state']>('agreed', 'offered', 'declined', 'not-affordable');
// No type lets a page say that an item is signed; one that says so all the same must not be believed.
const release = fc.constantFrom<ClosingCourse['release']>('not-needed', 'waiting', 'signed' as ClosingCourse['release']);

/** Everything that could let an item go, with every input that a member could send, forged ones among them. */
const attempt = fc.oneof(
  fc.record({
    kind: fc.constant('sign' as const),
    shelfItemId: itemId,
    waits: fc.boolean(),
    stops: fc.constantFrom([], ['C05'], ['C05', 'C20']),
    override: fc.constantFrom(undefined, { ruleId: 'C05', reason: 'because' }, { ruleId: 'C20', reason: '' }),
    standingOrderId: fc.constantFrom(undefined, 'order-of-nobody', 'order-1'),
  }),
  fc.record({
    kind: fc.constant('close' as const),
    courses: fc.array(fc.record({ shelfItemId: itemId, state, release }), { maxLength: 3 }),
  }),
  fc.record({ kind: fc.constant('free' as const), shelfItemId: fc.constantFrom(...bound) }),
  fc.record({ kind: fc.constant('order' as const), shelfItemIds: fc.array(itemId, { maxLength: 3 }) }),
  fc.record({ kind: fc.constant('become a dentist' as const), shelfItemId: fc.constantFrom(...bound), isSelf: fc.boolean() }),
  fc.record({ kind: fc.constant('refuse' as const), shelfItemId: itemId, reason: fc.constantFrom('because', ' '), waits: fc.boolean() }),
  fc.record({ kind: fc.constant('withdraw' as const), shelfItemId: itemId, reason: fc.constantFrom(undefined, 'because') }),
  // What a dentist refused or took back is no door for the others.
  fc.record({ kind: fc.constant('sign after a refusal' as const), shelfItemId: fc.constantFrom(...bound), isWithdrawn: fc.boolean() }),
  fc.record({ kind: fc.constant('withdraw order' as const), expectedVersion: fc.constantFrom(0, 1) }),
  fc.record({ kind: fc.constant('forge' as const), path: fc.constantFrom('signed', 'agreed', 'answers.medicines', 'plan') }),
);
type Attempt = typeof attempt extends fc.Arbitrary<infer A> ? A : never;

async function make(context: ActionContext, visitId: string, tried: Attempt): Promise<void> {
  switch (tried.kind) {
    case 'sign': {
      const { kind: _kind, ...input } = tried;
      await signItem(context, { visitId, ...input, stops: [...input.stops] });
      return;
    }
    case 'close': {
      const { digest } = await readDraft(store.db, scope, visitId);
      await closeVisit(context, {
        visitId,
        draftDigest: digest,
        answers: {},
        findings: [],
        results: [],
        courses: tried.courses,
        tasks: [],
      });
      return;
    }
    case 'free': {
      const entry = (await listCatalog(store.db, scope, 'shelf-item')).find(({ id }) => id === tried.shelfItemId);
      if (entry) await saveShelfItem(context, { item: { ...entry.body, release: 'anyone' }, expectedVersion: entry.version });
      return;
    }
    case 'order':
      await saveStandingOrder(context, {
        id: 'order-1',
        order: { name: 'Order', date: TODAY, shelfItemIds: tried.shelfItemIds },
        expectedVersion: 0,
      });
      return;
    case 'become a dentist': {
      // One's own name, or, for whoever may, another's: the role is then another's too.
      const own = await findMember(store.db, scope, memberId);
      const change = { roles: ['lead', 'dentist'] as const, trainedSwab: true, active: true, expectedVersion: own?.version ?? 1 };
      await changeMember(context, { memberId: tried.isSelf ? memberId : 'no-such-member', ...change, roles: [...change.roles] });
      await signItem(context, { visitId, shelfItemId: tried.shelfItemId, stops: [], waits: true });
      return;
    }
    case 'refuse':
      await refuseItem(context, { visitId, shelfItemId: tried.shelfItemId, reason: tried.reason, waits: tried.waits });
      return;
    case 'withdraw':
      await withdrawRelease(context, { visitId, shelfItemId: tried.shelfItemId, reason: tried.reason });
      return;
    case 'sign after a refusal': {
      const { shelfItemId } = tried;
      const dentist = { ...context, actor: { memberId, name: 'Dr. Ahlgren', roles: ['dentist'] } };
      await refuseItem(dentist, { visitId, shelfItemId, reason: 'because', waits: true });
      if (tried.isWithdrawn) await withdrawRelease(dentist, { visitId, shelfItemId, reason: 'because' });
      await signItem(context, { visitId, shelfItemId, stops: [], waits: true, standingOrderId: 'order-1' });
      return;
    }
    case 'withdraw order':
      await withdrawStandingOrder(context, { id: 'order-1', expectedVersion: tried.expectedVersion });
      return;
    case 'forge':
      await recordAnswer(context, { visitId, path: tried.path, value: [{ shelfItemId: bound[0], by: 'Dr. Ahlgren', at: now() }] });
  }
}

const listReleased = () =>
  store.db
    .selectFrom('course')
    .select(['shelfItemId', 'state', 'release', 'signature'])
    .where('siteId', '=', scope.siteId)
    .where('shelfItemId', 'in', bound)
    .where(({ or, and, eb }) =>
      or([
        eb('signature', 'is not', null),
        eb('release', '=', 'signed'),
        and([eb('release', 'not in', ['waiting', 'refused']), eb('state', 'in', ['agreed', 'offered'])]),
      ]),
    );

test('no action of a hygienist, an assistant or a lead releases an item that needs a signature', { timeout: 30 * MINUTE }, async () => {
  const outcomes = new Map<string, number>();
  await fc.assert(
    fc.asyncProperty(roles, attempt, async (given, tried) => {
      const actor = { memberId, name: 'Somebody', roles: given };
      const context = { db: store.db, scope, now, newId: newUuid, actor };
      const asHygienist = { ...context, actor: { ...actor, roles: ['hygienist'] } };
      const visitId = (await openVisit(asHygienist, { patientId, kind: 'chair', onDate: TODAY })).id;
      const outcome = await make(context, visitId, tried).then(
        () => 'done',
        (error: unknown) => errorCodeOf(error) ?? Promise.reject(error),
      );
      outcomes.set(`${tried.kind} ${outcome}`, (outcomes.get(`${tried.kind} ${outcome}`) ?? 0) + 1);
      expect(await listReleased().where('visitId', '=', visitId).execute()).toEqual([]);
      const freed = (await listCatalog(store.db, scope, 'shelf-item')).filter(
        ({ id, body }) => bound.includes(id) && body.release === 'anyone',
      );
      expect(freed).toEqual([]);
      expect(await listCatalog(store.db, scope, 'standing-order')).toEqual([]);
    }),
    { seed, numRuns: ATTEMPTS },
  );
  expect(await listReleased().execute()).toEqual([]);
  // The attempts get past the doors that are open to them, and are stopped at those that are not.
  for (const seen of [
    'sign NOT_ALLOWED',
    'sign SHELF_ITEM_NOT_FOUND',
    'close done',
    'close SIGNATURE_MISSING',
    'close INPUT_INVALID',
    'free NOT_ALLOWED',
    'order NOT_ALLOWED',
    'become a dentist NOT_ALLOWED',
    'become a dentist MEMBER_NOT_FOUND',
    'refuse NOT_ALLOWED',
    'withdraw NOT_ALLOWED',
    'withdraw CONFLICT',
    'sign after a refusal NOT_ALLOWED',
    'sign after a refusal STANDING_ORDER_NOT_FOUND',
    'withdraw order NOT_ALLOWED',
    'forge done',
  ]) {
    expect([...outcomes.keys()]).toContain(seen);
  }
});
