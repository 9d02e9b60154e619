import { useState } from 'react';
import { ApiError } from './api.ts';

/** Something saved with its version, as it stands on the server. */
export interface Versioned<T> {
  readonly value: T;
  readonly version: number;
}

interface VersionedSaveOptions<T> {
  /** Version that the form began from; 0 for something new. */
  readonly version: number;
  readonly write: (value: T, version: number) => Promise<unknown>;
  /** Reads it again, when somebody else was faster; undefined when it is not there. */
  readonly readAgain: () => Promise<Versioned<T> | undefined>;
  readonly onSaved: (value: T) => void | Promise<void>;
}

/** What somebody else saved in between, beside what was typed here. */
export interface SaveConflict<T> {
  readonly theirs: T | undefined;
  readonly mine: T;
}

/** Saves against a version. Where somebody else was faster, nothing is overwritten unseen: the next save knows of theirs. */
export function useVersionedSave<T>({ version, write, readAgain, onSaved }: VersionedSaveOptions<T>) {
  const [known, setKnown] = useState(version);
  const [isSending, setSending] = useState(false);
  const [problem, setProblem] = useState<string | null>(null);
  const [conflict, setConflict] = useState<SaveConflict<T> | null>(null);
  const attempt = async (value: T) => {
    try {
      await write(value, known);
      setConflict(null);
      await onSaved(value);
    } catch (error) {
      if (!(error instanceof ApiError)) throw error;
      if (error.status !== 409) return setProblem(sayRefusal(error));
      const theirs = await readAgain();
      setKnown(theirs?.version ?? 0);
      setConflict({ theirs: theirs?.value, mine: value });
    }
  };
  const save = async (value: T) => {
    setSending(true);
    setProblem(null);
    try {
      await attempt(value);
    } catch (error) {
      if (!(error instanceof ApiError)) throw error;
      setProblem(sayRefusal(error));
    } finally {
      setSending(false);
    }
  };
  return { save, isSending, problem, conflict };
}

/** The server's own sentence. What was typed stays on the page. */
export const sayRefusal = (error: ApiError): string => `Not saved. ${error.message}`;
