import type { ReactNode } from 'react';
import { Key } from '../../parts/Key.tsx';
import { AnswerBar } from './AnswerBar.tsx';
import type { Line, Reply } from './line.ts';
import type { Scope } from './scopes.ts';

interface LineRowProps {
  readonly line: Line;
  readonly scope: Scope;
  readonly isOpen: boolean;
  readonly isFixed: boolean;
  readonly onOpen: (scope: Scope, line: string | null) => void;
  readonly onReply: (scope: Scope, line: string, reply: Reply) => void;
  readonly onDone: (scope: Scope, line: string) => void;
  /** What else belongs to the open line. */
  readonly children?: ReactNode;
}

/** One line: its letter, what is asked, the answer, a note. Opened, it shows the prompt and the answers with their keys. */
export function LineRow({ line, scope, isOpen, isFixed, onOpen, onReply, onDone, children }: LineRowProps) {
  return (
    <li className={isOpen ? 'line open' : 'line'} data-line={line.id}>
      <button
        type="button"
        className="line-row"
        data-row
        aria-expanded={isFixed ? undefined : isOpen}
        aria-keyshortcuts={line.letter || undefined}
        disabled={isFixed}
        onClick={(event) => {
          if (isOpen && line.entry.kind === 'list') findListEntry(event.currentTarget)?.focus();
          else onOpen(scope, isOpen ? null : line.id);
        }}
      >
        <Key>{line.letter}</Key>
        <span className="line-label">{line.label}</span>
        <span className={`line-text ${line.tone}`}>{line.text}</span>
        <span className="line-note">{line.note}</span>
      </button>
      {isOpen && !isFixed && (
        <AnswerBar line={line} onReply={(reply) => onReply(scope, line.id, reply)} onDone={() => onDone(scope, line.id)} />
      )}
      {isOpen && !isFixed && children}
    </li>
  );
}

/** Enter on an open list goes on to its search field. */
const findListEntry = (row: HTMLElement) => row.parentElement?.querySelector<HTMLElement>('[data-list-entry]') ?? null;
