import { type ReactNode, useEffect, useId, useRef } from 'react';

interface OverVisitProps {
  readonly title: string;
  readonly onClose: () => void;
  readonly children: ReactNode;
}

/** Something to read over the visit; Escape and the button lead back to where the focus was. */
export function OverVisit({ title, onClose, children }: OverVisitProps) {
  const dialog = useRef<HTMLDialogElement>(null);
  const id = useId();
  useEffect(() => {
    const { activeElement } = document;
    dialog.current?.showModal();
    return () => (activeElement instanceof HTMLElement ? activeElement.focus() : undefined);
  }, []);
  return (
    <dialog ref={dialog} className="key-help over-visit" aria-labelledby={id} onClose={onClose}>
      <h2 id={id}>{title}</h2>
      {children}
      <form method="dialog">
        <button type="submit" className="action primary">
          Back to the visit
        </button>
      </form>
    </dialog>
  );
}
