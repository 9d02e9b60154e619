import { createHash } from 'node:crypto';
import { v7 } from 'uuid';
import { addMember } from '../../src/actions/addMember.ts';
import { addPatient } from '../../src/actions/addPatient.ts';
import type { ClosingResult } from '../../src/actions/closeVisit.ts';
import type { ActionContext } from '../../src/actions/context.ts';
import { createPractice } from '../../src/actions/createPractice.ts';
import type { Role } from '../../src/api/apiTypes.ts';
import type { ReadingAssessment } from '../../src/core/reading/types.ts';
import type { ShelfItem } from '../../src/core/regimen/types.ts';
import type { PracticeFile } from '../../src/core/visit/types.ts';
import type { Store } from '../../src/store/openStore.ts';
import type { SiteScope } from '../../src/store/siteScope.ts';

/** An invented practice. Its members and people do not exist. */
const item = (id: string, release: ShelfItem['release']): ShelfItem => ({
  id,
  name: `Item ${id}`,
  leafletName: { en: `Item ${id}`, es: `Artículo ${id}` },
  agentId: 'F_PASTE_STD',
  form: 'paste',
  traits: [],
  priceCents: 450,
  inStock: true,
  release,
  meets: ['fluoride-base'],
  use: { timesPerDay: 2, amount: 'a pea' },
});

export const PRACTICE: PracticeFile = {
  name: 'Tern Quay Dental',
  invented: true,
  timeZone: 'Europe/London',
  settings: {
    jurisdiction: 'UK',
    methodByAge: [{ fromAgeYears: 6, belowAgeYears: null, protocol: 'four-level-2019' }],
    bitewingMonths: null,
    lowSalivaMeansExtreme: true,
    stimulatedFlowLowAtMostMlPerMin: 0.7,
  },
  meters: [
    {
      id: 'meter-a',
      name: 'Demo meter A',
      lowestRlu: 40,
      highestRlu: 60_000,
      cutoffRlu: 4200,
      countdownS: 25,
      cvAnalytical: 0.25,
      cvAnalyticalAssumed: true,
      cvWithinPerson: 0.6,
      cvWithinPersonAssumed: true,
    },
  ],
  lots: [{ id: 'lot-1', name: 'Lot 1', expiresOn: '2027-01-31' }],
  shelf: [item('paste', 'anyone'), item('strong-paste', 'prescription'), item('varnish', 'dentist')],
};

export interface TestPractice {
  readonly scope: SiteScope;
  /** A context of a member with this role alone. */
  as(role: Role): ActionContext;
  newPatient(name?: string): Promise<string>;
}

let tick = Date.parse('2026-03-04T09:00:00.000Z');

/** Each call a millisecond later. */
export function clock(): string {
  tick += 1;
  return new Date(tick).toISOString();
}

/** Different on each call, the same on each run. */
let salts = 0;
export function countedBytes(count: number): Uint8Array {
  salts += 1;
  return createHash('sha256').update(String(salts)).digest().subarray(0, count);
}

export async function testPractice({ db }: Store, name = PRACTICE.name): Promise<TestPractice> {
  const base = { db, now: clock, newId: () => v7(), random: countedBytes };
  const actor = { memberId: 'founder', name: 'Founder', roles: ['lead'] };
  const { scope, memberId } = await createPractice(
    { ...base, actor },
    { practice: { ...PRACTICE, name }, locale: 'en-GB', firstMember: { name: 'Lead member', roles: ['lead'] } },
  );
  const lead: ActionContext = { ...base, scope, actor: { memberId, name: 'Lead member', roles: ['lead'] } };
  const contexts = new Map<Role, ActionContext>([['lead', lead]]);
  for (const role of ['assistant', 'hygienist', 'dentist'] as const) {
    const memberName = `Member ${role}`;
    const added = await addMember(lead, { name: memberName, roles: [role], trainedSwab: role === 'assistant' });
    contexts.set(role, { ...base, scope, actor: { memberId: added.memberId, name: memberName, roles: [role] } });
  }
  const as = (role: Role) => {
    const context = contexts.get(role);
    if (!context) throw new Error(`no member is ${role}`);
    return context;
  };
  return {
    scope,
    as,
    newPatient: async (patient = 'Ana Núñez-O’Neil') => (await addPatient(lead, { name: patient, birthDate: '1984-03-02' })).patientId,
  };
}

export const ASSESSED: ReadingAssessment = {
  state: 'flagged',
  counted: true,
  conditions: [
    { id: 'lot', state: 'met', says: 'lot in date' },
    { id: 'eating', state: 'unknown', says: 'time since eating not known' },
  ],
  headline: 'Reading 5,100',
  sentences: [],
  sources: [],
};

export const RESULT: ClosingResult = {
  kind: 'regimen',
  inputDigest: 'a'.repeat(64),
  body: { lines: [] },
  codeVersion: '0.1.0',
  contentVersion: '1',
};

export const LEVEL = {
  protocol: 'four-level-2019',
  edition: '1',
  proposed: 'high',
  level: 'high',
  inputDigest: 'b'.repeat(64),
  codeVersion: '0.1.0',
  contentVersion: '1',
} as const;

/** What the core would hand to `closeVisit` with nothing in it. */
export const EMPTY_CLOSING = { answers: {}, findings: [], results: [], courses: [], tasks: [] } as const;
