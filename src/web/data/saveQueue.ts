import { ApiError } from './api.ts';

/** One field on its way to the server. `key` is unique over visits: "visitId answers.can_spit". */
export interface SaveJob {
  readonly visitId: string;
  readonly path: string;
  readonly value: unknown;
  /** Who typed it: it is sent in that name alone, and waits while another member is here. */
  readonly typedBy?: string | null | undefined;
}

/** Someone else saved the same field first. Nothing is overwritten until one of the two is chosen. */
export interface Conflict extends SaveJob {
  readonly theirs: unknown;
  readonly version: number;
}

export interface SaveState {
  readonly unsaved: number;
  /** Of those, typed by members who are not here now. */
  readonly held: readonly SaveJob[];
  /** The last try failed and another one follows. */
  readonly trying: boolean;
  /** Why, where the server has said more than that it does not answer: "The disk is full ...". */
  readonly because: string | null;
  readonly signedOut: boolean;
  /** ISO time of the server's last acknowledgement. */
  readonly lastSavedAt: string | null;
  readonly conflicts: readonly Conflict[];
  /** Fields the server will not take as they are, with its words. */
  readonly refused: readonly (SaveJob & { readonly message: string })[];
}

export interface SaveQueueDeps {
  readonly send: (job: SaveJob, version: number | undefined) => Promise<{ readonly version: number; readonly savedAt: string }>;
  readonly wait: (ms: number) => Promise<void>;
  /** Who is here now; absent = one member alone. */
  readonly whoIsHere?: () => string | null;
}

export interface SaveQueue {
  readonly state: () => SaveState;
  readonly subscribe: (listener: () => void) => () => void;
  /** Takes over the versions that came with a visit. Fields still unsaved keep their place in the queue. */
  readonly adopt: (visitId: string, versions: Readonly<Record<string, number>>, lastSavedAt: string | null) => void;
  readonly put: (job: SaveJob) => void;
  readonly resolve: (conflict: Conflict, keep: 'yours' | 'theirs') => void;
  /** Gives up a field that was refused: somebody has seen why. */
  readonly giveUp: (job: Pick<SaveJob, 'visitId' | 'path'>) => void;
  /** Goes on after a change of member. */
  readonly resume: () => void;
  /** Resolves once every field of the member who is here is acknowledged, set aside as a conflict, or refused. */
  readonly settled: () => Promise<void>;
}

const FIRST_WAIT_MS = 500;
const LONGEST_WAIT_MS = 10_000;

