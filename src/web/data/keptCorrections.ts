import type { Level } from '../../core/risk/types.ts';

/** What was changed in a closed visit and is not saved yet. */
export interface KeptCorrection {
  readonly reason: string;
  readonly changes: readonly { readonly path: string; readonly value: unknown }[];
  /** A level confirmed anew. */
  readonly level?: Level | undefined;
}

/** Whose correction of which visit: another member neither sees it nor saves it. */
export interface CorrectionPlace {
  readonly visitId: string;
  readonly memberId: string;
}

export interface KeptCorrections {
  readonly find: (place: CorrectionPlace) => KeptCorrection | undefined;
  readonly keep: (place: CorrectionPlace, correction: KeptCorrection) => void;
  readonly drop: (place: CorrectionPlace) => void;
  /** The same list until something is kept or dropped. */
  readonly places: () => readonly CorrectionPlace[];
  readonly subscribe: (listener: () => void) => () => void;
}

/** Like the save queue one for the whole page: leaving a screen loses nothing, and leaving the page asks first. */
export function createKeptCorrections(): KeptCorrections {
  const kept = new Map<string, { readonly place: CorrectionPlace; readonly correction: KeptCorrection }>();
  const listeners = new Set<() => void>();
  let places: readonly CorrectionPlace[] = [];
  const changed = () => {
    places = [...kept.values()].map(({ place }) => place);
    for (const listener of listeners) listener();
  };
  return {
    find: (place) => kept.get(keyOf(place))?.correction,
    keep: (place, correction) => {
      const isNew = !kept.has(keyOf(place));
      kept.set(keyOf(place), { place, correction });
      if (isNew) changed();
    },
    drop: (place) => {
      if (kept.delete(keyOf(place))) changed();
    },
    places: () => places,
    subscribe: (listener) => {
      listeners.add(listener);
      return () => listeners.delete(listener);
    },
  };
}

const keyOf = ({ visitId, memberId }: CorrectionPlace) => `${visitId} ${memberId}`;
