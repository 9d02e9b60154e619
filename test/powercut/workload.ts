/**
 * A server's day in small: saves answers and closes visits through the actions, and says so after each. Run as a child process.
 * Arguments: folder, key as hex, file for the acknowledgements ("-" for the standard output), number of answers, value of synchronous.
 */

import { randomBytes } from 'node:crypto';
import { openSync, writeSync } from 'node:fs';
import { sql } from 'kysely';
import { v7 } from 'uuid';
import { addPatient } from '../../src/actions/addPatient.ts';
import { closeVisit } from '../../src/actions/closeVisit.ts';
import type { ActionContext } from '../../src/actions/context.ts';
import { createPractice } from '../../src/actions/createPractice.ts';
import { openVisit } from '../../src/actions/openVisit.ts';
import { recordAnswer } from '../../src/actions/recordAnswer.ts';
import type { Answer } from '../../src/core/visit/answer.ts';
import { openSqliteStore } from '../../src/store/openStore.ts';
import { readDraft } from '../../src/store/read/draftFields.ts';
import { PRACTICE, RESULT } from '../store/practice.ts';

/** One acknowledgement, a line of JSON. */
export type Acknowledged =
  | { readonly kind: 'answer'; readonly visitId: string; readonly path: string; readonly value: number }
  | { readonly kind: 'closed'; readonly visitId: string; readonly answers: number };

const ANSWERS_PER_VISIT = 25;
/** Some answers are given twice, so that the newest must win. */
const QUESTIONS_PER_VISIT = 20;

const [, , folder = '', keyHex = '', ackFile = '-', answerCount = '0', synchronous = 'FULL'] = process.argv;
const ackHandle = ackFile === '-' ? 1 : openSync(ackFile, 'a');
const acknowledge = (done: Acknowledged) => writeSync(ackHandle, `${JSON.stringify(done)}\n`);

const store = await openSqliteStore({ folder, key: Buffer.from(keyHex, 'hex'), create: true });
await sql`pragma synchronous = ${sql.raw(synchronous)}`.execute(store.db);
const now = () => new Date().toISOString();
const base = { db: store.db, now, newId: () => v7(), random: randomBytes };
const founder = { memberId: 'founder', name: 'Founder', roles: ['lead'] };
const { scope, memberId } = await createPractice(
  { ...base, actor: founder },
  { practice: PRACTICE, locale: 'en-GB', firstMember: { name: 'Lead', roles: ['lead', 'hygienist'] } },
);
const context: ActionContext = { ...base, scope, actor: { memberId, name: 'Lead', roles: ['lead', 'hygienist'] } };

for (let answered = 0; answered < Number(answerCount); ) {
  const { patientId } = await addPatient(context, { name: `Person ${answered}`, birthDate: '1990-01-01' });
  const { id: visitId } = await openVisit(context, { patientId, kind: 'chair', onDate: '2026-03-04' });
  for (let turn = 0; turn < ANSWERS_PER_VISIT; turn += 1, answered += 1) {
    const path = `answers.q${turn % QUESTIONS_PER_VISIT}`;
    await recordAnswer(context, { visitId, path, value: answered });
    acknowledge({ kind: 'answer', visitId, path, value: answered });
  }
  const { fields, digest } = await readDraft(store.db, scope, visitId);
  const answers = Object.fromEntries(
    fields.map(({ path, value }): [string, Answer] => [path, { how: 'asked', value: Number(value), askedOn: '2026-03-04' }]),
  );
  await closeVisit(context, {
    visitId,
    draftDigest: digest,
    answers,
    findings: [{ tooth: '36', kind: 'cavity', isNew: true }],
    results: [RESULT],
    courses: [{ shelfItemId: 'paste', state: 'agreed', release: 'not-needed' }],
    tasks: [{ kind: 'recall', due: '2026-09-04' }],
  });
  acknowledge({ kind: 'closed', visitId, answers: fields.length });
}
// As if the power went: nothing is closed.
process.kill(process.pid, 'SIGKILL');
