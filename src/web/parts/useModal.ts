import { type RefObject, useEffect, useRef } from 'react';

/** A dialog over everything else, from the moment it is there. */
export function useModal(): RefObject<HTMLDialogElement | null> {
  const dialog = useRef<HTMLDialogElement>(null);
  useEffect(() => dialog.current?.showModal(), []);
  return dialog;
}
