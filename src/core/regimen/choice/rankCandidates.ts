import { type Candidate, type CandidateView, mayBeTaken, serves } from '../candidates.ts';
import { isOrdinaryPaste, isStrongPaste, type PlannedUse } from '../planFluoride.ts';
import type { PlanSettings } from '../tables.ts';
import type { Need } from '../types.ts';
import { dayRows } from './dayRows.ts';
import { compareGoals, goalsOf } from './goals.ts';

/** Packs that may be taken and that serve a need, best first: chosen in the place of another, then by their goals, then by id. */
export function rankCandidates(need: Need, candidates: readonly Candidate[], view: CandidateView): readonly Candidate[] {
  return candidates
    .filter((c) => serves(c, need) && mayBeTaken(c, view))
    .map((c) => ({ c, goals: [isPinned(c, view) ? 0 : 1, ...goalsOf(c, [need], view)] }))
    .sort((a, b) => compareGoals(a.goals, b.goals) || (a.c.item.id < b.c.item.id ? -1 : 1))
    .map(({ c }) => c);
}

/** Chosen at the chair in the place of another, and not replaced itself. */
export const isPinned = ({ item }: Candidate, { instead = {} }: CandidateView): boolean =>
  Object.values(instead).includes(item.id) && !Object.hasOwn(instead, item.id);

/** Uses in a day of what is taken at home. */
export const tasksOf = ({ use }: Pick<PlannedUse, 'use'>): number => (use.atVisit === true ? 0 : use.timesPerDay);
export const tasksPerDay = (uses: readonly Pick<PlannedUse, 'use'>[]): number => uses.reduce((sum, use) => sum + tasksOf(use), 0);

/** Whether these packs together with one more ask for no more tasks than the person accepts, now and once all is signed. */
export function fitsDay(candidate: PlannedUse, others: readonly PlannedUse[], { mostTasksPerDay }: PlanSettings): boolean {
  if (mostTasksPerDay === undefined || tasksOf(candidate) === 0) return true;
  if (mostTasksPerDay <= 0) return false;
  const rows = dayRows([candidate, ...others], [], { of: tasksOf, anyway: 0, atMost: mostTasksPerDay });
  return rows.every(({ coefficients, atMost }) => coefficients.reduce((sum, c) => sum + c, 0) <= atMost);
}

/** What is used once everything that waits is signed. */
export function onceSigned<T extends PlannedUse>(uses: readonly T[]): readonly T[] {
  return uses.some(isStrongPaste) ? uses.filter((u) => !isOrdinaryPaste(u)) : uses;
}
