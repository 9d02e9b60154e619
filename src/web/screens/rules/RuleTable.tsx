import type { ReactNode } from 'react';
import type { SourceRef } from '../../../core/visit/answer.ts';
import { citationOf } from '../../content.ts';
import { STATUS_WORDS } from '../../parts/Sources.tsx';

export interface RuleRow {
  readonly id: string;
  readonly cells: readonly ReactNode[];
  readonly source: SourceRef;
}

interface RuleTableProps {
  readonly label: string;
  readonly heads: readonly string[];
  readonly rows: readonly RuleRow[];
  /** Sentences in most columns: then none may squeeze another. */
  readonly isProse?: boolean;
}

/** Rows of rules; the last column is the number of the source with its status, and the sources stand below. The first cell heads its row. */
export function RuleTable({ label, heads, rows, isProse = false }: RuleTableProps) {
  const keys = [...new Set(rows.map((r) => r.source.key))];
  return (
    <>
      <table className={isProse ? 'rules prose' : 'rules'} aria-label={label}>
        <thead>
          <tr>
            {[...heads, 'Source'].map((head) => (
              <th key={head} scope="col">
                {head}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {rows.map(({ id, cells: [first, ...rest], source }) => (
            <tr key={id}>
              <th scope="row">{first}</th>
              {rest.map((cell, i) => (
                <td key={heads[i + 1]} data-label={heads[i + 1]}>
                  {cell}
                </td>
              ))}
              <td data-label="Source" className="source-cell">
                <NumberedSource number={keys.indexOf(source.key) + 1} source={source} />
              </td>
            </tr>
          ))}
        </tbody>
      </table>
      <ol className="footnotes" aria-label={`Sources: ${label}`}>
        {keys.map((key) => (
          <li key={key}>{citationOf(key)}</li>
        ))}
      </ol>
    </>
  );
}

function NumberedSource({ number, source: { status, note } }: { readonly number: number; readonly source: SourceRef }) {
  return (
    <>
      [{number}] <span className={status === 'memory' ? 'unknown' : undefined}>{STATUS_WORDS[status]}</span>
      {note && `: ${note}`}
    </>
  );
}
