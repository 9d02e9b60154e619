import type { ChecksView } from '../../../api/swabChecks.ts';
import type { SwabLot } from '../../../core/reading/types.ts';
import { formatDate, formatNumber } from '../../format.ts';
import { Link } from '../../parts/Link.tsx';
import { isExpired } from '../practice/Lots.tsx';
import { SectionHead } from '../visit/SectionHead.tsx';
import { presetLot } from '../visit/swabLines.ts';
import type { MeterToday } from './sayChecks.ts';

/** Swab lots, and whether each was compared with the one before it. */
export function LotsChecked({ view, meters }: { readonly view: ChecksView; readonly meters: readonly MeterToday[] }) {
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
                <td data-label="Compared">{sayComparison(view, lot)}</td>
                <td data-label="Target">{sayTarget(meters, lot)}</td>
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
  if (!study?.report)
    return studies.some(({ kind, lotIds }) => kind === 'new-lot' && lotIds[0] === lot.id) ? 'the lot before' : 'not compared yet';
  const old = lots.find(({ id }) => id === study.lotIds[0])?.name ?? 'the lot before';
  return `with ${old}, ${formatDate(study.report.onDate)}. ${study.report.sentences[0]}`;
}

function sayTarget(meters: readonly MeterToday[], { id }: SwabLot): string {
  const said = meters.flatMap(({ meter, plan, judged }) => {
    const found = judged.find(({ lotId }) => lotId === id);
    const target = found?.target ?? plan?.targets.find(({ lotId }) => lotId === id);
    const name = meters.length > 1 ? `${meter.name}: ` : '';
    if (target)
      return [
        `${name}${formatNumber(Math.round(Math.exp(target.meanLn)))} RLU, from ${target.from === 'comparison' ? 'the comparison' : `its first ${target.count} controls`}`,
      ];
    return found ? [`${name}${found.waitsFor}`] : [];
  });
  return said.join('; ') || 'none yet';
}
