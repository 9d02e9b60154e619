import { useEffect, useRef } from 'react';
import { OverVisit } from './OverVisit.tsx';

/** The note to copy by hand, where this browser would not do it: the text is selected already. */
export function NoteDialog({ text, onClose }: { readonly text: string; readonly onClose: () => void }) {
  const field = useRef<HTMLTextAreaElement>(null);
  useEffect(() => {
    field.current?.focus();
    field.current?.select();
  }, []);
  return (
    <OverVisit title="Chart note, not copied" onClose={onClose}>
      <p>This browser did not copy it. The text below is selected: copy it with Ctrl+C.</p>
      <textarea ref={field} className="note-text" aria-label="Chart note" readOnly rows={14} value={text} />
    </OverVisit>
  );
}
