import { useEffect, useState } from 'react';
import type { LeafletLanguage } from '../../core/leaflet/types.ts';
import type { VisitInput } from '../../core/visit/types.ts';
import { loadCatalog } from '../content.ts';

/** Reads the words of the leaflets of a visit. The number changes when a language has come. */
export function useLeafletWords({ visit, person }: VisitInput): number {
  const [come, setCome] = useState(0);
  const wanted = [...new Set([visit.language, ...(person.homes ?? []).map(({ language }) => language)])].sort().join(' ');
  useEffect(() => {
    let isHere = true;
    for (const language of wanted.split(' ') as LeafletLanguage[]) {
      // Without its words the page goes on in English; the page to hand over comes from the server.
      loadCatalog(language).then(
        (isNew) => isNew && isHere && setCome((n) => n + 1),
        () => undefined,
      );
    }
    return () => {
      isHere = false;
    };
  }, [wanted]);
  return come;
}
