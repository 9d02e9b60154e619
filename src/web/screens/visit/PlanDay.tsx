import { useMemo, useRef } from 'react';
import { layOutStripRow, type StripSizes } from '../../../core/leaflet/stripRowLayout.ts';
import type { StripRow } from '../../../core/leaflet/types.ts';
import { usesRow } from '../../../core/leaflet/usesRow.ts';
import { wordsOfUses } from '../../../core/leaflet/wordsOfUses.ts';
import type { DayClock } from '../../../core/regimen/dayStrip/dayClock.ts';
import type { DayStrip } from '../../../core/regimen/dayStrip/types.ts';
import { sayMinute } from '../../../core/visit/sayDescribedDays.ts';
import { DayRowPicture } from '../../charts/DayRowPicture.tsx';
import { sayEnglish, shelfName } from '../../content.ts';
import { plural } from '../../format.ts';
import { useIsPrinting } from '../../parts/useIsPrinting.ts';
import { useWidth } from '../../parts/useWidth.ts';
import { PlanFold } from './PlanFold.tsx';
import { ONCE_SIGNED } from './planLines.ts';
import { RHYTHM } from './rhythmLine.ts';
import { Reconfirm, ScopeLines } from './ScopeLines.tsx';
import { sayBasis, sayOnceSigned, sayUses } from './sayUses.ts';
import { usePlanDay } from './usePlanDay.ts';
import { useVisit } from './visitContext.ts';

/** What to use when, of the regimen that is the plan: a sentence, the day as a strip, the table one key away, and how the days run. */
export function PlanDay() {
  const { lines, isShownToPatient } = useVisit();
  const day = usePlanDay();
  if (!day) return null;
  const asked = lines.plan.filter(({ id }) => id === RHYTHM);
  const { clock, acid, isWorking } = day;
  return (
    <div className="plan-day">
      <h3>What to use when</h3>
      {isWorking ? (
        <p className="small">Working out the day …</p>
      ) : (
        <>
          <UsesOfDay strip={clock.now} acid={acid} label="What to use when" />
          {clock.onceSigned && <OnceSigned strip={clock.onceSigned} acid={acid} />}
          <NotTimed clock={clock} />
          <Basis strip={clock.now} />
        </>
      )}
      {!isShownToPatient && (
        <>
          <ScopeLines scope="plan" lines={asked} />
          <Reconfirm scope="plan" />
        </>
      )}
    </div>
  );
}

function Basis({ strip: { rhythm } }: { readonly strip: DayStrip }) {
  return <p className={rhythm.basis === 'usual' ? 'small unknown' : 'small'}>{sayBasis(rhythm)}</p>;
}

/** Today's day is the one to follow; the other is one line, and one key opens its picture. */
function OnceSigned({ strip, acid }: Pick<UsesOfDayProps, 'strip' | 'acid'>) {
  const isPrinting = useIsPrinting();
  const wordOf = useWordsOf(strip);
  return (
    <PlanFold id={ONCE_SIGNED} says={sayOnceSigned(strip, wordOf)} isAlwaysOpen={isPrinting}>
      <UsesOfDay strip={strip} acid={acid} label="Once all that waits is signed" isSaid />
    </PlanFold>
  );
}

interface UsesOfDayProps {
  readonly strip: DayStrip;
  readonly acid: StripRow['acid'];
  readonly label: string;
  /** The sentence stands above it already. */
  readonly isSaid?: boolean;
}

/** On the screen, px. */
const SIZES: StripSizes = { band: 24, mark: 6, gap: 4, word: 17, letter: 7.4, mostLetters: 44 };
/** Below this the day is a list: its words would stand in too many rows. */
const NARROWEST_PX = 340;
const HATCH_PX = 4;

