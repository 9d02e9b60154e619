import { type ReactNode, useId, useState } from 'react';
import type { SourceRef, SourceStatus } from '../../core/visit/answer.ts';
import { citationOf } from '../content.ts';

/** How far a source is trusted, in plain words. */
export const STATUS_WORDS: Readonly<Record<SourceStatus, string>> = {
  read: 'read in the source',
  memory: 'from memory, not checked yet',
  mixed: 'partly read, partly from memory',
  'common-practice': 'common practice',
  derived: 'worked out from the sources named',
  proposal: 'our own proposal',
};

/** A word that opens reasons and sources in place. */
export function Why({ label = 'why', about, children }: { readonly label?: string; readonly about: string; readonly children: ReactNode }) {
  const [isOpen, setOpen] = useState(false);
  const id = useId();
  return (
    <>
      <button
        type="button"
        className="why"
        aria-expanded={isOpen}
        aria-controls={id}
        aria-label={`${label}: ${about}`}
        onClick={() => setOpen(!isOpen)}
      >
        {label}
      </button>
      <div id={id} className="why-text" hidden={!isOpen}>
        {isOpen && children}
      </div>
    </>
  );
}

/** Each source once for each status, with what is noted of it. */
export function SourceList({ sources }: { readonly sources: readonly SourceRef[] }) {
  const byKey = new Map<string, SourceRef>();
  for (const source of sources) {
    const id = `${source.key} ${source.status}`;
    const before = byKey.get(id);
    const notes = [...new Set([before?.note, source.note].filter((note) => note !== undefined))];
    byKey.set(id, notes.length > 0 ? { ...source, note: notes.join('; ') } : source);
  }
  if (byKey.size === 0) return null;
  return (
    <ul className="sources">
      {[...byKey].map(([id, source]) => (
        <li key={id}>
          <SourceLine source={source} />
        </li>
      ))}
    </ul>
  );
}

export function SourceLine({ source }: { readonly source: SourceRef }) {
  return (
    <>
      {citationOf(source.key)} <span className={source.status === 'memory' ? 'unknown' : 'status'}>({STATUS_WORDS[source.status]})</span>
      {source.note && `: ${source.note}`}
    </>
  );
}
