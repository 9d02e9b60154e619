import { sql } from 'kysely';
import type { Store } from '../../src/store/openStore.ts';
import type { Acknowledged } from './workload.ts';

/** Complete lines only: one that was cut off was not read by anybody. */
export function parseAcknowledged(text: string): Acknowledged[] {
  return text
    .slice(0, text.lastIndexOf('\n') + 1)
    .split('\n')
    .filter((line) => line !== '')
    .map((line) => JSON.parse(line));
}

/** What must be found of a list of acknowledgements: the newest value of each answer, and which visits were closed. */
export class Promised {
  readonly answers = new Map<string, { visitId: string; path: string; value: number }>();
  readonly closed = new Set<string>();

  add(done: Acknowledged): void {
    if (done.kind === 'closed') this.closed.add(done.visitId);
    else this.answers.set(`${done.visitId} ${done.path}`, done);
  }
}

/** Sentences on what was acknowledged and is not there; empty = nothing was lost. */
export async function findLost({ db }: Store, promised: Promised): Promise<string[]> {
  const found = new Map<string, number>();
  const closed = new Set<string>();
  for (const { id, state, answers } of await db.selectFrom('visit').select(['id', 'state', 'answers']).execute()) {
    if (state === 'closed') closed.add(id);
    const kept: Record<string, { value: number }> = answers === null ? {} : JSON.parse(answers);
    for (const [path, { value }] of Object.entries(kept)) found.set(`${id} ${path}`, value);
  }
  for (const { visitId, path, value } of await db.selectFrom('draftField').select(['visitId', 'path', 'value']).execute()) {
    found.set(`${visitId} ${path}`, JSON.parse(value));
  }
  const lost = [...promised.answers]
    .filter(([key, { value }]) => !((found.get(key) ?? -1) >= value))
    .map(([key, { value }]) => `answer ${key} = ${value}`);
  return [...lost, ...[...promised.closed].filter((id) => !closed.has(id)).map((id) => `closing of ${id}`)];
}

export async function integrityOf({ db }: Store): Promise<string> {
  const { rows } = await sql<{ integrityCheck: string }>`pragma integrity_check(1)`.execute(db);
  return rows[0]?.integrityCheck ?? 'no answer';
}
