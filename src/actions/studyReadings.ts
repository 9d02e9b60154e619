import { AppError } from '../api/errors.ts';
import { HOURS_BETWEEN_SWABS, isTooNear } from '../core/checks/nearSwab.ts';
import type { Study, StudyReading, StudyRun } from '../core/checks/study.ts';
import { boundOnMeter } from '../core/reading/boundOnMeter.ts';
import type { Bound, Meter } from '../core/reading/types.ts';
import type { StudyRunNote } from '../store/storedJson.ts';
import type { NewRow } from '../store/write/rows.ts';

/** What was read from one swab of a study. */
export interface RunReading {
  /** Of the run sheet, from 0. */
  readonly run: number;
  readonly rlu: number;
  readonly bound?: Bound | undefined;
  /** UTC. */
  readonly takenAt: string;
  /** Where another member took it than the run sheet says. */
  readonly operator?: string | undefined;
  readonly lotId?: string | undefined;
}

/** @throws AppError INPUT_INVALID */
export function requireRun({ runs }: Study, run: number): StudyRun {
  const found = runs[run];
  if (!found) throw new AppError('INPUT_INVALID', `run: the run sheet has swabs 1 to ${runs.length}, and not ${run + 1}`);
  return found;
}

/**
 * Why a reading is kept and does not count: a person was swabbed again within a day, so the plaque was not the same. Null where nothing
 * speaks against it.
 */
export function reasonAgainst(
  study: Study,
  run: StudyRun,
  takenAt: string,
  others: readonly Pick<StudyReading, 'run' | 'takenAt'>[],
): string | null {
  if (study.kind !== 'paired-days' || run.part === undefined) return null;
  const near = others.some((other) => {
    const isSamePerson = other.run !== run.index && study.runs[other.run]?.part === run.part;
    return isSamePerson && isTooNear(other.takenAt, takenAt);
  });
  return near ? `within ${HOURS_BETWEEN_SWABS} hours of another swab of ${run.part}` : null;
}

interface ReadingOf {
  readonly study: Study;
  readonly run: StudyRun;
  readonly meter: Meter;
  readonly reading: RunReading;
  readonly against: string | null;
}

export function studyReadingRow(id: string, { study, run, meter, reading, against }: ReadingOf): NewRow<'reading'> {
  const note: StudyRunNote = { run: run.index };
  return {
    id,
    use: 'study',
    patientId: null,
    visitId: null,
    studyId: study.id,
    meterId: meter.id,
    lotId: reading.lotId ?? run.lotId ?? study.lotIds[0] ?? null,
    operator: reading.operator ?? run.operator ?? null,
    activatedAt: null,
    takenAt: reading.takenAt,
    rlu: reading.rlu,
    bound: boundOnMeter(reading.rlu, reading.bound, meter),
    state: against === null ? 'valid' : 'void',
    reasons: JSON.stringify(against === null ? [] : [against]),
    swab: JSON.stringify(note),
  };
}
