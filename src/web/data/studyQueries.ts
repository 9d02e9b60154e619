import { useQuery } from '@tanstack/react-query';
import type { NewStudy, StudyPersonBody, StudyView } from '../../api/swabChecks.ts';
import { callApi } from './api.ts';

export type StudyRecord = StudyView;

/** Lines that could not be taken, by their number in the text; 0 = the text as a whole. */
export interface TableTaken {
  readonly taken: number;
  readonly problems: readonly { readonly line: number; readonly message: string }[];
  readonly notCounted: readonly { readonly line: number; readonly message: string }[];
}

export const readStudy = (id: string) => callApi<StudyRecord>('GET', `/api/studies/${id}`);

export function useStudy(id: string) {
  return useQuery({ queryKey: ['study', id], queryFn: () => readStudy(id) });
}

export const planStudy = (study: NewStudy) => callApi<{ id: string; version: number }>('POST', '/api/studies', study);

export const takeStudyTable = (id: string, text: string) => callApi<TableTaken>('POST', `/api/studies/${id}/table`, { text });

export const linkStudyPerson = (id: string, link: StudyPersonBody) =>
  callApi<{ version: number }>('PUT', `/api/studies/${id}/people`, link);

export const reportStudy = (id: string, version: number) => callApi<{ version: number }>('POST', `/api/studies/${id}/report`, { version });

export const dropStudy = (id: string, version: number, reason: string) =>
  callApi<{ version: number }>('POST', `/api/studies/${id}/drop`, { version, reason });
