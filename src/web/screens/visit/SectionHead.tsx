import type { ReactNode } from 'react';
import { Key } from '../../parts/Key.tsx';

interface SectionHeadProps {
  readonly title: string;
  readonly number?: number;
  readonly note?: ReactNode;
}

/** Head of a section over its rule, with the number that jumps here. It takes the focus when the section is entered. */
export function SectionHead({ title, number, note }: SectionHeadProps) {
  return (
    <div className="section-head">
      <h2 tabIndex={-1} data-head aria-keyshortcuts={number === undefined ? undefined : String(number)}>
        {title}
      </h2>
      {note && <p className="side-note">{note}</p>}
      {number !== undefined && <Key>{number}</Key>}
    </div>
  );
}
