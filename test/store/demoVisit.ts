import { addMember } from '../../src/actions/addMember.ts';
import { addPatient } from '../../src/actions/addPatient.ts';
import { confirmLevel } from '../../src/actions/confirmLevel.ts';
import type { ActionContext } from '../../src/actions/context.ts';
import { createPractice } from '../../src/actions/createPractice.ts';
import { digestOf, finishVisit } from '../../src/actions/finishVisit.ts';
import { loadVisit } from '../../src/actions/loadVisit.ts';
import { openVisit } from '../../src/actions/openVisit.ts';
import { recordAnswer } from '../../src/actions/recordAnswer.ts';
import type { Role } from '../../src/api/apiTypes.ts';
import { content } from '../../src/content/allContent.ts';
import { buildDemoPractice } from '../../src/content/demo/practice.ts';
import type { Plan } from '../../src/core/regimen/types.ts';
import type { Level } from '../../src/core/risk/types.ts';
import { assessVisit } from '../../src/core/visit/assessVisit.ts';
import type { Finding } from '../../src/core/visit/types.ts';
import type { SiteScope } from '../../src/store/siteScope.ts';
import type { Bench } from './contract.ts';

export const CAVITY: Finding = { tooth: '36', surface: 'occlusal', kind: 'cavity', activity: 'active', isNew: true };

/** A practice with the invented shelf and one adult, whose visits go through the whole of the core. */
export interface DemoVisits {
  readonly scope: SiteScope;
  readonly patientId: string;
  readonly as: (role: Role) => ActionContext;
  readonly open: (onDate: string) => Promise<string>;
  readonly save: (visitId: string, fields: Readonly<Record<string, unknown>>) => Promise<void>;
  readonly confirm: (visitId: string, level: Level) => Promise<void>;
  readonly planOf: (visitId: string) => Promise<Plan>;
  readonly close: (visitId: string) => Promise<void>;
  /** Opened, answered and confirmed high; `fields` besides. */
  readonly begin: (onDate: string, fields?: Readonly<Record<string, unknown>>) => Promise<string>;
  /** The same, and closed. */
  readonly whole: (onDate: string, fields?: Readonly<Record<string, unknown>>) => Promise<string>;
}

const SAFE: Readonly<Record<string, unknown>> = {
  medicines: [],
  allergies: [],
  conditions: [],
  private_conditions: [],
  pregnant: 'no',
  household: [],
  appliance: [],
  dry_mouth: 'no',
  natural_teeth: 'has-teeth',
};

export const askedOn = (date: string, value: unknown) => ({ how: 'asked', value, askedOn: date });

export async function demoVisits(bench: Bench): Promise<DemoVisits> {
  const { db, now, newId, random } = bench.practice().as('lead');
  const base = { db, now, newId, ...(random ? { random } : {}) };
  const firstMember = { name: 'Lead member', roles: ['lead'] } as const;
  const founder = { memberId: 'founder', name: 'Founder', roles: ['lead'] };
  const made = await createPractice(
    { ...base, actor: founder },
    { practice: buildDemoPractice('2026-11-25'), locale: 'en-GB', firstMember },
  );
  const { scope } = made;
  const lead: ActionContext = { ...base, scope, actor: { memberId: made.memberId, name: 'Lead member', roles: ['lead'] } };
  const contexts = new Map<Role, ActionContext>([['lead', lead]]);
  for (const role of ['assistant', 'hygienist', 'dentist'] as const) {
    const name = `Member ${role}`;
    const { memberId } = await addMember(lead, { name, roles: [role], trainedSwab: true });
    contexts.set(role, { ...base, scope, actor: { memberId, name, roles: [role] } });
  }
  const as = (role: Role) => contexts.get(role) ?? lead;
  const { patientId } = await addPatient(lead, { name: 'Ana Núñez-O’Neil', birthDate: '1984-03-02' });
  const planOf = async (visitId: string) => assessVisit((await loadVisit(db, scope, visitId)).input, content).plan;
  const open = async (onDate: string) => (await openVisit(as('hygienist'), { patientId, kind: 'chair', onDate })).id;
  const save: DemoVisits['save'] = async (visitId, fields) => {
    for (const [path, value] of Object.entries(fields)) await recordAnswer(as('hygienist'), { visitId, path, value });
  };
  const confirm: DemoVisits['confirm'] = async (visitId, level) => {
    const { input } = await loadVisit(db, scope, visitId);
    const { proposed, versions } = assessVisit(input, content);
    await confirmLevel(as('hygienist'), {
      visitId,
      level,
      proposed: proposed?.level ?? null,
      protocol: proposed?.protocol ?? 'none',
      edition: proposed?.edition ?? 'none',
      reason: 'for the test',
      inputDigest: digestOf(input),
      codeVersion: versions.code,
      contentVersion: versions.content,
    });
  };
  const close = async (visitId: string) => {
    await finishVisit(as('hygienist'), visitId);
  };
  const begin: DemoVisits['begin'] = async (onDate, fields = {}) => {
    const visitId = await open(onDate);
    const answers = Object.entries(SAFE).map(([id, value]) => [`answers.${id}`, askedOn(onDate, value)] as const);
    await save(visitId, { ...Object.fromEntries(answers), findings: [CAVITY], allExamined: true, ...fields });
    await confirm(visitId, 'high');
    return visitId;
  };
  const whole: DemoVisits['whole'] = async (onDate, fields) => {
    const visitId = await begin(onDate, fields);
    await close(visitId);
    return visitId;
  };
  return { scope, patientId, as, open, save, confirm, planOf, close, begin, whole };
}
