import type { Candidate } from '../candidates.ts';
import type { Draft } from '../draftPlan.ts';
import { monthlyCostCents } from '../monthlyCostCents.ts';
import { onceSigned, tasksPerDay } from './rankCandidates.ts';

const ONLY_ONE = 'No other set of agents on this shelf meets as many of the needs.';
const lighterThan = (tasks: number) => `The best of those with at most ${tasks} tasks a day, a limit of our own.`;
const BEST_FIT = 'Best fit to the record and the list of care among those found.';

/** What each draft is best at. A lighter one is not measured against those that leave no more open than the best. */
export function sayWhys(drafts: readonly Draft[]): readonly (readonly string[])[] {
  const full = drafts.filter(({ lighter }) => lighter === undefined);
  const whys = sayWhy(full.map(({ lines }) => lines));
  return drafts.map((draft) => (draft.lighter ? [lighterThan(draft.lighter.mostTasksPerDay)] : (whys[full.indexOf(draft)] ?? [])));
}

/** What each regimen is best at among those found, once all that waits is signed. What all have alike is not said. */
function sayWhy(regimens: readonly (readonly Candidate[])[]): readonly (readonly string[])[] {
  if (regimens.length === 1) return [regimens[0]?.length === 0 ? [] : [ONLY_ONE]];
  const waits = regimens.some((lines) => lines.some((l) => l.state === 'waiting-for-signature')) ? ', once all that waits is signed' : '';
  const full = regimens.map((lines) => onceSigned(lines));
  const costs = full.map((lines) => monthlyCostCents(lines) ?? undefined);
  const known = costs.includes(undefined) ? ' of those with every price known' : '';
  const sentences: readonly (readonly [string, readonly (number | undefined)[]])[] = [
    [`Fewest tasks among those that fit${waits}.`, full.map(tasksPerDay)],
    [`Lowest cost a month${known}${waits}.`, costs],
    [`Fewest products among those that fit${waits}.`, full.map((lines) => lines.length)],
  ];
  return regimens.map((_, i) => [
    ...(i === 0 ? [BEST_FIT] : []),
    ...sentences.filter(([, values]) => isBest(values, i)).map(([says]) => says),
  ]);
}

function isBest(values: readonly (number | undefined)[], i: number): boolean {
  const known = values.filter((v) => v !== undefined);
  return values[i] !== undefined && values[i] === Math.min(...known) && known.some((v) => v > Math.min(...known));
}
