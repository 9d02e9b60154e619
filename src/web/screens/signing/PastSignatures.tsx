import { sayOver } from '../../../core/regimen/signatureCover.ts';
import type { PastSignature } from '../../../core/visit/withReleases.ts';
import { formatDate } from '../../format.ts';

/** What a page leaves out because its signature held to an earlier day. Not printed. */
export function PastSignatures({ past, page }: { readonly past: readonly PastSignature[]; readonly page: string }) {
  if (past.length === 0) return null;
  return (
    <div className="leaflet-actions leaflet-notes">
      {past.map(({ shelfItemId, name, signedBy }) => (
        <p key={shelfItemId} className="unknown">
          Not on {page}: {name}. It waits for a new signature: {sayOver(signedBy, 'until', formatDate)}.
        </p>
      ))}
    </div>
  );
}
