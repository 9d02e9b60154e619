import { useSyncExternalStore } from 'react';
import type { Bound } from '../../core/reading/types.ts';
import { ApiError, callApi } from './api.ts';
import type { SaveJob } from './saveQueue.ts';
import { readStudy } from './studyQueries.ts';

/** The number of one swab of a study, as the save queue carries it. */
export interface TypedReading {
  readonly rlu: number;
  readonly bound: Bound;
  /** UTC; absent = when the server takes it. */
  readonly takenAt?: string | undefined;
}

const PLACE = 'study ';

/** Where the save queue keeps what belongs to a study: beside the visits, and never mixed up with one. */
export const placeOfStudy = (studyId: string): string => `${PLACE}${studyId}`;
export const isOfStudy = ({ visitId }: Pick<SaveJob, 'visitId'>): boolean => visitId.startsWith(PLACE);

type Typed = ReadonlyMap<number, TypedReading>;
const NONE: Typed = new Map();
/** By study and swab, what was typed and is not seen on record yet. It outlives its page, as the save queue does. */
let typed: ReadonlyMap<string, Typed> = new Map();
const watchers = new Set<() => void>();

function keepTyped(studyId: string, run: number, reading: TypedReading | undefined): void {
  const ofStudy = new Map(typed.get(studyId));
  if (reading) ofStudy.set(run, reading);
  else ofStudy.delete(run);
  typed = new Map(typed).set(studyId, ofStudy);
  for (const watcher of watchers) watcher();
}

export function noteTyped(studyId: string, run: number, reading: TypedReading): void {
  keepTyped(studyId, run, reading);
}

export function forgetTyped(studyId: string, run: number): void {
  keepTyped(studyId, run, undefined);
}

export function useTyped(studyId: string): Typed {
  return useSyncExternalStore(
    (watcher) => {
      watchers.add(watcher);
      return () => watchers.delete(watcher);
    },
    () => typed.get(studyId) ?? NONE,
  );
}

const readers = new Set<(studyId: string) => Promise<unknown>>();

/** Reads a study again after each number that the server has taken. */
export function onStudySaved(reader: (studyId: string) => Promise<unknown>): () => void {
  readers.add(reader);
  return () => readers.delete(reader);
}

/** A number stays on the page as typed until it is seen on record, so that it never flickers away between the two. */
async function letGo(studyId: string, run: number, reading: TypedReading): Promise<void> {
  await Promise.allSettled([...readers].map((read) => read(studyId)));
  if (typed.get(studyId)?.get(run) === reading) forgetTyped(studyId, run);
}

/** Sends one number. Where its first answer was lost on the way and it is on record already, that is a yes. */
export async function sendStudyReading({ visitId, path, value, typedBy = null }: SaveJob, timeoutMs: number) {
  const studyId = visitId.slice(PLACE.length);
  const run = Number(path);
  // Only this page puts jobs of a study into the queue.
  const reading = value as TypedReading;
  try {
    await callApi('POST', `/api/studies/${studyId}/readings`, { run, ...reading }, { timeoutMs, as: typedBy });
  } catch (error) {
    if (!(error instanceof ApiError) || error.status !== 409 || !(await isOnRecord(studyId, run, reading.rlu))) throw error;
  }
  void letGo(studyId, run, reading);
  return { version: 1, savedAt: new Date().toISOString() };
}

async function isOnRecord(studyId: string, run: number, rlu: number): Promise<boolean> {
  const { readings } = await readStudy(studyId);
  return readings.some((reading) => reading.run === run && reading.state === 'valid' && reading.rlu === rlu);
}
