import type { ActionContext } from '../actions/context.ts';
import type { HistoryEntry } from '../api/bundles.ts';
import { AppError } from '../api/errors.ts';
import { listDraftPast, readDraft } from '../store/read/draftFields.ts';
import { listFindings } from '../store/read/findings.ts';
import { listMembers } from '../store/read/members.ts';
import { listReadings } from '../store/read/readings.ts';
import { type DecisionBody, listResults } from '../store/read/results.ts';
import { findVisit, listVisits, type Visit } from '../store/read/visits.ts';

type Reader = Pick<ActionContext, 'db' | 'scope'>;

/**
 * Every value that one field of a visit had, newest first: as it was saved and changed in the visit, as it was corrected after closing,
 * and what earlier visits closed with. @throws AppError VISIT_NOT_FOUND
 */
export async function readHistory(context: Reader, visitId: string, path: string): Promise<HistoryEntry[]> {
  const { db, scope } = context;
  const visit = await findVisit(db, scope, visitId);
  if (!visit) throw new AppError('VISIT_NOT_FOUND', 'This visit is not in the records of this practice.');
  const names = new Map((await listMembers(db, scope)).map(({ id, name }) => [id, name]));
  if (path === 'level') return listDecisions(context, visit);
  const now = (await readDraft(db, scope, visitId)).fields;
  const past = await listDraftPast(db, scope, visitId);
  const saved = [...past, ...now]
    .filter((field) => field.path === path)
    .map(({ value, memberId, savedAt }): HistoryEntry => ({ at: savedAt, by: names.get(memberId) ?? null, value, kind: 'saved' }));
  const earlier = (await listVisits(db, scope, visit.patientId)).filter(
    (v) => v.id !== visitId && v.state === 'closed' && v.onDate <= visit.onDate,
  );
  const atEarlier = await Promise.all(earlier.map((v) => readEarlier(context, v, path, names)));
  return [...atEarlier.flat(), ...saved, ...listCorrections(visit, path)].reverse();
}

function listCorrections({ said }: Visit, path: string): HistoryEntry[] {
  return (said?.corrections ?? []).flatMap(({ at, by, reason, changes }) =>
    changes
      .filter((change) => change.path === path)
      .map(({ after }): HistoryEntry => ({ at, by, value: after, kind: 'corrected', reason })),
  );
}

/** What a visit closed with, and how that was corrected since. A carried answer was not said there. */
async function readEarlier(context: Reader, visit: Visit, path: string, names: ReadonlyMap<string, string>): Promise<HistoryEntry[]> {
  const corrections = listCorrections(visit, path);
  const value = await valueAt(context, visit, path);
  const by = visit.closedBy === null ? null : (names.get(visit.closedBy) ?? null);
  const closed: HistoryEntry[] = value === undefined || corrections.length > 0 ? [] : [{ at: visit.onDate, by, value, kind: 'visit' }];
  return [...closed, ...corrections];
}

async function valueAt({ db, scope }: Reader, visit: Visit, path: string): Promise<unknown> {
  const [first = '', question] = path.split('.', 2);
  if (first === 'answers') {
    const answer = visit.answers?.[question ?? ''];
    return answer?.how === 'carried' ? undefined : answer;
  }
  if (first === 'findings') return listFindings(db, scope, visit.id);
  if (first === 'allExamined') return visit.allExamined ?? undefined;
  if (first === 'reading' || first === 'meterId') {
    const reading = (await listReadings(db, scope, visit.patientId)).find((r) => r.visitId === visit.id && r.use === 'patient');
    return (first === 'reading' ? reading?.swab : reading?.meterId) ?? undefined;
  }
  return visit.said ? Reflect.get(visit.said, first) : undefined;
}

async function listDecisions({ db, scope }: Reader, visit: Visit): Promise<HistoryEntry[]> {
  const decided = (await listResults(db, scope, visit.id, 'risk')).filter(({ decision }) => decision !== null);
  return decided
    .map(({ madeAt, level, decision, reason, body }): HistoryEntry => {
      const value = decision === 'withdrawn' ? 'not confirmed' : level;
      return { at: madeAt, by: (body as DecisionBody).by, value, kind: 'saved', ...(reason === null ? {} : { reason }) };
    })
    .reverse();
}
