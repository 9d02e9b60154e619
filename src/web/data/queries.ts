import { QueryCache, QueryClient, useMutation, useQuery, useQueryClient } from '@tanstack/react-query';
import type { HiddenView, NewPerson, PersonLine, Role, SessionView } from '../../api/apiTypes.ts';
import type { LeafletBundle, PersonRecord, VersionedShelfItem, VisitBundle } from '../../api/bundles.ts';
import type { LeafletLanguage } from '../../core/leaflet/types.ts';
import type { ShelfItem } from '../../core/regimen/types.ts';
import type { PracticeSettings } from '../../core/visit/types.ts';
import { ApiError, actAs, callApi } from './api.ts';
import { isClockRight } from './clock.ts';
import { noteArrival } from './hiding.ts';
import { settledWithin, useSaveQueue } from './saving.ts';

export function createQueryClient(): QueryClient {
  const client: QueryClient = new QueryClient({
    // A session that ended elsewhere shows the sign-in page.
    queryCache: new QueryCache({
      onError: (error, query) => {
        const isSignedOut = error instanceof ApiError && error.status === 401;
        if (isSignedOut && query.queryKey[0] !== 'session') void client.invalidateQueries({ queryKey: ['session'] });
      },
    }),
    defaultOptions: {
      queries: { retry: (count, error) => count < 2 && error instanceof ApiError && error.status === 0, networkMode: 'always' },
    },
  });
  return client;
}

/** The signed-in member, a hidden screen, or null. */
export function useSession() {
  return useQuery({
    queryKey: ['session'],
    queryFn: async () => {
      try {
        const session = await callApi<SessionView | HiddenView | null>('GET', '/api/session');
        const here = session && !('hidden' in session) ? session : null;
        actAs(here?.member.id ?? null);
        if (here) noteArrival(here);
        return session;
      } catch (error) {
        if (error instanceof ApiError && error.status === 401) return null;
        throw error;
      }
    },
  });
}

export interface MemberName {
  readonly id: string;
  readonly name: string;
  readonly roles: readonly Role[];
}

/** Names for the sign-in page, and the name of the practice where it is an invented one. */
export function useMembers() {
  return useQuery({
    queryKey: ['members'],
    queryFn: () => callApi<{ inventedPractice: string | null; members: readonly MemberName[] }>('GET', '/api/members'),
  });
}

export const signInAs = (memberId: string, password: string) => callApi('POST', '/api/sign-in', { memberId, password });

export function useSignIn() {
  const client = useQueryClient();
  return useMutation({
    mutationFn: (body: { memberId: string; password: string }) => signInAs(body.memberId, body.password),
    onSuccess: () => client.resetQueries(),
  });
}

export function useSignOut() {
  const client = useQueryClient();
  return useMutation({ mutationFn: () => callApi('POST', '/api/sign-out'), onSuccess: () => client.resetQueries() });
}

export function usePeople() {
  return useQuery({
    queryKey: ['people'],
    queryFn: async () => listOf(await callApi<ListOrPart<PersonLine>>('GET', '/api/people'), 'people'),
  });
}

/** Adds a person and answers with the id. */
export const addPerson = (person: NewPerson) => callApi<{ id: string }>('POST', '/api/people', person);

/** True where the server asks whether a person is the same as one on record. */
export const isAskedBack = (error: unknown): boolean => error instanceof ApiError && error.code === 'LIKELY_SAME_PERSON';

/** Opens a visit, or answers with the one that is open. */
export const openVisit = (personId: string) =>
  callApi<{ visitId: string }>('POST', `/api/people/${personId}/visits`, isClockRight() ? { clockIsRight: true } : {});

export function usePerson(id: string | null) {
  return useQuery({ queryKey: ['person', id], queryFn: () => callApi<PersonRecord>('GET', `/api/people/${id}`), enabled: id !== null });
}

/** A server that does not take what was typed does not keep the next page away. */
const LONGEST_WAIT_MS = 2_000;

/**
 * Read once when the page opens; from then on the page's own draft leads and every field carries its version. Each page reads for
 * itself: going from one to the other must not bring back what was there before.
 */
export function useVisitBundle(id: string, page: 'visit' | 'swab' | 'acid-day' | 'fluids' = 'visit') {
  const queue = useSaveQueue();
  return useQuery({
    queryKey: ['visit', id, page],
    queryFn: async () => {
      // What was typed on the page before this one is a part of it.
      await settledWithin(queue, LONGEST_WAIT_MS);
      return callApi<VisitBundle>('GET', `/api/visits/${id}`);
    },
    staleTime: Number.POSITIVE_INFINITY,
    gcTime: 0,
    refetchOnWindowFocus: false,
    refetchOnReconnect: false,
  });
}

/** The pages to hand over; with a language, one page in it. */
export function useLeaflet(visitId: string, language: LeafletLanguage | '') {
  return useQuery({
    queryKey: ['leaflet', visitId, language],
    queryFn: () => callApi<LeafletBundle>('GET', `/api/visits/${visitId}/leaflet${language === '' ? '' : `?language=${language}`}`),
    gcTime: 0,
  });
}

export function useShelf() {
  return useQuery({
    queryKey: ['shelf'],
    queryFn: async () => listOf(await callApi<ListOrPart<VersionedShelfItem>>('GET', '/api/shelf'), 'items'),
  });
}

export const saveShelfItem = (item: ShelfItem, version: number) =>
  callApi<{ version: number }>('PUT', `/api/shelf/${item.id}`, { item, version });

export interface RulesView {
  readonly settings: PracticeSettings;
  readonly version: number;
}

export function useRules() {
  return useQuery({ queryKey: ['rules'], queryFn: () => callApi<RulesView>('GET', '/api/rules') });
}

export const saveSettings = (settings: PracticeSettings, version: number) =>
  callApi<{ version: number }>('PUT', '/api/settings', { settings, version });

type ListOrPart<T> = readonly T[] | Readonly<Record<string, readonly T[]>>;

/** Lists come bare or under one name. */
function listOf<T>(answer: ListOrPart<T>, name: string): readonly T[] {
  return Array.isArray(answer) ? answer : ((answer as Readonly<Record<string, readonly T[]>>)[name] ?? []);
}
