import { type ReactNode, useEffect, useRef, useState } from 'react';
import { Key } from './Key.tsx';

interface OpenFormProps {
  readonly label: string;
  /** Words for a screen reader where several buttons look alike. */
  readonly about?: string;
  readonly isAction?: boolean;
  /** The key that presses the button, where the page has one. */
  readonly shortcut?: string;
  /** What stands there while the form is folded away. */
  readonly children?: ReactNode;
  readonly form: (close: (said?: string) => void) => ReactNode;
}

/** A form in the place where its button stood. The focus goes into it, and back to the button when it closes. */
export function OpenForm({ label, about, isAction = false, shortcut, children, form }: OpenFormProps) {
  const [isOpen, setOpen] = useState(false);
  const [said, setSaid] = useState('');
  const button = useRef<HTMLButtonElement>(null);
  const place = useRef<HTMLDivElement>(null);
  const wasOpen = useRef(false);
  useEffect(() => {
    if (isOpen) place.current?.querySelector<HTMLElement>('input:not([type="radio"]), input:checked, select')?.focus();
    else if (wasOpen.current) button.current?.focus();
    wasOpen.current = isOpen;
  }, [isOpen]);
  const close = (words = '') => {
    setSaid(words);
    setOpen(false);
  };
  if (isOpen) {
    return (
      <div ref={place} className="open-form">
        {form(close)}
      </div>
    );
  }
  return (
    <>
      {children}
      <button
        ref={button}
        type="button"
        className={isAction ? 'action' : 'link'}
        aria-keyshortcuts={shortcut}
        onClick={() => {
          setSaid('');
          setOpen(true);
        }}
      >
        {shortcut && (
          <>
            <Key>{shortcut}</Key>{' '}
          </>
        )}
        {label}
        {about && <span className="sr-only"> {about}</span>}
      </button>{' '}
      <span role="status" className="hint off-paper">
        {said}
      </span>
    </>
  );
}
