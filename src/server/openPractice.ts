import { randomBytes } from 'node:crypto';
import { existsSync } from 'node:fs';
import { join } from 'node:path';
import { hash } from '@node-rs/argon2';
import { v7 as newUuid } from 'uuid';
import { addAccount } from '../actions/addAccount.ts';
import { createPractice } from '../actions/createPractice.ts';
import { makeDemo } from '../actions/makeDemo.ts';
import { setCode } from '../actions/setCode.ts';
import { DEMO_CODE, DEMO_PASSWORD } from '../content/demo/members.ts';
import { StoreError } from '../store/errors.ts';
import { dataFileOf, KEYS_FILE } from '../store/files.ts';
import { inOneTransaction } from '../store/oneTransaction.ts';
import type { Store } from '../store/openStore.ts';
import { listMembers } from '../store/read/members.ts';
import { listSites } from '../store/read/sites.ts';
import { setUpSqliteStore, unlockSqliteStore } from '../store/setUpStore.ts';
import { findMemberScope, type SiteScope, scopeOfSite } from '../store/siteScope.ts';
import { askPassphrase, askPractice, type PracticeOption } from './askPractice.ts';
import { sayProgress } from './sayProgress.ts';
import { localDateAt } from './siteClock.ts';

/** Public on purpose: the demo practice is invented, and it is encrypted only to show that it works. */
export const DEMO_PASSPHRASE = 'tern quay tide table';

export interface OpenedPractice {
  readonly store: Store;
  readonly scope: SiteScope;
  /** Whom the printed address signs in. */
  readonly firstMemberId: string;
  readonly invented: boolean;
  /** To be printed once, after a practice was begun. */
  readonly recoveryKey?: string;
}

export interface OpenOptions {
  readonly folder: string;
  readonly now: () => string;
  readonly passphrase?: string | undefined;
  readonly interactive: boolean;
  readonly practiceOptions: Partial<Record<PracticeOption, string>>;
}

const isThere = (folder: string) => existsSync(dataFileOf(folder)) || existsSync(join(folder, KEYS_FILE));

/** The invented practice, made on its first start; made again where a first start was broken off, which leaves nothing behind. */
export async function openDemo({ folder, now, say = () => {} }: OpenDemoOptions): Promise<OpenedPractice> {
  const { store } = isThere(folder)
    ? await unlockSqliteStore(folder, { passphrase: DEMO_PASSPHRASE })
    : await setUpSqliteStore({ folder, passphrase: DEMO_PASSPHRASE, random: randomBytes });
  try {
    if ((await listSites(store.db)).length === 0) await fillWithDemo(store, { now, say });
  } catch (error) {
    await store.close();
    throw error;
  }
  return { ...(await firstPractice(store)), invented: true };
}

type OpenDemoOptions = Pick<OpenOptions, 'folder' | 'now'> & { readonly say?: (line: string) => void };

async function fillWithDemo(store: Store, { now, say }: Required<Omit<OpenDemoOptions, 'folder'>>): Promise<void> {
  const passwordHash = await hash(DEMO_PASSWORD);
  const codeHash = await hash(DEMO_CODE);
  const onProgress = sayProgress('Making the invented practice', { now, say });
  await inOneTransaction(store.db, async (db) => {
    const made = await makeDemo(
      { db, now, newId: newUuid, random: randomBytes },
      { today: localDateAt(now(), 'Europe/London'), onProgress },
    );
    const { scope, firstMemberId } = made;
    const signedIn = await findMemberScope(db, { siteId: scope.siteId, memberId: firstMemberId });
    if (!signedIn) throw new StoreError('STORE_UNSUITABLE', 'The invented practice has no first member.');
    for (const { id, name, roles } of await listMembers(db, scope)) {
      await addAccount({ db, scope, actor: signedIn.member, now, newId: newUuid }, { memberId: id, login: name, passwordHash });
      await setCode({ db, scope, actor: { memberId: id, name, roles }, now, newId: newUuid }, { codeHash });
    }
  });
}

/** A real practice: begun empty when there is none yet and `begin` is asked for, else unlocked. */
export async function openReal(options: OpenOptions & { readonly begin: boolean }): Promise<OpenedPractice> {
  const { folder, begin, now, practiceOptions } = options;
  if (isThere(folder)) {
    const { store } = await unlockSqliteStore(folder, { passphrase: await askPassphrase(options) });
    return { ...(await firstPractice(store)), invented: false };
  }
  if (!begin) throw new StoreError('STORE_MISSING', `There is no practice in ${folder} yet. Begin one with: npm start -- --empty`);
  const asked = await askPractice(practiceOptions, options);
  const { store, recoveryKey } = await setUpSqliteStore({ folder, passphrase: asked.passphrase, random: randomBytes });
  const timeZone = new Intl.DateTimeFormat().resolvedOptions().timeZone;
  const { scope, memberId } = await createPractice(
    { db: store.db, now, newId: newUuid, random: randomBytes },
    {
      locale: new Intl.DateTimeFormat().resolvedOptions().locale,
      firstMember: { name: asked.memberName, roles: ['lead', 'hygienist'], trainedSwab: true },
      practice: {
        name: asked.practiceName,
        invented: false,
        timeZone,
        meters: [asked.meter],
        lots: [],
        shelf: [],
        settings: {
          // Unknown place: the strictest of the published ages and rules hold until the practice says where it is.
          jurisdiction: 'unknown',
          methodByAge: [
            { fromAgeYears: 0, belowAgeYears: 6, protocol: 'four_level_0_5_2010' },
            { fromAgeYears: 6, belowAgeYears: null, protocol: 'four_level_6plus_2019' },
          ],
          bitewingMonths: null,
          lowSalivaMeansExtreme: false,
          stimulatedFlowLowAtMostMlPerMin: 0.7,
        },
      },
    },
  );
  return { store, scope, firstMemberId: memberId, invented: false, recoveryKey };
}

/** One practice per file in this edition; its lead is the first to sign in. */
async function firstPractice(store: Store): Promise<Pick<OpenedPractice, 'store' | 'scope' | 'firstMemberId'>> {
  const [site] = await listSites(store.db);
  const scope = site && scopeOfSite(site.siteId);
  const lead = scope && (await listMembers(store.db, scope)).find((member) => member.active && member.roles.includes('lead'));
  if (scope && lead) return { store, scope, firstMemberId: lead.id };
  await store.close();
  throw new StoreError('STORE_UNSUITABLE', 'The data file holds no practice with a lead who could sign in.');
}
