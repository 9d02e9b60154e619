import { AppError, errorCodeOf } from '../api/errors.ts';
import type { Study, StudyReading } from '../core/checks/study.ts';
import type { Meter } from '../core/reading/types.ts';
import { listCatalog } from '../store/read/catalog.ts';
import { listStudyReadings } from '../store/read/checks.ts';
import type { Db } from '../store/schema.ts';
import type { SiteScope } from '../store/siteScope.ts';
import { insertRows } from '../store/write/rows.ts';
import { type ActionContext, inTransaction } from './context.ts';
import { readStudyCsv, type StudyCsvLine } from './readStudyCsv.ts';
import { beginStudy } from './recordStudyReading.ts';
import { requireOpenStudy } from './requireStudy.ts';
import { requireNumberOf, requirePastTime } from './requireSupplies.ts';
import { requireRight } from './rights.ts';
import { listTooSoon } from './studyPersonSwabs.ts';
import { type RunReading, reasonAgainst, requireRun, studyReadingRow } from './studyReadings.ts';

export interface LineProblem {
  /** Number of the line in the text, from 1; 0 = the text as a whole. */
  readonly line: number;
  readonly message: string;
}

export interface ImportedReadings {
  /** 0 as soon as one line has a problem: then nothing is written, and the text can be mended as it stands. */
  readonly taken: number;
  readonly problems: readonly LineProblem[];
  /** Lines that are kept and do not count, with the reason. */
  readonly notCounted: readonly LineProblem[];
}

/**
 * Readings of a study from a table: columns `run` (from 1, as on the run sheet) and `rlu`, and where wanted `operator`, `lot`, `taken at`, and
 * `counted` with `not counted because`, as the table that a study gives out has them. All of it or nothing.
 * @throws AppError STUDY_NOT_FOUND, STUDY_OVER
 */
export async function importStudyReadings(
  context: ActionContext,
  { studyId, text }: { readonly studyId: string; readonly text: string },
): Promise<ImportedReadings> {
  const { scope, actor, now, newId } = context;
  requireRight(actor, 'recordStudyReading');
  const read = readStudyCsv(text);
  return inTransaction(context, 'recordStudyReading', async (trx, log) => {
    const entry = await requireOpenStudy(trx, scope, studyId);
    const meters = (await listCatalog(trx, scope, 'meter')).map(({ body }) => body);
    const lots = (await listCatalog(trx, scope, 'lot')).map(({ body }) => body);
    const before = (await listStudyReadings(trx, scope, studyId)).filter(({ state }) => state === 'valid');
    const setting: Setting = { study: entry.body, meters, lots, now: now(), taken: new Set(before.map(({ run }) => run)) };
    const judged = read.lines.map((line) => judgeLine(line, setting));
    const tooSoon = await listTooSoonLines(trx, scope, entry.body, judged);
    const problems = [...read.problems, ...judged.flatMap(({ problem }) => problem ?? []), ...tooSoon].sort((a, b) => a.line - b.line);
    if (problems.length > 0) return { taken: 0, problems, notCounted: [] };
    const rows = [];
    const notCounted: LineProblem[] = [];
    const others: Pick<StudyReading, 'run' | 'takenAt'>[] = [...before];
    for (const { line, reading, meter, against: said } of judged) {
      if (!reading || !meter) continue;
      const run = requireRun(entry.body, reading.run);
      const against = said ?? reasonAgainst(entry.body, run, reading.takenAt, others);
      if (against !== null) notCounted.push({ line, message: against });
      else others.push({ run: reading.run, takenAt: reading.takenAt });
      rows.push(studyReadingRow(newId(), { study: entry.body, run, meter, reading, against }));
    }
    log.rows('reading', await insertRows(trx, scope, 'reading', rows));
    if (rows.length > 0) await beginStudy(trx, log, context, entry);
    return { taken: rows.length, problems: [], notCounted };
  });
}

/** Lines of people who are linked to a chart and were swabbed within 24 hours; a line that says itself that it does not count is kept. */
async function listTooSoonLines(trx: Db, scope: SiteScope, study: Study, judged: readonly Judged[]): Promise<LineProblem[]> {
  const swabs = judged.flatMap(({ line, reading, against }) =>
    reading && against === undefined ? [{ line, run: requireRun(study, reading.run), takenAt: reading.takenAt }] : [],
  );
  return (await listTooSoon(trx, scope, study, swabs)).map(({ swab, says }) => ({ line: swab.line, message: `run: ${says}` }));
}

interface Setting {
  readonly study: Study;
  readonly meters: readonly Meter[];
  readonly lots: readonly { readonly id: string; readonly name: string }[];
  readonly now: string;
  /** Swabs that have a reading; each line adds its own. */
  readonly taken: Set<number>;
}

interface Judged {
  readonly line: number;
  readonly problem?: LineProblem;
  readonly reading?: RunReading;
  readonly meter?: Meter;
  readonly against?: string | undefined;
}

/** One line against the study; every problem that an action would refuse is said of its line. */
function judgeLine({ line, run, rlu, bound, takenAt, operator, lot, against }: StudyCsvLine, setting: Setting): Judged {
  try {
    const sheet = requireRun(setting.study, run);
    if (against === undefined && setting.taken.has(run)) throw new AppError('CONFLICT', `run: swab ${run + 1} has its reading already`);
    if (against === undefined) setting.taken.add(run);
    const meter = setting.meters.find(({ id }) => id === (sheet.meterId ?? setting.study.meterId));
    if (!meter) throw new AppError('METER_NOT_FOUND', 'the meter of the study is not in this practice');
    requireNumberOf(meter, rlu);
    const lotId = lot === undefined ? undefined : setting.lots.find((known) => known.id === lot || known.name === lot)?.id;
    if (lot !== undefined && lotId === undefined) throw new AppError('LOT_NOT_FOUND', `lot: there is no swab lot "${lot}"`);
    const at = requirePastTime(setting.now, takenAt);
    return { line, meter, against, reading: { run, rlu, bound, takenAt: at, operator, lotId } };
  } catch (error) {
    if (!(error instanceof AppError) || errorCodeOf(error) === undefined) throw error;
    return { line, problem: { line, message: error.message } };
  }
}
