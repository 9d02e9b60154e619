import { createContext, useContext, useSyncExternalStore } from 'react';
import type { FieldSaved } from '../../api/apiTypes.ts';
import { callApi, whoActs } from './api.ts';
import { type CorrectionPlace, createKeptCorrections, type KeptCorrections } from './keptCorrections.ts';
import { createSaveQueue, type SaveJob, type SaveQueue, type SaveState } from './saveQueue.ts';
import { isOfStudy, sendStudyReading } from './studySaving.ts';

/** The queue that talks to the server. One for the whole page, so that leaving a screen loses nothing. */
export function createServerQueue(): SaveQueue {
  const queue = createSaveQueue({
    send: (job, version) => (isOfStudy(job) ? sendStudyReading(job, LONGEST_ANSWER_MS) : sendField(job, version)),
    wait: waitOrWake,
    whoIsHere: whoActs,
  });
  addEventListener('beforeunload', (event) => {
    if (queue.state().unsaved > 0) event.preventDefault();
  });
  return queue;
}

const sendField = ({ visitId, path, value, typedBy = null }: SaveJob, version: number | undefined) =>
  callApi<FieldSaved>('PUT', `/api/visits/${visitId}/fields`, version === undefined ? { path, value } : { path, value, version }, {
    timeoutMs: LONGEST_ANSWER_MS,
    as: typedBy,
  });

/** A server that hangs is as good as gone; sending a field again does no harm. */
const LONGEST_ANSWER_MS = 5_000;
const WAKES = ['online', 'focus', 'visibilitychange'] as const;

/** Waits, but not on when the lid of the laptop opens, the network is back, or somebody looks at the page again. */
function waitOrWake(ms: number): Promise<void> {
  return new Promise((resolve) => {
    const done = () => {
      clearTimeout(timer);
      for (const type of WAKES) removeEventListener(type, done, true);
      resolve();
    };
    const timer = setTimeout(done, ms);
    for (const type of WAKES) addEventListener(type, done, true);
  });
}

/** True once every field is saved or set aside; false when that takes longer than `ms`. */
export async function settledWithin(queue: SaveQueue, ms: number): Promise<boolean> {
  const tooLong = new Promise<boolean>((resolve) => setTimeout(() => resolve(false), ms));
  return Promise.race([queue.settled().then(() => true), tooLong]);
}

/** Corrections that are not saved yet. Leaving the page asks first. */
export function createPageCorrections(): KeptCorrections {
  const corrections = createKeptCorrections();
  addEventListener('beforeunload', (event) => {
    if (corrections.places().length > 0) event.preventDefault();
  });
  return corrections;
}

export const KeptCorrectionsContext = createContext<KeptCorrections | null>(null);

export function useKeptCorrections(): KeptCorrections {
  const corrections = useContext(KeptCorrectionsContext);
  if (!corrections) throw new Error('no kept corrections above this part');
  return corrections;
}

/** Where a correction was begun and not saved, by whoever is here. */
export function useUnsavedCorrections(memberId: string): readonly CorrectionPlace[] {
  const corrections = useKeptCorrections();
  const places = useSyncExternalStore(corrections.subscribe, corrections.places);
  return places.filter((place) => place.memberId === memberId);
}

export const SaveQueueContext = createContext<SaveQueue | null>(null);

export function useSaveQueue(): SaveQueue {
  const queue = useContext(SaveQueueContext);
  if (!queue) throw new Error('no save queue above this part');
  return queue;
}

export function useSaveState(): SaveState {
  const queue = useSaveQueue();
  return useSyncExternalStore(queue.subscribe, queue.state);
}
