import { monthlyCostCents } from '../monthlyCostCents.ts';
import type { Regimen, ShelfItem } from '../types.ts';
import { tasksPerDay } from './rankCandidates.ts';
import { firstRefill } from './supplyOf.ts';

/**
 * A regimen as it stands once packs of it were turned down: tasks, cost, supply and refill of what is left, and the needs that nothing else
 * meets are open. Its reasons, which compare it as a whole, fall away; its fluoride stays that of the whole.
 * @param isTurnedDown  by shelf item id
 * @returns the same regimen where nothing was
 */
export function withoutTurnedDown(regimen: Regimen, isTurnedDown: (shelfItemId: string) => boolean, shelf: readonly ShelfItem[]): Regimen {
  const lines = regimen.lines.filter((l) => !isTurnedDown(l.shelfItemId));
  if (lines.length === regimen.lines.length) return regimen;
  const inUse = lines.filter((l) => l.state !== 'waiting-for-signature');
  const bought = inUse.flatMap(({ shelfItemId, use }) => shelf.filter(({ id }) => id === shelfItemId).map((item) => ({ item, use })));
  const supply = regimen.supply.filter(({ shelfItemId }) => !isTurnedDown(shelfItemId));
  const lost = new Set(regimen.lines.flatMap((l) => l.meets).filter((need) => !lines.some((l) => l.meets.includes(need))));
  return {
    ...regimen,
    lines,
    why: [],
    tasksPerDay: tasksPerDay(inUse),
    monthlyCostCents: bought.length === inUse.length ? monthlyCostCents(bought) : null,
    supply,
    refillOn: firstRefill(supply),
    unmet: [...regimen.unmet, ...[...lost].map((need) => ({ need, because: 'Turned down today.' }))],
  };
}
