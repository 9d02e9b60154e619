import { directionOf } from '../../../core/leaflet/languages.ts';
import type { Leaflet } from '../../../core/leaflet/types.ts';
import { SheetRow } from './SheetRow.tsx';

/** The day as it was told: dark where the plaque is on the acid side in the model, without a number. Its uses have it already, if it is alone. */
export function ToldStrip({ leaflet, isLarge }: { readonly leaflet: Leaflet; readonly isLarge: boolean }) {
  const { strip, dayStrip } = leaflet;
  if (!strip || (strip.rows.length === 1 && dayStrip && dayStrip.row.acid.length > 0)) return null;
  const { rows, words } = strip;
  return (
    <section className="told-strip">
      <h2>{words.title}</h2>
      {rows.map((row) => (
        <div key={row.of}>
          {rows.length > 1 && <h3>{words[row.of]}</h3>}
          <SheetRow row={row} direction={directionOf(leaflet.language)} label={words[row.of]} isLarge={isLarge} />
        </div>
      ))}
      <p className="sheet-small">
        {words.dark} {words.caution}
      </p>
    </section>
  );
}
