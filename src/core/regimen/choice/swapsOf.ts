import { type Candidate, findConflict, mayBeTaken, serves } from '../candidates.ts';
import { type DraftView, openNeeds } from '../draftPlan.ts';
import { itemTraits } from '../itemTraits.ts';
import { monthlyCostCents } from '../monthlyCostCents.ts';
import type { RegimenTables } from '../tables.ts';
import type { DroppedCare, ShelfItem, Swap } from '../types.ts';
import { fitsDay, rankCandidates, tasksOf } from './rankCandidates.ts';

type Reason = Swap['because'];

const BETTER: Readonly<
  Record<Reason, { readonly says: string; readonly is: (other: Candidate, than: Candidate, tables: RegimenTables) => boolean }>
> = {
  taste: { says: 'another taste', is: (other, than) => tastesOther(other.item, than.item) },
  price: { says: 'costs less a month', is: (other, than) => isLess(monthlyCostCents([other]), monthlyCostCents([than])) },
  stain: { says: 'does not stain', is: (other, than, tables) => stains(than, tables) && !stains(other, tables) },
  time: { says: 'fewer uses a day', is: (other, than) => tasksOf(other) < tasksOf(than) },
};
const REASONS = Object.keys(BETTER) as readonly Reason[];

/**
 * For each pack in the plan that nobody has signed, the best other pack for the same need that has another taste, costs less, does not
 * stain or asks for fewer uses; and the same, for the reason that was kept, for what was dropped before.
 */
export function swapsOf(lines: readonly Candidate[], view: DraftView, history: readonly DroppedCare[]): readonly Swap[] {
  const dropped = view.candidates.flatMap((candidate) => {
    const why = history.find((d) => d.shelfItemId === candidate.item.id)?.why;
    const because = REASONS.filter((reason) => reason === why);
    return lines.some((l) => l.item.id === candidate.item.id) ? [] : [{ candidate, because }];
  });
  const inPlan = lines.filter((l) => l.state !== 'signed').map((candidate) => ({ candidate, because: REASONS }));
  return [...inPlan, ...dropped].flatMap(({ candidate, because }) =>
    because.flatMap((reason) => {
      const other = findBetter(candidate, reason, lines, view);
      return other ? [{ insteadOf: candidate.item.id, shelfItemId: other.item.id, because: reason, says: BETTER[reason].says }] : [];
    }),
  );
}

function findBetter(than: Candidate, reason: Reason, lines: readonly Candidate[], view: DraftView): Candidate | undefined {
  const rest = lines.filter((l) => l.item.id !== than.item.id);
  const signed = lines.filter((l) => l.state === 'signed');
  const needs = openNeeds(signed, view).filter((need) => serves(than, need));
  const [first] = needs;
  if (!first) return undefined;
  return rankCandidates(first, view.candidates, view).find(
    (other) =>
      other.item.id !== than.item.id &&
      !view.dropped.has(other.item.id) &&
      BETTER[reason].is(other, than, view.tables) &&
      needs.every((need) => serves(other, need)) &&
      mayBeTaken(other, view) &&
      !findConflict(
        other,
        rest.filter((l) => l.item.id !== other.item.id),
        view,
      ) &&
      fitsDay(
        other,
        rest.filter((l) => l.item.id !== other.item.id),
        view.settings,
      ),
  );
}

/** By the flavours noted; where one is not noted, only a pack without any flavour is surely another. */
function tastesOther(other: ShelfItem, than: ShelfItem): boolean {
  if (other.flavour !== undefined && than.flavour !== undefined) return other.flavour !== than.flavour;
  return itemTraits(than).has('flavour') && !itemTraits(other).has('flavour');
}

function stains({ item }: Candidate, { staining }: RegimenTables): boolean {
  const held = itemTraits(item);
  return staining.some(({ agentIds, traits }) => agentIds.includes(item.agentId) || traits.some((trait) => held.has(trait)));
}

const isLess = (a: number | null, b: number | null): boolean => a !== null && b !== null && a < b;