function UsesOfDay({ strip, acid, label, isSaid = false }: UsesOfDayProps) {
  const place = useRef<HTMLDivElement>(null);
  const width = useWidth(place, 392);
  const wordOf = useWordsOf(strip);
  const said = sayUses(strip, wordOf);
  const row = useMemo(() => usesRow({ strip, say: sayEnglish, wordOf, sayTime: sayMinute, acid }), [strip, wordOf, acid]);
  const layout = layOutStripRow(row, width, SIZES);
  return (
    <figure className="uses-of-day" aria-label={label}>
      {!isSaid && <figcaption>{said}</figcaption>}
      <div ref={place}>
        {width >= NARROWEST_PX && strip.placed.length > 0 && (
          <svg viewBox={`0 0 ${width} ${layout.heightMm}`} role="img" aria-label={`${label}, from midnight to midnight. ${said}`}>
            <DayRowPicture layout={layout} hatch={HATCH_PX} />
          </svg>
        )}
        {width < NARROWEST_PX && <UsesList strip={strip} wordOf={wordOf} />}
      </div>
      {width >= NARROWEST_PX && strip.placed.length > 0 && <p className="chart-caption">{sayMarks(row)}</p>}
      <UsesTable strip={strip} caption={label} />
    </figure>
  );
}

/** What the hatching of this strip means; nothing that is not on it. */
function sayMarks({ acid, waits = [], away = [] }: StripRow): string {
  return [
    waits.length > 0 && 'Striped: nothing by mouth.',
    acid.length > 0 && 'Dark, below: on the acid side in the model.',
    'Under the band: eating',
    away.length > 0 && `, and a line while at ${away[0]?.name ?? 'work'}`,
    '.',
  ]
    .filter(Boolean)
    .join(' ')
    .replaceAll(/ ([,.])/g, '$1');
}

/** Words for what stands on this strip: two pastes of which one waits for a signature are never on one. */
function useWordsOf({ placed }: DayStrip): (shelfItemId: string) => string {
  const { shelf } = useVisit().input.practice;
  return useMemo(() => {
    const items = shelf.filter(({ id }) => placed.some(({ shelfItemId }) => shelfItemId === id));
    const words = wordsOfUses(items, sayEnglish, { language: 'en', locale: 'en' });
    return (id: string) => words.get(id) ?? shelfName(shelf, id);
  }, [shelf, placed]);
}

function UsesList({ strip, wordOf }: { readonly strip: DayStrip; readonly wordOf: (id: string) => string }) {
  return (
    <ul className="uses-list">
      {strip.placed.map((use) => (
        <li key={`${use.minute} ${use.shelfItemId}`}>
          {sayMinute(use.minute)} {wordOf(use.shelfItemId)}
          {use.after === undefined ? '' : `, after ${use.after}`}
          {use.nothingUntil === null ? '' : `; nothing by mouth until ${sayMinute(use.nothingUntil)}`}
        </li>
      ))}
    </ul>
  );
}

function UsesTable({ strip, caption }: { readonly strip: DayStrip; readonly caption: string }) {
  const { input } = useVisit();
  if (strip.placed.length === 0) return null;
  return (
    <details>
      <summary>Show as table</summary>
      <div className="table-scroll">
        <table>
          <caption>{caption}</caption>
          <thead>
            <tr>
              <th scope="col">At</th>
              <th scope="col">What</th>
              <th scope="col">After</th>
              <th scope="col">Nothing by mouth until</th>
            </tr>
          </thead>
          <tbody>
            {strip.placed.map(({ minute, shelfItemId, after, nothingUntil }) => (
              <tr key={`${minute} ${shelfItemId}`}>
                <td>{sayMinute(minute)}</td>
                <th scope="row">{shelfName(input.practice.shelf, shelfItemId)}</th>
                <td>{after}</td>
                <td>{nothingUntil === null ? '' : sayMinute(nothingUntil)}</td>
              </tr>
            ))}
          </tbody>
        </table>
      </div>
    </details>
  );
}

/** What is used at home and stands at no time of the strip, or not as often as it should, with the reason. */
function NotTimed({ clock: { now, onceSigned, notTimed } }: { readonly clock: DayClock }) {
  const { input } = useVisit();
  const { notPlaced } = onceSigned ?? now;
  if (notTimed.length + notPlaced.length === 0) return null;
  const name = (id: string) => shelfName(input.practice.shelf, id);
  return (
    <ul className="plain-list small">
      {notTimed.map(({ shelfItemId, because }) => (
        <li key={shelfItemId}>
          At no fixed time: {name(shelfItemId)}, {because}.
        </li>
      ))}
      {notPlaced.map(({ shelfItemId, times, because }) => (
        <li key={shelfItemId} className="unknown">
          No time for {plural(times, 'more use')} of {name(shelfItemId)}
          {onceSigned ? ' once all that waits is signed' : ''}: {because}.
        </li>
      ))}
    </ul>
  );
}
