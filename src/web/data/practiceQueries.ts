import { useQuery } from '@tanstack/react-query';
import type { MemberChange, NewMember } from '../../api/apiTypes.ts';
import type { PracticeView } from '../../api/bundles.ts';
import type { Meter, SwabLot } from '../../core/reading/types.ts';
import { callApi } from './api.ts';

const readPractice = () => callApi<PracticeView>('GET', '/api/practice');

/** Meters, swab lots and team. */
export function usePractice() {
  return useQuery({ queryKey: ['practice'], queryFn: readPractice });
}

export const saveMeter = (meter: Meter, version: number) =>
  callApi<{ version: number }>('PUT', `/api/meters/${encodeURIComponent(meter.id)}`, { meter, version });

export const saveLot = (lot: SwabLot, version: number) =>
  callApi<{ version: number }>('PUT', `/api/lots/${encodeURIComponent(lot.id)}`, { lot, version });

export async function readMeter(id: string) {
  const found = (await readPractice()).meters.find(({ meter }) => meter.id === id);
  return found && { value: found.meter, version: found.version };
}

export async function readLot(id: string) {
  const found = (await readPractice()).lots.find(({ lot }) => lot.id === id);
  return found && { value: found.lot, version: found.version };
}

export const addMember = (member: NewMember) => callApi<{ id: string }>('POST', '/api/members', member);

export const setPassword = (memberId: string, password: string) =>
  callApi<{ ok: true }>('PUT', `/api/members/${memberId}/password`, { password });

export const setCode = (memberId: string, password: string, code: string) =>
  callApi<{ ok: true }>('PUT', `/api/members/${memberId}/code`, { password, code });

export const changeMember = (memberId: string, change: MemberChange) =>
  callApi<{ version: number }>('PUT', `/api/members/${memberId}`, change);

export const saveHideAfter = (minutes: number, version: number) =>
  callApi<{ version: number }>('PUT', '/api/settings/hide-after', { minutes, version });
