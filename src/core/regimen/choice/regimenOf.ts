import { buildLine } from '../buildLine.ts';
import { type Draft, type DraftView, isMetBy, isShelfNeed } from '../draftPlan.ts';
import { monthlyCostCents } from '../monthlyCostCents.ts';
import { planFluoride } from '../planFluoride.ts';
import type { Plan, Regimen } from '../types.ts';
import { tasksPerDay } from './rankCandidates.ts';
import { firstRefill, supplyOf } from './supplyOf.ts';

/** What these packs come to together: tasks and cost of what may be used now, supply, fluoride, and the needs that stay open. */
export function regimenOf(draft: Draft, view: DraftView, startsOn: string | undefined, why: readonly string[]): Regimen {
  const { lines } = draft;
  const inUse = lines.filter((l) => l.state !== 'waiting-for-signature');
  const supply = supplyOf(lines, startsOn);
  const fluoride = planFluoride(lines, view.facts, view.tables);
  return {
    id: regimenId(lines.map((l) => l.item.id)),
    lines: lines.map((l) => buildLine(l, lines, view)),
    ...(draft.lighter && { isLighter: true }),
    why,
    tasksPerDay: tasksPerDay(inUse),
    monthlyCostCents: monthlyCostCents(inUse),
    supply,
    refillOn: firstRefill(supply),
    unmet: unmetNeeds(draft, view),
    fluoride: fluoride.intake,
    fluorideSentence: fluoride.sentence,
  };
}

export const regimenId = (shelfItemIds: readonly string[]): string => [...shelfItemIds].sort().join('+');

/** Needs that no line meets: those still open with what is open, those without a fitting pack with where to look. */
function unmetNeeds({ lines, lighter }: Draft, { needs, checks }: DraftView): Plan['unmet'] {
  return needs.flatMap(({ kind, state, because }) => {
    if (!isShelfNeed(kind) || state === 'not-needed' || isMetBy(lines, kind)) return [];
    if (state === 'undecided') return [{ need: kind, because }];
    if (lighter?.leavesOpen.includes(kind)) return [{ need: kind, because: 'Left open for fewer tasks a day.' }];
    const isOnShelf = checks.some(({ item }) => item.inStock && item.meets.includes(kind));
    const why = isOnShelf ? 'Nothing on the shelf may be offered now: see what is not offered, and why.' : 'Nothing on the shelf meets it.';
    return [{ need: kind, because: why }];
  });
}

/** The regimen nearest to the one taken at the chair; the best where none was. A reading that brings one pack more changes nothing else. */
export function indexOfChosen(drafts: readonly Draft[], chosen: string | undefined): number {
  if (chosen === undefined) return 0;
  const wanted = chosen.split('+');
  const distances = drafts.map(({ lines }) => {
    const ids = lines.filter((l) => l.chosenFor !== 'antimicrobial').map((l) => l.item.id);
    return ids.filter((id) => !wanted.includes(id)).length + wanted.filter((id) => !ids.includes(id)).length;
  });
  return distances.indexOf(Math.min(...distances));
}
