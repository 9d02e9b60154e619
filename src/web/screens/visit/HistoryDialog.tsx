import { useQuery } from '@tanstack/react-query';
import type { FieldHistory, HistoryEntry } from '../../../api/bundles.ts';
import { callApi } from '../../data/api.ts';
import { formatDate, formatShortClock, uncapitalise } from '../../format.ts';
import { LoadState } from '../../parts/LoadState.tsx';
import { sayFieldValue } from './fieldWords.ts';
import { OverVisit } from './OverVisit.tsx';
import type { HistoryOf } from './useVisitPanels.ts';
import { useVisit } from './visitContext.ts';

/** Who said what of one field, and when: in this visit, at earlier ones, and what was corrected. */
export function HistoryDialog({ of, onClose }: { readonly of: HistoryOf; readonly onClose: () => void }) {
  const { bundle } = useVisit();
  const history = useQuery({
    queryKey: ['history', bundle.visitId, of.path],
    queryFn: () => callApi<FieldHistory>('GET', `/api/visits/${bundle.visitId}/history?path=${of.path}`),
    gcTime: 0,
  });
  return (
    <OverVisit title={`History of ${uncapitalise(of.name)}`} onClose={onClose}>
      {history.data ? <Entries path={of.path} entries={history.data.entries} /> : <LoadState query={history} what="the history" />}
    </OverVisit>
  );
}

function Entries({ path, entries }: { readonly path: string; readonly entries: readonly HistoryEntry[] }) {
  const { input } = useVisit();
  if (entries.length === 0) return <p>Nothing was noted here before.</p>;
  const context = { practice: input.practice, visit: input.visit };
  return (
    <ol className="plain-list history">
      {entries.map((entry) => (
        <li key={`${entry.at} ${entry.kind} ${JSON.stringify(entry.value)}`}>
          <span className="side-note">{sayWhen(entry)}</span>
          <span>
            {entry.value === null ? 'taken out again' : path === 'level' ? String(entry.value) : sayFieldValue(path, entry.value, context)}
          </span>
        </li>
      ))}
    </ol>
  );
}

/** "25 November 2026, 10:36, Ines Marrow". */
function sayWhen({ at, by, kind, reason }: HistoryEntry): string {
  const when = kind === 'visit' ? `visit of ${formatDate(at)}` : `${formatDate(at)}, ${formatShortClock(at)}`;
  const what = kind === 'corrected' ? 'corrected' : '';
  return [when, what, by ?? '', reason ? `because ${reason}` : ''].filter(Boolean).join(', ');
}
