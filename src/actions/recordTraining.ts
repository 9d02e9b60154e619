import { AppError } from '../api/errors.ts';
import type { Training, TrainingEvent, TrainingStep } from '../core/checks/training.ts';
import { ConflictError } from '../store/errors.ts';
import { findCatalogEntry } from '../store/read/catalog.ts';
import { findMember } from '../store/read/members.ts';
import type { Db } from '../store/schema.ts';
import type { SiteScope } from '../store/siteScope.ts';
import { saveCatalogRow } from '../store/write/catalog.ts';
import { updateRow } from '../store/write/rows.ts';
import { requireDate, requireReason, requireText } from './checks.ts';
import { type ActionContext, inTransaction } from './context.ts';
import { requireStudy } from './requireStudy.ts';
import { hasRole, requireRight } from './rights.ts';

export interface RecordTrainingInput {
  readonly memberId: string;
  readonly step: TrainingStep;
  /** Local date on which it was. */
  readonly onDate: string;
  /** Local date by which the qualification is looked at again; absent = as it stands. */
  readonly dueOn?: string | undefined;
}

/**
 * Notes one step of a member's training. What a member did alone anybody may note; that somebody is qualified is said by a lead, or by
 * whoever reported the study, and from then on the member's swabs count without a caution.
 * @throws AppError MEMBER_NOT_FOUND, NOT_ALLOWED, STUDY_NOT_FOUND, INPUT_INVALID, REASON_REQUIRED
 */
export async function recordTraining(context: ActionContext, input: RecordTrainingInput): Promise<{ version: number }> {
  const { scope, actor, now } = context;
  requireRight(actor, 'recordTraining');
  requireMayQualify(context, input.step);
  const { memberId, dueOn } = input;
  const onDate = requireDate('onDate', input.onDate);
  if (dueOn !== undefined && requireDate('dueOn', dueOn) <= onDate) throw new AppError('INPUT_INVALID', 'dueOn: must be later than onDate');
  return inTransaction(context, 'recordTraining', async (trx, log) => {
    const member = await findMember(trx, scope, memberId);
    if (!member) throw new AppError('MEMBER_NOT_FOUND', 'There is no such member.');
    const step = await checkStep(trx, scope, input.step);
    const before = await findCatalogEntry(trx, scope, 'training', memberId);
    const event: TrainingEvent = { ...step, onDate, notedBy: actor.name, at: now() };
    const due = dueOn ?? before?.body.dueOn;
    const training: Training = { memberId, events: [...(before?.body.events ?? []), event], ...(due === undefined ? {} : { dueOn: due }) };
    const row = await saveCatalogRow(trx, scope, { kind: 'training', id: memberId, body: JSON.stringify(training) }, before?.version ?? 0);
    if (!row) throw new ConflictError('This training', training, before);
    log.row('catalog', row);
    if (isQualifying(step) && !member.trainedSwab) {
      const changed = await updateRow(trx, scope, 'member', member, { trainedSwab: 1 });
      if (!changed) throw new ConflictError('This member', event, member);
      log.row('member', changed);
    }
    return { version: row.version };
  });
}

const isQualifying = ({ kind }: TrainingStep): boolean => kind === 'qualified-by-lead' || kind === 'qualified-by-study';

function requireMayQualify({ actor }: ActionContext, { kind }: TrainingStep): void {
  if (kind === 'qualified-by-lead' && !hasRole(actor, 'lead'))
    throw new AppError('NOT_ALLOWED', `${actor.name} may not do this; it takes the role lead.`);
  if (kind === 'qualified-by-study') requireRight(actor, 'reportStudy');
}

/** The step with its words checked. */
async function checkStep(trx: Db, scope: SiteScope, step: TrainingStep): Promise<TrainingStep> {
  switch (step.kind) {
    case 'read-card':
    case 'watched':
      return step;
    case 'supervised-swab':
      return { kind: step.kind, with: requireText('with', step.with) };
    case 'qualified-by-lead':
      return { kind: step.kind, reason: requireReason(step.reason) };
    case 'qualified-by-study': {
      const { body } = await requireStudy(trx, scope, step.studyId);
      if (body.state === 'reported' && body.kind === 'hands') return step;
      throw new AppError('INPUT_INVALID', 'studyId: only a reported study of hands says who is qualified');
    }
  }
}
