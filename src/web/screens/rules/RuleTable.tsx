import type { ReactNode } from 'react';
import type { SourceRef } from '../../../core/visit/answer.ts';
import { SourceLine } from '../../parts/Sources.tsx';

export interface RuleRow {
  readonly id: string;
  readonly cells: readonly ReactNode[];
  readonly source: SourceRef;
}

/** Rows of rules; the last column is always the source with its status. The first cell heads its row. */
export function RuleTable({
  label,
  heads,
  rows,
}: {
  readonly label: string;
  readonly heads: readonly string[];
  readonly rows: readonly RuleRow[];
}) {
  return (
    <table className="rules" aria-label={label}>
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
              <SourceLine source={source} />
            </td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}
