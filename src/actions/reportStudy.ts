import { AppError } from '../api/errors.ts';
import { OwnEstimateSchema } from '../api/visitSchema.ts';
import type { Study, StudyReport } from '../core/checks/study.ts';
import type { Meter, OwnEstimate } from '../core/reading/types.ts';
import { ConflictError } from '../store/errors.ts';
import { findCatalogEntry } from '../store/read/catalog.ts';
import { countStudyReadings } from '../store/read/checks.ts';
import type { Db } from '../store/schema.ts';
import { saveCatalogRow } from '../store/write/catalog.ts';
import { carryToPlan, noteCompared } from './carryToPlan.ts';
import { requireDate } from './checks.ts';
import { type ActionContext, type ChangeLog, inTransaction } from './context.ts';
import { requireOpenStudy } from './requireStudy.ts';
import { requireRight } from './rights.ts';

export interface ReportStudyInput {
  readonly studyId: string;
  readonly expectedVersion: number;
  /** Local date of today. */
  readonly onDate: string;
  /** What the core computed from the readings on record. */
  readonly report: Pick<StudyReport, 'sentences' | 'estimates' | 'body'>;
}

/**
 * Closes a study with its report. Each part of the noise that it measured goes to its meter, from where the next verdicts take it;
 * verdicts on the record stay as they were. A new lot that was compared gets its target in the control plan.
 * @throws AppError STUDY_NOT_FOUND, STUDY_OVER, INPUT_INVALID; ConflictError
 */
export async function reportStudy(context: ActionContext, input: ReportStudyInput): Promise<{ version: number }> {
  const { scope, actor, now } = context;
  requireRight(actor, 'reportStudy');
  const onDate = requireDate('onDate', input.onDate);
  const { sentences, estimates, body } = input.report;
  if (sentences.length === 0) throw new AppError('INPUT_INVALID', 'report.sentences: a report says something');
  return inTransaction(context, 'reportStudy', async (trx, log) => {
    const { body: study } = await requireOpenStudy(trx, scope, input.studyId);
    const count = (await countStudyReadings(trx, scope)).get(study.id) ?? 0;
    if (study.runs.length > 0 && count === 0) throw new AppError('INPUT_INVALID', 'This study has no reading that counts yet.');
    const report: StudyReport = { by: actor.name, at: now(), onDate, sentences, estimates, body };
    const reported: Study = { ...study, state: 'reported', report };
    const entry = { kind: 'study', id: study.id, body: JSON.stringify(reported) } as const;
    const row = await saveCatalogRow(trx, scope, entry, input.expectedVersion);
    if (!row) throw new ConflictError('This study', report, await findCatalogEntry(trx, scope, 'study', study.id));
    log.row('catalog', row);
    await addToMeter(trx, log, context, reported);
    await carryToPlan(trx, log, scope, reported);
    await noteCompared(trx, log, scope, reported);
    return { version: row.version };
  });
}

async function addToMeter(trx: Db, log: ChangeLog, { scope }: ActionContext, study: Study): Promise<void> {
  const { id: studyId, kind, meterId, report } = study;
  if (!report || report.estimates.length === 0) return;
  const found = await findCatalogEntry(trx, scope, 'meter', meterId);
  if (!found) throw new AppError('METER_NOT_FOUND', 'The meter of this study is not in this practice.');
  const own = report.estimates.map((estimate, i): OwnEstimate => {
    const checked = OwnEstimateSchema.safeParse({ ...estimate, studyId, kind, reportedOn: report.onDate });
    if (checked.success) return checked.data;
    throw new AppError('INPUT_INVALID', `report.estimates.${i}: ${checked.error.issues[0]?.message}`);
  });
  const meter: Meter = { ...found.body, own: [...(found.body.own ?? []), ...own] };
  const row = await saveCatalogRow(trx, scope, { kind: 'meter', id: meterId, body: JSON.stringify(meter) }, found.version);
  if (!row) throw new ConflictError('This meter', meter, found);
  log.row('catalog', row);
}
