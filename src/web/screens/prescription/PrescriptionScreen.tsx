import type { PrescriptionsView } from '../../../api/signing.ts';
import { saySigner } from '../../../core/regimen/saySigner.ts';
import { usePrescriptions } from '../../data/signingQueries.ts';
import { useReportPrint } from '../../data/useReportPrint.ts';
import { formatDate } from '../../format.ts';
import { Link } from '../../parts/Link.tsx';
import { LoadState } from '../../parts/LoadState.tsx';
import { NotShown, ShownStrip } from '../../parts/Shown.tsx';
import { useShown } from '../../shown.ts';
import { PastSignatures } from '../signing/PastSignatures.tsx';

/** What is signed and needs a prescription, as a text to copy. Nothing unsigned stands on it. */
export function PrescriptionScreen({ visitId }: { readonly visitId: string }) {
  const prescriptions = usePrescriptions(visitId);
  useReportPrint(visitId, 'prescriptions');
  if (useShown().isOn) {
    return (
      <main className="page" id="main">
        <ShownStrip />
        <NotShown />
      </main>
    );
  }
  return (
    <main className="leaflet-page" id="main">
      <p className="leaflet-actions">
        <Link to={`/visits/${visitId}`}>Back to the visit</Link>
        {prescriptions.data && prescriptions.data.items.length > 0 && (
          // biome-ignore lint/a11y/noAutofocus: one came here to print
          <button type="button" className="action primary" autoFocus onClick={() => print()}>
            Print
          </button>
        )}
      </p>
      {prescriptions.data && <PastSignatures past={prescriptions.data.past} page="this text" />}
      {prescriptions.data ? <Sheet view={prescriptions.data} /> : <LoadState query={prescriptions} what="the text" />}
    </main>
  );
}

function Sheet({ view }: { readonly view: PrescriptionsView }) {
  return (
    <article className="sheet prescription" aria-label="Text for the prescription">
      <header>
        <p className="sheet-small">
          {view.practice}, {formatDate(view.onDate)}
        </p>
        <h1>{view.person}</h1>
        <p>Born {formatDate(view.birthDate)}</p>
        <p className="sheet-small">
          A text to copy onto, or to sign on, the form that local law asks for. It is not itself a prescription.
        </p>
      </header>
      {view.items.length === 0 && <p>No item that needs a prescription is signed at this visit.</p>}
      {view.items.map((item) => (
        <section key={item.shelfItemId} aria-label={item.item}>
          <h2>{item.item}</h2>
          <dl>
            <Line name="Form">{item.form}</Line>
            <Line name="Strength">{item.strength ?? 'not on the shelf: take it from the pack'}</Line>
            <Line name="Quantity">{item.quantity ?? 'not on the shelf: write it in'}</Line>
            <Line name="Directions">{item.directions}</Line>
            {item.signedBy.until !== undefined && <Line name="Last day">{formatDate(item.signedBy.until)}, for a pack to go</Line>}
            <Line name="Duration">{item.duration}</Line>
            <Line name="Repeats">none</Line>
            {item.cautions.length > 0 && <Line name="Cautions">{item.cautions.join(' ')}</Line>}
            <Line name="Signed by">
              {saySigner(item.signedBy, formatDate)}, {formatDate(item.signedBy.at)}
            </Line>
          </dl>
          <p className="signature-space">Signature</p>
        </section>
      ))}
      <footer className="sheet-foot">
        {view.invented && <p>{view.practice} and all people here are made up. This page is only to show how a page looks.</p>}
      </footer>
    </article>
  );
}

function Line({ name, children }: { readonly name: string; readonly children: React.ReactNode }) {
  return (
    <div>
      <dt>{name}</dt>
      <dd>{children}</dd>
    </div>
  );
}
