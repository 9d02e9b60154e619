import { useQueryClient } from '@tanstack/react-query';
import { useEffect } from 'react';
import type { StudyReading } from '../../../../core/checks/study.ts';
import { useSaveQueue, useSaveState } from '../../../data/saving.ts';
import { readStudy, type StudyRecord } from '../../../data/studyQueries.ts';
import { forgetTyped, noteTyped, onStudySaved, placeOfStudy, type TypedReading, useTyped } from '../../../data/studySaving.ts';

/** A number that was typed and is not on record yet, with what the server said against it. */
export interface Pending extends TypedReading {
  readonly refused?: string | undefined;
}

/**
 * Numbers between the keyboard and the record. They go through the save queue of the whole page, so that leaving this page loses none;
 * a number counts as saved once the server gives it back.
 */
export function useStudyEntry({ study, readings }: StudyRecord) {
  const client = useQueryClient();
  const queue = useSaveQueue();
  const { refused } = useSaveState();
  const typed = useTyped(study.id);
  const visitId = placeOfStudy(study.id);
  useEffect(
    () => onStudySaved((id) => client.fetchQuery({ queryKey: ['study', id], queryFn: () => readStudy(id), staleTime: 0 })),
    [client],
  );
  const pending = new Map<number, Pending>();
  for (const [run, reading] of typed) {
    const because = refused.find((job) => job.visitId === visitId && job.path === String(run))?.message;
    pending.set(run, { ...reading, refused: because });
  }
  const put = (run: number, reading: TypedReading) => {
    noteTyped(study.id, run, reading);
    queue.put({ visitId, path: String(run), value: reading });
  };
  const forget = (run: number) => {
    queue.giveUp({ visitId, path: String(run) });
    forgetTyped(study.id, run);
  };
  return { byRun: newestByRun(readings), pending, put, forget };
}

/** Of each swab the reading that counts, or else the last one that does not. */
export function newestByRun(readings: readonly StudyReading[]): ReadonlyMap<number, StudyReading> {
  const byRun = new Map<number, StudyReading>();
  for (const reading of readings) {
    if (reading.state === 'valid' || byRun.get(reading.run)?.state !== 'valid') byRun.set(reading.run, reading);
  }
  return byRun;
}
