interface IdleClocks {
  /** The clock on the wall: goes on while a laptop sleeps, and can be set. */
  readonly wallMs: () => number;
  /** A stopwatch that nobody can set; it may stand still while a laptop sleeps. */
  readonly steadyMs: () => number;
  /** Wall time of the last key in any tab of this browser, or null. */
  readonly readShared: () => string | null;
  readonly writeShared: (wallMs: number) => void;
}

export interface IdleTime {
  readonly markActive: () => void;
  /** Somebody came this long ago. Of one arrival only the first word counts. */
  readonly noteArrival: (arrival: string, agoMs: number) => void;
  /** Milliseconds without a key; Infinity when nothing is known of one. */
  readonly idleMs: () => number;
}

const SHARE_EVERY_MS = 1_000;

/**
 * How long nobody has pressed a key. Measured on the wall and by a stopwatch, and the longer of the two counts: a lid that was closed
 * stops the one, a clock that was set back the other. Only readings of one clock are ever subtracted from each other.
 */
export function createIdleTime({ wallMs, steadyMs, readShared, writeShared }: IdleClocks): IdleTime {
  let active: { readonly wall: number; readonly steady: number } | undefined;
  let sharedSeen: string | null = null;
  let arrivalSeen: string | undefined;

  const byOwnClocks = () => (active ? Math.max(wallMs() - active.wall, steadyMs() - active.steady) : Number.POSITIVE_INFINITY);
  const setActive = (agoMs: number) => {
    active = { wall: wallMs() - agoMs, steady: steadyMs() - agoMs };
  };
  const noteAgo = (agoMs: number) => {
    if (agoMs < byOwnClocks()) setActive(agoMs);
  };
  /** A time that lies ahead was written before the clock was set back: that key cannot be older than this look. */
  const readOtherTabs = () => {
    const shared = readShared();
    if (shared === sharedSeen) return;
    sharedSeen = shared;
    const at = Number(shared);
    if (shared !== null && Number.isFinite(at)) noteAgo(Math.max(0, wallMs() - at));
  };

  return {
    markActive: () => {
      const now = wallMs();
      setActive(0);
      if (sharedSeen !== null && Math.abs(now - Number(sharedSeen)) < SHARE_EVERY_MS) return;
      writeShared(now);
      sharedSeen = readShared();
    },
    noteArrival: (arrival, agoMs) => {
      if (arrival === arrivalSeen) return;
      arrivalSeen = arrival;
      noteAgo(agoMs);
    },
    idleMs: () => {
      readOtherTabs();
      return byOwnClocks();
    },
  };
}
