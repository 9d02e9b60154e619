import type { AcidLineId } from '../../../core/plaque/day/acidLines.ts';
import type { Interval } from '../../../core/plaque/day/dayBand.ts';
import { sayMinutesRange } from '../../../core/plaque/day/sayDay.ts';
import { sayMinute } from '../../../core/visit/sayDescribedDays.ts';
import { capitalise } from '../../format.ts';
import type { DayWork } from './dayWork.ts';
import { nameEvent, sayWhen } from './sayEvent.ts';

/** The figures behind the picture, one key away. */
export function DayTable({ work }: { readonly work: DayWork }) {
  const { shown, changed, drawn, study, record, at } = work;
  const { picture } = drawn;
  if (!shown || !picture) return null;
  const band = changed ? study.study.bandChanged : study.study.bandTold;
  const stored = changed ? record?.changed : record?.days[at];
  const underIt = (id: AcidLineId) => stored?.below[id] ?? band?.minutesBelow[id];
  const { costs = [] } = study.study;
  return (
    <details id="day-table">
      <summary className="off-paper" aria-keyshortcuts="t">
        Show as table
      </summary>
      <div className="table-scroll">
        <table>
          <caption>What was eaten, drunk and done{changed ? ', with the change' : ''}</caption>
          <thead>
            <tr>
              <th scope="col">When</th>
              <th scope="col">What</th>
              <th scope="col">Lowest pH</th>
              <th scope="col">Back near rest</th>
              {!changed && <th scope="col">How much it adds</th>}
            </tr>
          </thead>
          <tbody>
            {work.seen(shown).events.map((event) => {
              const trace = picture.drawn.traces.find(({ eventId }) => eventId === event.id);
              return (
                <tr key={event.id}>
                  <td>{sayWhen(event)}</td>
                  <th scope="row">{nameEvent(event)}</th>
                  <td>{trace ? `${trace.lowestPh.toFixed(1)} at ${sayMinute(trace.lowestAtMinute)}` : ''}</td>
                  <td>{trace && (trace.backAtMinute === null ? 'not before the next' : sayMinute(trace.backAtMinute))}</td>
                  {!changed && <td>{sayPlace(costs.findIndex(({ eventId }) => eventId === event.id))}</td>}
                </tr>
              );
            })}
          </tbody>
        </table>
        <table>
          <caption>Time of the day under each line, in the model</caption>
          <thead>
            <tr>
              <th scope="col">Line</th>
              <th scope="col">Under it</th>
            </tr>
          </thead>
          <tbody>
            {picture.drawn.lines.map((line) => (
              <tr key={line.id}>
                <th scope="row">{line.says}</th>
                <td>{sayUnder(underIt(line.id))}</td>
              </tr>
            ))}
          </tbody>
        </table>
      </div>
    </details>
  );
}

const sayUnder = (minutes: Interval | undefined): string => (minutes ? sayMinutesRange(minutes) : '…');

const PLACES = ['most', 'second', 'third', 'fourth', 'fifth', 'sixth'];

/** By leaving it out; a place and no minutes, since no band stands behind it. */
const sayPlace = (at: number): string => (at === -1 ? '' : capitalise(PLACES[at] ?? 'less'));
