import { useQuery } from '@tanstack/react-query';
import type { PersonPage } from '../../api/bundles.ts';
import type { PersonDetails } from '../../api/personSchema.ts';
import { callApi } from './api.ts';

const readPage = (id: string) => callApi<PersonPage>('GET', `/api/people/${id}/details`);

/** Who a person is to the practice. The id of a merged chart gives the one that is kept. */
export function usePersonPage(id: string | null) {
  return useQuery({
    queryKey: ['person-page', id],
    queryFn: () => (id === null ? Promise.reject(new Error('nobody chosen')) : readPage(id)),
    enabled: id !== null,
  });
}

export async function readDetails(id: string) {
  const { details, version } = await readPage(id);
  return { value: details, version };
}

export interface SaidToChange {
  readonly reason?: string | undefined;
  readonly isAnotherPerson?: true | undefined;
}

export const saveDetails = (id: string, details: PersonDetails, version: number, said: SaidToChange) =>
  callApi<{ version: number }>('PUT', `/api/people/${id}/details`, { details, version, ...said });

interface ChartVersion {
  readonly id: string;
  readonly version: number;
}

export const mergeCharts = (kept: ChartVersion, merged: ChartVersion, reason: string) =>
  callApi<{ ok: true }>('POST', `/api/people/${kept.id}/merge`, { version: kept.version, merged, reason });

export const unmergeChart = (merged: ChartVersion, reason: string) =>
  callApi<{ ok: true }>('POST', `/api/people/${merged.id}/unmerge`, { version: merged.version, reason });