/** Sends fields in the order they were entered, one at a time; of several values for one field only the newest is sent. */
export function createSaveQueue({ send, wait, whoIsHere = () => null }: SaveQueueDeps): SaveQueue {
  const waiting = new Map<string, SaveJob>();
  const versions = new Map<string, number>();
  /** Values sent whose answer never came: each may have arrived all the same. */
  const unanswered = new Map<string, readonly unknown[]>();
  const listeners = new Set<() => void>();
  let inFlight: SaveJob | undefined;
  let running = false;
  let state: SaveState = {
    unsaved: 0,
    held: [],
    trying: false,
    because: null,
    signedOut: false,
    lastSavedAt: null,
    conflicts: [],
    refused: [],
  };

  const isHeld = ({ typedBy }: SaveJob) => typedBy != null && typedBy !== whoIsHere();
  const nextToSend = () => [...waiting].find(([, job]) => !isHeld(job));

  const change = (part: Partial<SaveState>) => {
    state = { ...state, ...part, unsaved: waiting.size + (inFlight ? 1 : 0), held: [...waiting.values()].filter(isHeld) };
    for (const listener of listeners) listener();
  };

  /** True when the job is dealt with, false when it should be tried again. */
  async function attempt(job: SaveJob): Promise<boolean> {
    try {
      const saved = await send(job, versions.get(keyOf(job)));
      versions.set(keyOf(job), saved.version);
      unanswered.delete(keyOf(job));
      inFlight = undefined;
      change({ trying: false, because: null, signedOut: false, lastSavedAt: saved.savedAt });
      return true;
    } catch (error) {
      return setAside(job, error);
    }
  }

  function setAside(job: SaveJob, error: unknown): boolean {
    if (!(error instanceof ApiError)) throw error;
    const conflict = error.status === 409 ? conflictOf(job, error.body) : undefined;
    const own = [job.value, ...(unanswered.get(keyOf(job)) ?? [])];
    if (conflict && own.some((value) => isSameJson(conflict.theirs, value))) {
      // Our own write arrived though its answer was lost: send the newest once more on top, for its acknowledgement.
      versions.set(keyOf(job), conflict.version);
      return false;
    }
    if (conflict) {
      unanswered.delete(keyOf(job));
      inFlight = undefined;
      change({ trying: false, conflicts: [...state.conflicts.filter((c) => keyOf(c) !== keyOf(job)), conflict] });
      return true;
    }
    if (isRefusal(error.status)) {
      inFlight = undefined;
      change({ trying: false, refused: [...state.refused, { ...job, message: error.message }] });
      return true;
    }
    unanswered.set(keyOf(job), own);
    change({ trying: true, because: error.code === 'STORE_FULL' ? error.message : null, signedOut: error.status === 401 });
    return false;
  }

  async function run(): Promise<void> {
    if (running) return;
    running = true;
    let waitMs = FIRST_WAIT_MS;
    for (let next = nextToSend(); next; next = nextToSend()) {
      const [key, job] = next;
      waiting.delete(key);
      inFlight = job;
      if (await attempt(job)) {
        waitMs = FIRST_WAIT_MS;
        continue;
      }
      await wait(waitMs);
      waitMs = Math.min(waitMs * 2, LONGEST_WAIT_MS);
      inFlight = undefined;
      putBack(key, job);
    }
    running = false;
    change({ trying: false });
  }

  /** A newer value entered meanwhile stays; either way the field goes to the head again. */
  function putBack(key: string, job: SaveJob): void {
    const rest = [...waiting].filter(([other]) => other !== key);
    const newest = waiting.get(key) ?? job;
    waiting.clear();
    for (const [k, j] of [[key, newest] as const, ...rest]) waiting.set(k, j);
  }

  function put(given: SaveJob): void {
    const job = { ...given, typedBy: given.typedBy ?? whoIsHere() };
    waiting.set(keyOf(job), job);
    change({ refused: state.refused.filter((r) => keyOf(r) !== keyOf(job)) });
    void run();
  }

  return {
    state: () => state,
    subscribe: (listener) => {
      listeners.add(listener);
      return () => listeners.delete(listener);
    },
    adopt: (visitId, fields, lastSavedAt) => {
      for (const [path, version] of Object.entries(fields)) versions.set(keyOf({ visitId, path }), version);
      change({ lastSavedAt: later(state.lastSavedAt, lastSavedAt) });
    },
    put,
    resolve: (conflict, keep) => {
      versions.set(keyOf(conflict), conflict.version);
      change({ conflicts: state.conflicts.filter((c) => c !== conflict) });
      if (keep === 'yours') put({ visitId: conflict.visitId, path: conflict.path, value: conflict.value });
    },
    giveUp: (job) => change({ refused: state.refused.filter((r) => keyOf(r) !== keyOf(job)) }),
    resume: () => {
      change({});
      void run();
    },
    settled: () =>
      new Promise((resolve) => {
        const check = () => {
          if (state.unsaved > state.held.length) return;
          listeners.delete(check);
          resolve();
        };
        listeners.add(check);
        check();
      }),
  };
}

const keyOf = (job: { readonly visitId: string; readonly path: string }) => `${job.visitId} ${job.path}`;

/** Refusals that another try may undo: signed out, too slow, hidden, too many. */
const PASSING = [401, 408, 423, 429];
const isRefusal = (status: number) => status >= 400 && status < 500 && !PASSING.includes(status);

function conflictOf(job: SaveJob, body: unknown): Conflict | undefined {
  const found = findConflict(body);
  return found && { ...job, theirs: found.theirs, version: found.version };
}

/** The two values stand beside the error or inside it. */
function findConflict(body: unknown): { theirs: unknown; version: number } | undefined {
  if (typeof body !== 'object' || body === null) return undefined;
  const part = body as { theirs?: unknown; version?: unknown; error?: unknown };
  if (typeof part.version === 'number' && 'theirs' in part) return { theirs: storedValue(part.theirs), version: part.version };
  return findConflict(part.error);
}

/** What is stored is a row around the value. No field of a visit has a version of its own, so the two cannot be mixed up. */
function storedValue(theirs: unknown): unknown {
  const isRow = typeof theirs === 'object' && theirs !== null && 'version' in theirs && 'value' in theirs;
  return isRow ? theirs.value : theirs;
}

function later(a: string | null, b: string | null): string | null {
  if (a === null || b === null) return a ?? b;
  return a > b ? a : b;
}

function isSameJson(a: unknown, b: unknown): boolean {
  return JSON.stringify(sorted(a)) === JSON.stringify(sorted(b));
}

function sorted(value: unknown): unknown {
  if (Array.isArray(value)) return value.map(sorted);
  if (typeof value !== 'object' || value === null) return value;
  return Object.fromEntries(
    Object.entries(value)
      .filter(([, part]) => part !== undefined)
      .sort(([a], [b]) => (a < b ? -1 : 1))
      .map(([key, part]) => [key, sorted(part)]),
  );
}
