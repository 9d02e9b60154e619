import { createContext, useContext } from 'react';
import type { SessionView } from '../../api/apiTypes.ts';
import { ApiError, callApi } from './api.ts';
import { createIdleTime } from './idleTime.ts';

/** Who is signed in, and the two things that this member can do with the screen. */
export interface Hiding {
  readonly session: SessionView;
  readonly askWho: () => void;
  readonly hide: () => void;
}

export const HidingContext = createContext<Hiding | null>(null);

export function useHiding(): Hiding {
  const hiding = useContext(HidingContext);
  if (!hiding) throw new Error('nobody is signed in above this part');
  return hiding;
}

/** The member who was here last, also while the screen is hidden. */
export const useSignedIn = (): SessionView => useHiding().session;

export type Given = { readonly code: string } | { readonly password: string };

/** Another member, or the same one after a hidden screen, by code or password. */
export const sayWho = (memberId: string, given: Given) => callApi<{ ok: true }>('POST', '/api/session/who', { memberId, ...given });

const hideOnServer = () => callApi<{ ok: true }>('POST', '/api/session/hide', {});

const AGAIN_MS = 2_000;

/** Until the server has heard it. True when it has; false when it says that there is nothing to hide, or that nobody is signed in any more. */
export async function hideUntilHeard(isStillHidden: () => boolean): Promise<boolean> {
  while (isStillHidden()) {
    try {
      await hideOnServer();
      return true;
    } catch (error) {
      if (!(error instanceof ApiError)) throw error;
      if (error.status >= 400 && error.status < 500) return error.status === 423;
      await new Promise((resolve) => setTimeout(resolve, AGAIN_MS));
    }
  }
  return false;
}

// Only times are kept in the browser, never who or what. Storage may be closed; then they last as long as the page.
const HIDDEN = 'ebbline-hidden';

function read(storage: () => Storage, place: string): string | null {
  try {
    return storage().getItem(place);
  } catch {
    return null;
  }
}

function write(storage: () => Storage, place: string, text: string | null): void {
  try {
    if (text === null) storage().removeItem(place);
    else storage().setItem(place, text);
  } catch {
    // As above.
  }
}

/** A reload before the server has heard of it stays hidden too. */
export const isMarkedHidden = (): boolean => read(() => sessionStorage, HIDDEN) === '1';
export const markHidden = (isHidden: boolean): void => write(() => sessionStorage, HIDDEN, isHidden ? '1' : null);

const ACTIVE_AT = 'ebbline-active-at';

const idleTime = createIdleTime({
  wallMs: () => Date.now(),
  steadyMs: () => performance.now(),
  readShared: () => read(() => localStorage, ACTIVE_AT),
  writeShared: (wallMs) => write(() => localStorage, ACTIVE_AT, String(wallMs)),
});

export const markActive = (): void => idleTime.markActive();

const MINUTE_MS = 60_000;

/** The member's own coming counts as a key. To be told the moment the server has answered, since that is when its duration ends. */
export const noteArrival = ({ since, hereForMs }: SessionView): void => idleTime.noteArrival(since, hereForMs);

/** Whether the time without a key is over. */
export function isOverdue({ hideAfterMinutes }: SessionView): boolean {
  return idleTime.idleMs() >= hideAfterMinutes * MINUTE_MS;
}
