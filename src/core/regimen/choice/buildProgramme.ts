import { type Candidate, findConflict, mayBeTaken, serves } from '../candidates.ts';
import type { DraftView } from '../draftPlan.ts';
import { fluorideMgPerDay, planFluoride } from '../planFluoride.ts';
import type { Need } from '../types.ts';
import { type DayAmount, type DayRow, dayRows } from './dayRows.ts';
import { type ForbiddenPair, forbiddenPairs } from './forbiddenPairs.ts';
import { compareGoals, type Goals, goalsOf } from './goals.ts';
import { isPinned, tasksOf } from './rankCandidates.ts';

/** One pack as the programme sees it. */
export interface ProgrammePack {
  readonly candidate: Candidate;
  /** Places of the needs that it serves. */
  readonly serves: readonly number[];
  readonly goals: Goals;
}

/** What a choice of packs is made from. Signed packs are part of its bounds, not of its packs. */
export interface Programme {
  /** In the order of their ids. */
  readonly packs: readonly ProgrammePack[];
  /** Most important first. */
  readonly needs: readonly Need[];
  readonly pairs: readonly ForbiddenPair[];
  readonly days: readonly DayRow[];
  /** Places of packs that were chosen at the chair. */
  readonly pins: readonly number[];
}

/** The packs that could serve an open need beside what is signed, and what binds them together. */
export function buildProgramme(needs: readonly Need[], signed: readonly Candidate[], view: DraftView): Programme {
  const { settings, tables } = view;
  const fitting = view.candidates.flatMap((candidate) => {
    const served = needs.filter((need) => serves(candidate, need));
    if (served.length === 0 || !mayBeTaken(candidate, view) || findConflict(candidate, signed, view)) return [];
    return [{ candidate, serves: served.map((need) => needs.indexOf(need)), goals: goalsOf(candidate, served, view) }];
  });
  const packs = withoutOutdone(fitting, view);
  const candidates = packs.map((p) => p.candidate);
  const items = candidates.map((c) => c.item);
  return {
    packs,
    needs,
    pairs: forbiddenPairs(items, tables.interactions),
    days: [...fluorideLimits(view), ...taskLimit(settings.mostTasksPerDay)].flatMap((amount) => dayRows(candidates, signed, amount)),
    pins: candidates.flatMap((c, i) => (isPinned(c, view) ? [i] : [])),
  };
}

export interface NamedAmount extends DayAmount {
  readonly id: string;
  readonly says: string;
}

/** Every upper level for the age; a limit per kg by the weight, as the sum itself is shown. */
export function fluorideLimits({ facts, tables }: Pick<DraftView, 'facts' | 'tables'>): readonly NamedAmount[] {
  const { limits, weightKg, mgPerDay } = planFluoride([], facts, tables).intake;
  const kept = new Map<unknown, number>();
  return limits.flatMap(({ name, kind, value, unit, shownOnly }) => {
    if ((kind !== 'upper-intake-level' && kind !== 'safe-level') || shownOnly) return [];
    if (unit === 'mg/kg/day' && weightKg === null) return [];
    return {
      id: name,
      says: `at most ${value} ${unit === 'mg/day' ? 'mg' : 'mg/kg'} of fluoride a day (${name})`,
      of: (planned) => {
        const mg = kept.get(planned) ?? fluorideMgPerDay(planned, facts, tables);
        kept.set(planned, mg);
        return mg;
      },
      anyway: mgPerDay,
      atMost: unit === 'mg/day' ? value : value * (weightKg ?? 0),
    };
  });
}

/** A person who accepts no task at all is taken to accept next to none, so that the share stays a number. */
const NEXT_TO_NONE = 1e-3;

export function taskLimit(mostTasksPerDay: number | undefined): readonly NamedAmount[] {
  if (mostTasksPerDay === undefined) return [];
  const says = `at most ${mostTasksPerDay} ${mostTasksPerDay === 1 ? 'task' : 'tasks'} a day`;
  return [{ id: 'tasks', says, of: tasksOf, anyway: 0, atMost: Math.max(NEXT_TO_NONE, mostTasksPerDay) }];
}

/**
 * Leaves out a pack where another of the same agent serves the same, binds no more and has better goals: exchanging the one for the other
 * makes any regimen better, so no best regimen holds it.
 */
function withoutOutdone(packs: readonly ProgrammePack[], view: DraftView): readonly ProgrammePack[] {
  const pairs = forbiddenPairs(
    packs.map((p) => p.candidate.item),
    view.tables.interactions,
  );
  const partners = packs.map((_, i) => new Set(pairs.flatMap(({ places: [a, b] }) => (a === i ? [b] : b === i ? [a] : []))));
  const mg = packs.map((p) => fluorideMgPerDay(p.candidate, view.facts, view.tables));
  const outdoes = (j: number, i: number): boolean => {
    const [a, b] = [packs[j], packs[i]];
    if (!a || !b || i === j || a.candidate.item.agentId !== b.candidate.item.agentId) return false;
    if (a.candidate.state !== b.candidate.state || a.serves.join() !== b.serves.join()) return false;
    if (a.candidate.item.meets.includes('fluoride-base') !== b.candidate.item.meets.includes('fluoride-base')) return false;
    if ((mg[j] ?? 0) > (mg[i] ?? 0) || tasksOf(a.candidate) > tasksOf(b.candidate)) return false;
    if ([...(partners[j] ?? [])].some((k) => k !== i && !partners[i]?.has(k))) return false;
    const order = compareGoals(a.goals, b.goals);
    return order < 0 || (order === 0 && j < i);
  };
  return packs.filter((p, i) => isPinned(p.candidate, view) || !packs.some((_, j) => outdoes(j, i)));
}
