import type { StoredVisit } from '../../api/bundles.ts';
import { formatDate } from '../format.ts';

const WIDTH = 900;
const LEFT = 170;
const ROW = 26;
const MARK = 11;
const STEP = 15;
const MOST = 45;

/** One row for each visit and one mark for each finding: filled where it was new, hollow where it was there before. */
export function FindingsChart({ visits }: { readonly visits: readonly StoredVisit[] }) {
  const height = visits.length * ROW + 6;
  return (
    <svg
      className="readings-chart"
      viewBox={`0 0 ${WIDTH} ${height}`}
      role="img"
      aria-label={`Findings of ${visits.length} visits, new ones filled, earlier ones hollow. The table gives each.`}
    >
      {visits.map((visit, row) => {
        const ordered = [...visit.findings].sort((a, b) => Number(b.isNew) - Number(a.isNew));
        return (
          <g key={visit.id} transform={`translate(0,${row * ROW + 4})`}>
            <text className="tick-text" x={LEFT - 12} y={MARK} textAnchor="end">
              {formatDate(visit.onDate)}
            </text>
            {ordered.slice(0, MOST).map((finding, i) => (
              <rect
                // biome-ignore lint/suspicious/noArrayIndexKey: marks are counted, not told apart
                key={i}
                className={finding.isNew ? 'found' : 'found earlier'}
                x={LEFT + i * STEP}
                y={1}
                width={MARK}
                height={MARK}
              />
            ))}
            {ordered.length === 0 && (
              <text className="tick-text" x={LEFT} y={MARK}>
                none recorded
              </text>
            )}
            {ordered.length > MOST && (
              <text className="tick-text" x={LEFT + MOST * STEP} y={MARK}>
                + {ordered.length - MOST}
              </text>
            )}
          </g>
        );
      })}
    </svg>
  );
}
