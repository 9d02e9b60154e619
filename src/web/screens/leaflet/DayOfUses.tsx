import { directionOf } from '../../../core/leaflet/languages.ts';
import { listStepRows } from '../../../core/leaflet/listStepRows.ts';
import { shapeOfAmount } from '../../../core/leaflet/stripLayout.ts';
import type { DayStep, Leaflet } from '../../../core/leaflet/types.ts';
import { AmountDrawing } from './AmountDrawing.tsx';
import { SheetRow } from './SheetRow.tsx';

/** What to use when: the day as a strip, then each time with what, how and how much, and who signed. */
export function DayOfUses({ leaflet, isLarge }: { readonly leaflet: Leaflet; readonly isLarge: boolean }) {
  const rows = listStepRows(leaflet);
  if (rows.length === 0) return null;
  return (
    <section className="day">
      <h2>
        {leaflet.labels.day}
        {leaflet.who !== null && (
          <span className="sheet-who">
            {leaflet.labels.who}: {leaflet.who}
          </span>
        )}
      </h2>
      {leaflet.dayStrip && (
        <div className={leaflet.dayStrip.row.acid.length > 0 ? undefined : 'day-drawn'}>
          <SheetRow row={leaflet.dayStrip.row} direction={directionOf(leaflet.language)} label={leaflet.labels.day} isLarge={isLarge} />
          <p className="sheet-small">{sayStrip(leaflet)}</p>
        </div>
      )}
      {rows.map(({ id, label, steps }) => (
        <div key={id} className="ending-row">
          <h3>{label}</h3>
          <div>
            {steps.map(({ step, isDrawn }) => (
              <Step key={step.text} step={step} isDrawn={isDrawn} />
            ))}
          </div>
        </div>
      ))}
      {leaflet.signedBy.length > 0 && <p className="sheet-small">{leaflet.signedBy.join(' ')}</p>}
    </section>
  );
}

/** Whose day it is and what is striped; what is dark, where a professional put the acid side on the page. */
function sayStrip({ dayStrip, strip }: Leaflet): string {
  const dark = dayStrip && dayStrip.row.acid.length > 0 && strip ? [strip.words.dark, strip.words.caution] : [];
  return [dayStrip?.says, ...dark].join(' ');
}

function Step({ step, isDrawn }: { readonly step: DayStep; readonly isDrawn: boolean }) {
  const shape = isDrawn && step.amount ? shapeOfAmount(step.amount) : undefined;
  return (
    <div className={shape ? 'step drawn' : 'step'}>
      {shape && <AmountDrawing shape={shape} />}
      <p>
        {step.text}
        {step.amount ? ` (${step.amount.text})` : ''}
      </p>
    </div>
  );
}
