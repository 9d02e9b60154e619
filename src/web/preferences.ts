import { useSyncExternalStore } from 'react';

/** How this computer likes the page: the only thing kept in the browser. No patient data ever is. */
export interface Preferences {
  readonly theme: 'system' | 'light' | 'dark';
  /** Single letters and digits act as shortcuts in a visit. */
  readonly singleKeys: boolean;
}

const PLACE = 'ebbline-preferences';
const DEFAULTS: Preferences = { theme: 'system', singleKeys: true };
const listeners = new Set<() => void>();
let current = read();

function read(): Preferences {
  try {
    return { ...DEFAULTS, ...(JSON.parse(localStorage.getItem(PLACE) ?? '{}') as Partial<Preferences>) };
  } catch {
    // Storage may be closed, or hold something else: the page works without.
    return DEFAULTS;
  }
}

export function applyTheme(): void {
  if (current.theme === 'system') delete document.documentElement.dataset.theme;
  else document.documentElement.dataset.theme = current.theme;
}

export function setPreference(part: Partial<Preferences>): void {
  current = { ...current, ...part };
  try {
    localStorage.setItem(PLACE, JSON.stringify(current));
  } catch {
    // The choice then lasts as long as the page.
  }
  applyTheme();
  for (const listener of listeners) listener();
}

export function usePreferences(): Preferences {
  return useSyncExternalStore(
    (listener) => {
      listeners.add(listener);
      return () => listeners.delete(listener);
    },
    () => current,
  );
}

export const useSingleKeys = (): boolean => usePreferences().singleKeys;
