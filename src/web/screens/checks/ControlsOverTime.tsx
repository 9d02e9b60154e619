import type { SwabLot } from '../../../core/reading/types.ts';
import { ControlChart, ControlTable } from '../../charts/ControlChart.tsx';
import { formatDate, joinWords, plural } from '../../format.ts';
import { LastOnPaper } from '../../parts/OnPaper.tsx';
import { SectionHead } from '../visit/SectionHead.tsx';
import type { MeterToday } from './sayChecks.ts';

/** The controls of one meter: a sentence, the picture, the table, and the same as a file. */
export function ControlsOverTime({ today, lots }: { readonly today: MeterToday; readonly lots: readonly SwabLot[] }) {
  const lotName = (lotId: string) => lots.find(({ id }) => id === lotId)?.name ?? 'a lot that is not on record';
  return (
    <section aria-label="Controls over time">
      <SectionHead title="Controls over time" number={2} />
      <p className="opening">{sayControls(today)}</p>
      <figure>
        <ControlChart lots={today.judged} lotName={lotName} />
        {today.judged.length > 0 && (
          <details>
            <summary>Show as table</summary>
            <LastOnPaper count={today.judged.flatMap(({ controls }) => controls).length} one="control" />
            <ControlTable lots={today.judged} lotName={lotName} />
            <p>
              <a href="/api/controls.csv" download="controls.csv">
                All controls as a table for a spreadsheet (CSV)
              </a>
            </p>
          </details>
        )}
      </figure>
    </section>
  );
}

function sayControls({ meter, judged }: MeterToday): string {
  const all = judged.flatMap(({ controls }) => controls);
  const first = all.map(({ control }) => control.takenAt).sort()[0];
  if (first === undefined) return `No control of ${meter.name} yet. The first ten with a lot make its target.`;
  const counted = all.filter(({ state }) => state !== 'void').length;
  const out = all.filter(({ state }) => state === 'out');
  const days = joinWords(out.slice(-3).map(({ control }) => formatDate(control.takenAt)));
  const said = out.length === 0 ? 'none out of limits' : `${out.length} out of limits, ${out.length > 3 ? 'the last on' : 'on'} ${days}`;
  return `${plural(counted, 'control')} since ${formatDate(first)}, ${said}.`;
}
