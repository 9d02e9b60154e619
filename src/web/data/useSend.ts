import { useState } from 'react';
import { ApiError } from './api.ts';
import { sayRefusal } from './useVersionedSave.ts';

/** Sends something that has no version; a refusal stays on the page in the server's own words. */
export function useSend() {
  const [isSending, setSending] = useState(false);
  const [problem, setProblem] = useState<string | null>(null);
  const send = async (action: () => Promise<void>) => {
    setSending(true);
    setProblem(null);
    try {
      await action();
    } catch (error) {
      if (!(error instanceof ApiError)) throw error;
      setProblem(sayRefusal(error));
    } finally {
      setSending(false);
    }
  };
  return { send, isSending, problem, conflict: null };
}
