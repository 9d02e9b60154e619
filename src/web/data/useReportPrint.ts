import { useEffect } from 'react';
import { callApi } from './api.ts';

/** Keeps on record that the page was printed: from then on a signature on it is taken back only with a reason. */
export function useReportPrint(visitId: string, what: 'leaflet' | 'prescriptions'): void {
  useEffect(() => {
    // A printer does not wait for the server, so a print that could not be told is told by nobody; the paper shows it.
    const report = () => void callApi('POST', `/api/visits/${visitId}/printed`, { what }).catch(() => undefined);
    addEventListener('beforeprint', report);
    return () => removeEventListener('beforeprint', report);
  }, [visitId, what]);
}
