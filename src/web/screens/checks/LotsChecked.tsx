import { useQueryClient } from '@tanstack/react-query';
import type { ChecksView } from '../../../api/swabChecks.ts';
import { lotStanding } from '../../../core/checks/lotStanding.ts';
import type { SwabLot } from '../../../core/reading/types.ts';
import { formatDate } from '../../format.ts';
import { Link } from '../../parts/Link.tsx';
import { isExpired } from '../practice/Lots.tsx';
import { SectionHead } from '../visit/SectionHead.tsx';
import { presetLot } from '../visit/swabLines.ts';
import { GoOnForm } from './GoOnForm.tsx';
import { LotTarget } from './LotTarget.tsx';
import type { MeterToday } from './sayChecks.ts';

interface LotsCheckedProps {
  readonly view: ChecksView;
  readonly meters: readonly MeterToday[];
  /** Who may set a target by hand. */
  readonly mayChange: boolean;
}

/** Swab lots, and whether each was compared with the one before it. */
export function LotsChecked({ view, meters, mayChange }: LotsCheckedProps) {
  const client = useQueryClient();
  const readAgain = () => client.invalidateQueries({ queryKey: ['checks'] });
  const inUse = presetLot(view.lots, view.today);
  const newestFirst = [...view.lots].sort((a, b) => b.expiresOn.localeCompare(a.expiresOn));
  return (
    <section aria-label="Lots">
      <SectionHead title="Lots" number={4} />
      <p>
        A new lot is compared with the one in use before people are swabbed with it: the same solution, swabbed with both. Lots are added
        under <Link to="/practice#lots">Practice</Link>.
      </p>
      {newestFirst.length > 0 && (
        <table className="stacks">
          <thead>
            <tr>
              <th scope="col">Lot</th>
              <th scope="col">Last day</th>
              <th scope="col">State</th>
              <th scope="col">Compared</th>
              <th scope="col">Target of its controls</th>
            </tr>
          </thead>
          <tbody>
            {newestFirst.map((lot) => (
              <tr key={lot.id}>
                <th scope="row">{lot.name}</th>
                <td data-label="Last day">{formatDate(lot.expiresOn)}</td>
                <td data-label="State">{sayState(lot, view.today, inUse)}</td>
                <td data-label="Compared">
                  {sayComparison(view, lot)}
                  {lotStanding(lot, view.lots) === 'not-compared' && !isExpired(lot, view.today) && (
                    <GoOnForm lot={lot} onKept={readAgain} />
                  )}
                </td>
                <td data-label="Target">
                  <LotTarget lot={lot} meters={meters} plans={view.plans} mayChange={mayChange} />
                </td>
              </tr>
            ))}
          </tbody>
        </table>
      )}
    </section>
  );
}

function sayState(lot: SwabLot, today: string, inUse: string | undefined): string {
  if (isExpired(lot, today)) return 'past its date';
  return lot.id === inUse ? 'in use' : 'not begun';
}

/** The second lot of a comparison is the new one. */
function sayComparison({ studies, lots }: ChecksView, lot: SwabLot): string {
  const study = studies.find(({ kind, state, lotIds }) => kind === 'new-lot' && state === 'reported' && lotIds[1] === lot.id);
  if (!study?.report) return sayNotCompared(lot, lots);
  const old = lots.find(({ id }) => id === study.lotIds[0])?.name ?? 'the lot before';
  return `with ${old}, ${formatDate(study.report.onDate)}. ${study.report.sentences[0]}`;
}

function sayNotCompared(lot: SwabLot, lots: readonly SwabLot[]): string {
  const { uncompared } = lot;
  switch (lotStanding(lot, lots)) {
    case 'went-on':
      return `not compared; ${uncompared?.by}, ${uncompared ? formatDate(uncompared.at) : ''}: ${uncompared?.reason}. Each reading with this lot says so.`;
    case 'not-compared':
      return 'not compared yet';
    default:
      return 'the lot before';
  }
}
