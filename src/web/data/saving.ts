import { createContext, useContext, useSyncExternalStore } from 'react';
import type { FieldSaved } from '../../api/apiTypes.ts';
import { callApi } from './api.ts';
import { createSaveQueue, type SaveQueue, type SaveState } from './saveQueue.ts';

/** The queue that talks to the server. One for the whole page, so that leaving a screen loses nothing. */
export function createServerQueue(): SaveQueue {
  const queue = createSaveQueue({
    send: ({ visitId, path, value }, version) =>
      callApi<FieldSaved>('PUT', `/api/visits/${visitId}/fields`, version === undefined ? { path, value } : { path, value, version }),
    wait: (ms) => new Promise((resolve) => setTimeout(resolve, ms)),
  });
  addEventListener('beforeunload', (event) => {
    if (queue.state().unsaved > 0) event.preventDefault();
  });
  return queue;
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
