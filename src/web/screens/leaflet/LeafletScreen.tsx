import { Fragment, useState } from 'react';
import type { LeafletBundle } from '../../../api/bundles.ts';
import { LANGUAGE_NAMES, LEAFLET_LANGUAGES } from '../../../core/leaflet/languages.ts';
import type { Leaflet, LeafletLanguage } from '../../../core/leaflet/types.ts';
import { useLeaflet } from '../../data/queries.ts';
import { useReportPrint } from '../../data/useReportPrint.ts';
import { Link } from '../../parts/Link.tsx';
import { LoadState } from '../../parts/LoadState.tsx';
import { PageOf, ShownStrip } from '../../parts/Shown.tsx';
import { PastSignatures } from '../signing/PastSignatures.tsx';
import { KeepForPerson } from './KeepForPerson.tsx';
import { LeafletSheet } from './LeafletSheet.tsx';

/** The page to hand over: on the screen as it prints, on A4 or Letter, black on white, in the language and size that are chosen. */
export function LeafletScreen({ visitId }: { readonly visitId: string }) {
  const [language, setLanguage] = useState<LeafletLanguage | ''>('');
  const [largeChosen, setLarge] = useState<boolean | null>(null);
  const query = useLeaflet(visitId, language);
  const isLarge = largeChosen ?? query.data?.kept.largePrint ?? false;
  useReportPrint(visitId, 'leaflet');
  return (
    <main className="leaflet-page" id="main">
      <ShownStrip />
      <p className="leaflet-actions">
        <Link to={`/visits/${visitId}`}>Back to the visit</Link>
        {query.data && (
          // biome-ignore lint/a11y/noAutofocus: one came here to print, by a key
          <button type="button" className="action primary" autoFocus onClick={() => print()}>
            Print
          </button>
        )}
      </p>
      <p className="leaflet-actions">
        <label>
          Language{' '}
          <select value={language} onChange={({ target }) => setLanguage(target.value as LeafletLanguage | '')}>
            <option value="">{sayAsked(query.data)}</option>
            {LEAFLET_LANGUAGES.map((id) => (
              <option key={id} value={id}>
                {LANGUAGE_NAMES[id]}
              </option>
            ))}
          </select>
        </label>
        <label>
          <input type="checkbox" checked={isLarge} onChange={({ target }) => setLarge(target.checked)} /> Large print
        </label>
        {query.data && <KeepForPerson bundle={query.data} chosen={chosenOf(query.data, language, largeChosen)} />}
      </p>
      {query.data ? (
        <PageOf patientId={query.data.patientId}>
          <PastSignatures past={query.data.past} page="this page" />
          {query.data.leaflets.map((leaflet) => (
            <Fragment key={`${leaflet.home} ${leaflet.language}`}>
              <BeforePrinting leaflet={leaflet} />
              <LeafletSheet leaflet={leaflet} isLarge={isLarge} />
            </Fragment>
          ))}
        </PageOf>
      ) : (
        <LoadState query={query} what="the leaflet" />
      )}
    </main>
  );
}

/** With a home of their own, each page is in the language of its home: then another one is not the person's. */
const chosenOf = ({ asks }: LeafletBundle, language: LeafletLanguage | '', largePrint: boolean | null) => ({
  ...(language !== '' && asks !== null && { language }),
  ...(largePrint !== null && { largePrint }),
});

function sayAsked(bundle: LeafletBundle | undefined): string {
  if (bundle === undefined) return 'as the visit asks';
  return bundle.asks === null ? 'as the homes ask' : `as the visit asks (${LANGUAGE_NAMES[bundle.asks]})`;
}

/** What the professional has to know of a page before it is handed over; none of it is printed. */
function BeforePrinting({ leaflet: { language, review, notInLanguage } }: { readonly leaflet: Leaflet }) {
  if (review === null && notInLanguage.length === 0) return null;
  const name = LANGUAGE_NAMES[language];
  return (
    <div className="leaflet-actions leaflet-notes">
      {review !== null && <p>The medical wording in {name} is to be reviewed by a native-speaking clinician.</p>}
      {notInLanguage.length > 0 && (
        <p className="unknown">
          No name in {name}, so the English one stands on this page: {notInLanguage.join('; ')}. Names are written on Shelf.
        </p>
      )}
    </div>
  );
}
