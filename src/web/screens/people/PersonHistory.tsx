import type { PersonChange } from '../../../api/bundles.ts';
import { formatDate, formatShortClock } from '../../format.ts';
import { listDifferences } from '../../parts/differences.ts';
import { sayPerson } from './sayPerson.ts';

/** Who changed what and when, the newest first. What the action wrote is in the log for good. */
export function PersonHistory({ history }: { readonly history: readonly PersonChange[] }) {
  const entries = history.map((change, i) => ({ change, before: history[i - 1] })).reverse();
  return (
    <section aria-label="History">
      <h2>History</h2>
      <ul className="plain-list person-history">
        {entries.map(({ change, before }) => (
          <li key={`${change.at} ${change.action}`}>
            <p>
              {formatDate(change.at)} at {formatShortClock(change.at)},{' '}
              {change.by ? <bdi>{change.by}</bdi> : 'a member no longer on record'}: {sayAction(change)}
              {change.reason && (
                <>
                  , because <bdi>{change.reason}</bdi>
                </>
              )}
            </p>
            <ChangedLines change={change} before={before} />
          </li>
        ))}
      </ul>
    </section>
  );
}

const ACTIONS: Readonly<Record<string, string>> = {
  addPatient: 'added',
  changePatient: 'changed',
};

/** A merge marks the one chart and finds the other: on this page, which is of the kept one, each is about another chart. */
function sayAction({ action, state }: PersonChange): string {
  if (action === 'mergePatients') return state === 'merged' ? 'merged into another chart' : 'another chart was merged into this one';
  if (action === 'unmergePatient') return 'a merge was undone';
  return ACTIONS[action] ?? action;
}

function ChangedLines({ change, before }: { readonly change: PersonChange; readonly before: PersonChange | undefined }) {
  if (!before?.details || !change.details) return null;
  const lines = listDifferences(sayPerson(before.details), sayPerson(change.details));
  return (
    <ul className="plain-list small">
      {lines.map((line) => (
        <li key={line.name}>
          {line.name}: was <span dir="ltr">{line.theirs}</span>, is now <span dir="ltr">{line.mine}</span>
        </li>
      ))}
    </ul>
  );
}
