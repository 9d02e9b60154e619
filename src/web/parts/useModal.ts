import { type RefObject, useLayoutEffect, useRef } from 'react';

/** A dialog over everything else, from the moment it is there. */
export function useModal(): RefObject<HTMLDialogElement | null> {
  const dialog = useRef<HTMLDialogElement>(null);
  // Before the effects of what stands in it, so that its own choice of the focus is the last one.
  useLayoutEffect(() => dialog.current?.showModal(), []);
  return dialog;
}
