import { reasonNotCounted } from '../../../../core/checks/countedRuns.ts';
import type { Study, StudyReading, StudyRun } from '../../../../core/checks/study.ts';
import { newestByRun } from './useStudyEntry.ts';

/** One swab of the picture. */
export interface StudyPoint {
  readonly run: StudyRun;
  readonly reading: StudyReading;
  readonly isCounted: boolean;
  /** What is drawn: against the geometric mean of its solution, or RLU where people are drawn. */
  readonly value: number;
}

export interface StudyGroup {
  readonly name: string;
  /** In the order in which they were taken. */
  readonly points: readonly StudyPoint[];
}

export interface StudyPicture {
  readonly groups: readonly StudyGroup[];
  /** `ratio`: 1 is the mean of the solution; `rlu`: as read. */
  readonly scale: 'ratio' | 'rlu';
}

type Named = Pick<Study, 'kind' | 'runs'>;

/** Readings by hand, lot or person. A reading that does not count keeps its place, and moves no mean. */
export function studyPicture({ kind, runs }: Named, readings: readonly StudyReading[], nameOfLot: (id: string) => string): StudyPicture {
  const scale = kind === 'paired-days' ? 'rlu' : 'ratio';
  const drawn = [...newestByRun(readings).values()].flatMap((reading) => {
    const run = runs[reading.run];
    return run && reading.rlu > 0 ? [{ run, reading, isCounted: reasonNotCounted(run, asRead(reading)) === undefined }] : [];
  });
  const meanLn = meansByPart(drawn);
  const groups = new Map<string, StudyPoint[]>();
  for (const point of drawn.sort((a, b) => a.run.index - b.run.index)) {
    const mean = scale === 'rlu' ? 0 : meanLn.get(point.run.part ?? '');
    // Nothing that counts was read of this solution, so there is nothing to hold it against.
    if (mean === undefined) continue;
    const name = groupOf(kind, point.run, nameOfLot);
    groups.set(name, [...(groups.get(name) ?? []), { ...point, value: Math.exp(Math.log(point.reading.rlu) - mean) }]);
  }
  const named = [...groups].map(([name, points]) => ({ name, points }));
  return { scale, groups: named.sort((a, b) => a.name.localeCompare(b.name, 'en', { numeric: true })) };
}

function groupOf(kind: Study['kind'], { part, operator, lotId }: StudyRun, nameOfLot: (id: string) => string): string {
  if (kind === 'hands') return operator ?? '';
  if (kind === 'paired-days') return part ?? '';
  return lotId === undefined ? (part ?? '') : nameOfLot(lotId);
}

function meansByPart(drawn: readonly Omit<StudyPoint, 'value'>[]): ReadonlyMap<string, number> {
  const logs = new Map<string, number[]>();
  for (const { run, reading, isCounted } of drawn) {
    const part = run.part ?? '';
    if (isCounted) logs.set(part, [...(logs.get(part) ?? []), Math.log(reading.rlu)]);
  }
  return new Map([...logs].map(([part, values]) => [part, values.reduce((sum, v) => sum + v, 0) / values.length]));
}

export const asRead = ({ run, rlu, bound, state, operator, lotId }: StudyReading) => ({
  run,
  rlu,
  bound,
  state,
  operator: operator ?? undefined,
  lotId: lotId ?? undefined,
});
