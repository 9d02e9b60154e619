import type { SourceRef } from '../visit/answer.ts';
import type { Need } from './types.ts';

/** A need without its kind. */
export type NeedState = Omit<Need, 'kind'>;

/** Our own reasoning, where no published row says it. */
export const OURS: SourceRef = { key: 'project', status: 'proposal' };
export const NOT_CONFIRMED = 'Level not confirmed yet.';

export const needed = (because: string, sources: readonly SourceRef[], agentIds?: Need['agentIds']): NeedState => ({
  state: 'needed',
  because,
  agentIds,
  sources,
});
export const undecided = (because: string, sources: readonly SourceRef[] = [OURS]): NeedState => ({ state: 'undecided', because, sources });
export const notNeeded = (because: string, sources: readonly SourceRef[] = [OURS]): NeedState => ({
  state: 'not-needed',
  because,
  sources,
});

/** Three-valued: a fact that is not known leaves the need undecided. */
export function ofFact(state: boolean | undefined, yes: string, unknown: string, no: string): NeedState {
  if (state === undefined) return undecided(unknown);
  return state ? needed(yes, [OURS]) : notNeeded(no);
}
