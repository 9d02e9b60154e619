import { type ReactNode, useEffect } from 'react';
import { backToWork, isShown, isShownKey, SHOWN_KEYS, showPatient, useShown } from '../shown.ts';
import { Key } from './Key.tsx';

/** Stands on every page while it is turned to the patient, with the way back. */
export function ShownStrip() {
  const { isOn } = useShown();
  useEffect(() => {
    if (!isOn) return;
    const onKeyDown = (event: KeyboardEvent) => {
      if (!isShownKey(event)) return;
      event.preventDefault();
      backToWork();
    };
    addEventListener('keydown', onKeyDown);
    return () => removeEventListener('keydown', onKeyDown);
  }, [isOn]);
  if (!isOn) return null;
  return (
    <div className="strip shown-strip" role="status">
      <strong>Shown to the patient.</strong> Private answers are left out. <Key>Ctrl Enter</Key>{' '}
      <button type="button" className="link" aria-keyshortcuts={SHOWN_KEYS} onClick={backToWork}>
        Back to work
      </button>
    </div>
  );
}

export function ShowPatientButton({ patientId }: { readonly patientId: string }) {
  const { isOn } = useShown();
  if (isOn) return null;
  return (
    <button type="button" className="link" aria-keyshortcuts={SHOWN_KEYS} onClick={() => showPatient(patientId)}>
      Show patient
    </button>
  );
}

/** A page of one person. While another person's page is shown, this one is not. */
export function PageOf({ patientId, children }: { readonly patientId: string; readonly children: ReactNode }) {
  const shown = useShown();
  const isAdopted = shown.isOn && shown.patientId === null;
  useEffect(() => {
    if (isAdopted) showPatient(patientId);
  }, [isAdopted, patientId]);
  useEffect(() => {
    const onKeyDown = (event: KeyboardEvent) => {
      if (isShown() || !isShownKey(event)) return;
      event.preventDefault();
      showPatient(patientId);
    };
    addEventListener('keydown', onKeyDown);
    return () => removeEventListener('keydown', onKeyDown);
  }, [patientId]);
  return shown.isOn && !isAdopted && shown.patientId !== patientId ? <NotShown /> : children;
}

export function NotShown() {
  return (
    <>
      <h1>Not shown to the patient</h1>
      <p className="opening">This page stays with the team. The key above leads back to work.</p>
    </>
  );
}
