import { AppError } from '../api/errors.ts';
import type { ReadingAssessment, SwabReading } from '../core/reading/types.ts';
import type { Answers } from '../core/visit/answer.ts';
import type { Finding } from '../core/visit/types.ts';
import { ConflictError } from '../store/errors.ts';
import { findingToColumns } from '../store/findingColumns.ts';
import { readDraft } from '../store/read/draftFields.ts';
import { findVisit } from '../store/read/visits.ts';
import type { ResultKind } from '../store/schema.ts';
import type { VisitSaid } from '../store/storedJson.ts';
import { deleteDraft, keepDraftValues } from '../store/write/draftFields.ts';
import { insertRows } from '../store/write/rows.ts';
import { closeOpenVisit } from '../store/write/visits.ts';
import { type ClosingCourse, endLeftOver, type UsedCourse, writeCourses, writeUsed } from './closingCourses.ts';
import { readingRow } from './closingReading.ts';
import { type ClosingTask, writeTasks } from './closingTasks.ts';
import { type ActionContext, inTransaction } from './context.ts';
import { resultTime } from './resultTime.ts';
import { requireRight } from './rights.ts';

export interface ClosingResult {
  readonly kind: ResultKind;
  readonly protocol?: string | undefined;
  readonly edition?: string | undefined;
  readonly level?: string | undefined;
  /** Digest of what the core was given. */
  readonly inputDigest: string;
  readonly body: unknown;
  readonly codeVersion: string;
  readonly contentVersion: string;
}

/** What the core computed from the draft that `draftDigest` names. */
export interface CloseVisitInput {
  readonly visitId: string;
  /** From `readDraft`: if anybody saved another field since, closing is a conflict and no acknowledged answer is lost. */
  readonly draftDigest: string;
  readonly answers: Answers;
  /** What was said besides; absent = nothing. */
  readonly said?: VisitSaid | undefined;
  /** Absent = not said. */
  readonly allExamined?: boolean | undefined;
  /** Absent = nothing was noted of a swab. A swab that was not taken has its reason in `swab.notTaken`. */
  readonly reading?:
    | { readonly swab: SwabReading; readonly assessed: ReadingAssessment; readonly meterId?: string | undefined }
    | undefined;
  readonly findings: readonly Finding[];
  readonly results: readonly ClosingResult[];
  readonly courses: readonly ClosingCourse[];
  /** What became of earlier courses. */
  readonly used?: readonly UsedCourse[];
  readonly tasks: readonly ClosingTask[];
}

/** Turns the draft of an open visit into its record, all or nothing. */
export async function closeVisit(context: ActionContext, input: CloseVisitInput): Promise<{ closedAt: string }> {
  const { scope, actor, now, newId } = context;
  requireRight(actor, 'closeVisit');
  const { visitId } = input;
  return inTransaction(context, 'closeVisit', async (trx, log) => {
    const allExamined = input.allExamined === undefined ? null : input.allExamined ? 1 : 0;
    const visit = await closeOpenVisit(trx, scope, visitId, {
      answers: JSON.stringify(input.answers),
      said: input.said === undefined ? null : JSON.stringify(input.said),
      allExamined,
      closedBy: actor.memberId,
    });
    if (!visit) throw await whyNotOpen(trx, context, visitId);
    const draft = await readDraft(trx, scope, visitId);
    if (draft.digest !== input.draftDigest) throw new ConflictError('The visit', input.draftDigest, draft.digest);
    log.row('visit', visit);

    const { patientId } = visit;
    const reading = input.reading && readingRow(newId(), { visitId, patientId }, input.reading);
    log.rows('reading', await insertRows(trx, scope, 'reading', reading ? [reading] : []));
    const findings = input.findings.map((finding) => ({
      id: newId(),
      visitId,
      missingReason: null,
      voidReason: null,
      ...findingToColumns(finding),
    }));
    log.rows('finding', await insertRows(trx, scope, 'finding', findings));
    const madeAt = await resultTime(trx, scope, visitId, now());
    const results = input.results.map((result) => ({ id: newId(), visitId, madeAt, ...toResultColumns(result) }));
    log.rows('result', await insertRows(trx, scope, 'result', results));
    log.rows('course', await writeCourses(trx, context, visit, input.courses));
    log.rows('course', await endLeftOver(trx, scope, visit, input.courses));
    log.rows('course', await writeUsed(trx, scope, patientId, input.used ?? []));
    log.rows('task', await writeTasks(trx, context, visit, input.tasks, input.said?.goalsSince));
    await keepDraftValues(trx, scope, visitId);
    await deleteDraft(trx, scope, visitId);
    return { closedAt: madeAt };
  });
}

async function whyNotOpen(trx: ActionContext['db'], { scope }: ActionContext, visitId: string): Promise<AppError> {
  const visit = await findVisit(trx, scope, visitId);
  if (visit) return new AppError('VISIT_CLOSED', 'This visit is closed.');
  return new AppError('VISIT_NOT_FOUND', 'There is no such visit in this practice.');
}

export function toResultColumns({ body, protocol, edition, level, ...rest }: ClosingResult) {
  const said = { protocol: protocol ?? null, edition: edition ?? null, level: level ?? null };
  return { ...rest, ...said, body: JSON.stringify(body), decision: null, decidedBy: null, reason: null };
}
