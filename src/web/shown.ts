import { useSyncExternalStore } from 'react';

/** Whether the page is turned to the patient, and whose page it is; null = not known yet after the page was loaded anew. */
interface Shown {
  readonly isOn: boolean;
  readonly patientId: string | null;
}

/** Holds across screens, and over a reload of this tab: of that only the yes or no is kept, never a person. */
const PLACE = 'ebbline-shown';
const listeners = new Set<() => void>();
let current: Shown = { isOn: readFlag(), patientId: null };

function readFlag(): boolean {
  try {
    return sessionStorage.getItem(PLACE) === 'yes';
  } catch {
    // Storage may be closed: then the mode ends with the page.
    return false;
  }
}

function change(next: Shown): void {
  current = next;
  try {
    if (next.isOn) sessionStorage.setItem(PLACE, 'yes');
    else sessionStorage.removeItem(PLACE);
  } catch {
    // As above.
  }
  for (const listener of listeners) listener();
}

/** Turns the page to the patient: private matters, other people and the practice's own pages go out of sight. */
export const showPatient = (patientId: string): void => change({ isOn: true, patientId });

export const backToWork = (): void => change({ isOn: false, patientId: null });

export const isShown = (): boolean => current.isOn;

export function useShown(): Shown {
  return useSyncExternalStore(
    (listener) => {
      listeners.add(listener);
      return () => listeners.delete(listener);
    },
    () => current,
  );
}

/** Two keys at once, so that neither a patient nor an elbow hits them. */
export const SHOWN_KEYS = 'Control+Enter';
export const isShownKey = (event: KeyboardEvent): boolean => event.ctrlKey && event.key === 'Enter' && !event.defaultPrevented;
