import { type Candidate, type CandidateView, strengthMiss, tierOf } from '../candidates.ts';
import { monthlyCostCents } from '../monthlyCostCents.ts';
import { isStrongPaste } from '../planFluoride.ts';
import type { Need, RegimenCriterion } from '../types.ts';

/** Whole numbers of a pack, each the smaller the better, most important first: a regimen is as good as the sums over its packs. */
export type Goals = readonly number[];

export const DEFAULT_ORDER: readonly RegimenCriterion[] = ['tasks', 'cost', 'items'];
/** A use each day is this many parts, so that once a week, twice a week or every other day are whole numbers of them. */
export const PARTS_OF_A_DAILY_TASK = 840;
/** Brushings that there are anyway: a paste in the place of the ordinary one adds only what goes beyond. */
const USUAL_BRUSHINGS = 2;

/**
 * How well a pack fits and what it asks for: replaced at the chair, a check to record, tiers of the list of care below the first, another
 * strength than the age's, dropped before; then tasks, cost and count in the practice's order. A cost that is not known comes after every
 * known one.
 * @param needs  those that the pack could serve here
 */
export function goalsOf(candidate: Candidate, needs: readonly Need[], view: CandidateView): Goals {
  const { item, check } = candidate;
  return [
    Number(Object.hasOwn(view.instead ?? {}, item.id)),
    Number(check.cautions.length > 0),
    needs.reduce((sum, need) => sum + Math.max(0, tierOf(candidate, need)), 0),
    strengthMiss(candidate, view),
    Number(view.dropped.has(item.id)),
    ...orderOf(view.settings.regimenOrder).flatMap((criterion) => criterionGoals(candidate, criterion)),
  ];
}

/** Each criterion once, those that the practice did not name behind the others. */
export const orderOf = (order: readonly RegimenCriterion[] = DEFAULT_ORDER): readonly RegimenCriterion[] => [
  ...new Set([...order, ...DEFAULT_ORDER]),
];

function criterionGoals(candidate: Candidate, criterion: RegimenCriterion): readonly number[] {
  if (criterion === 'items') return [1];
  if (criterion === 'tasks') return [Math.round(addedTasksPerDay(candidate) * PARTS_OF_A_DAILY_TASK)];
  const cents = costCents(candidate);
  return cents === null ? [1, 0] : [0, cents];
}

export function addedTasksPerDay({ item, use }: Pick<Candidate, 'item' | 'use'>): number {
  if (use.atVisit === true) return 0;
  return isStrongPaste({ item }) ? Math.max(0, use.timesPerDay - USUAL_BRUSHINGS) : use.timesPerDay;
}

/** Of 30 days at home; of what is used at the visit, the share of the pack for one. */
function costCents({ item, use }: Candidate): number | null {
  if (use.atVisit !== true) return monthlyCostCents([{ item, use }]);
  const amount = use.amountG ?? use.amountMl;
  if (item.priceCents === undefined) return null;
  return item.packAmount === undefined || amount === undefined
    ? item.priceCents
    : Math.ceil((item.priceCents * Math.min(amount, item.packAmount.value)) / item.packAmount.value);
}

/** Below 0 when the first is better. */
export function compareGoals(a: Goals, b: Goals): number {
  const i = a.findIndex((value, k) => value !== b[k]);
  return i < 0 ? 0 : (a[i] ?? 0) - (b[i] ?? 0);
}

/** Sums stay far below what a solver in double precision can tell apart. */
const LARGEST_SUM = 1_000_000;

/**
 * Neighbouring goals as one, where the later ones together can never outweigh one step of the earlier: the same order with fewer solves.
 * @param mostPacks  no regimen that could be best has more
 */
export function mergeGoals(goals: readonly Goals[], mostPacks: number): readonly Goals[] {
  const count = goals[0]?.length ?? 0;
  const groups: number[][] = [];
  let size = Number.POSITIVE_INFINITY;
  for (let g = 0; g < count; g += 1) {
    const steps = mostPacks * Math.max(0, ...goals.map((pack) => pack[g] ?? 0)) + 1;
    if (size * steps > LARGEST_SUM) {
      groups.push([]);
      size = 1;
    }
    groups.at(-1)?.push(g);
    size *= steps;
  }
  const stepsOf = (g: number) => mostPacks * Math.max(0, ...goals.map((pack) => pack[g] ?? 0)) + 1;
  return goals.map((pack) => groups.map((group) => group.reduce((sum, g) => sum * stepsOf(g) + (pack[g] ?? 0), 0)));
}
