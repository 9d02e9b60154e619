import { type Candidate, findConflict, mayBeTaken, serves } from '../candidates.ts';
import { type DraftView, isMetBy, mayComeByReading, openNeeds } from '../draftPlan.ts';
import { itemTraits, NO_FLAVOUR, tasteOf } from '../itemTraits.ts';
import { monthlyCostCents } from '../monthlyCostCents.ts';
import type { RegimenTables } from '../tables.ts';
import type { DroppedCare, Need, ShelfItem, Swap } from '../types.ts';
import { fitsDay, rankCandidates, tasksOf } from './rankCandidates.ts';

type Reason = Swap['because'];

const BETTER: Readonly<
  Record<
    Reason,
    { readonly says: (item: ShelfItem) => string; readonly is: (other: Candidate, than: Candidate, tables: RegimenTables) => boolean }
  >
> = {
  taste: { says: sayTaste, is: (other, than) => tastesOther(other.item, than.item) },
  price: { says: () => 'costs less a month', is: (other, than) => isLess(monthlyCostCents([other]), monthlyCostCents([than])) },
  stain: { says: () => 'does not stain', is: (other, than, tables) => stains(than, tables) && !stains(other, tables) },
  time: { says: () => 'fewer uses a day', is: (other, than) => tasksOf(other) < tasksOf(than) },
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
      return other
        ? [
            {
              insteadOf: candidate.item.id,
              shelfItemId: other.item.id,
              because: reason,
              says: BETTER[reason].says(other.item),
            },
          ]
        : [];
    }),
  );
}

function findBetter(than: Candidate, reason: Reason, lines: readonly Candidate[], view: DraftView): Candidate | undefined {
  const rest = lines.filter((l) => l.item.id !== than.item.id);
  const needs = needsOf(than, lines, view);
  const [first] = needs;
  if (!first) return undefined;
  return sameAgentFirst(rankCandidates(first, view.candidates, view), than, reason).find(
    (other) =>
      other.item.id !== than.item.id &&
      !view.dropped.has(other.item.id) &&
      BETTER[reason].is(other, than, view.tables) &&
      needs.every((need) => serves(other, need)) &&
      mayBeTaken(other, view) &&
      mayStand(
        other,
        rest.filter((l) => l.item.id !== other.item.id),
        needs,
        view,
      ),
  );
}

/** What the pack would serve and nothing signed does; the antimicrobial need, which is met apart, last. */
function needsOf(than: Candidate, lines: readonly Candidate[], view: DraftView): readonly Need[] {
  const signed = lines.filter((l) => l.state === 'signed');
  const byReading = view.needs.filter(({ kind, state }) => kind === 'antimicrobial' && state === 'needed' && !isMetBy(signed, kind));
  return [...openNeeds(signed, view), ...byReading].filter((need) => serves(than, need));
}

/** For a taste, another flavour of the same thing comes before another thing. */
function sameAgentFirst(ranked: readonly Candidate[], than: Candidate, reason: Reason): readonly Candidate[] {
  if (reason !== 'taste') return ranked;
  const isSame = ({ item }: Candidate) => item.agentId === than.item.agentId;
  return [...ranked.filter(isSame), ...ranked.filter((c) => !isSame(c))];
}

/** Beside the others; what comes by the reading alone neither waits for a signature nor meets anything. */
function mayStand(other: Candidate, others: readonly Candidate[], needs: readonly Need[], view: DraftView): boolean {
  const isByReading = needs.some(({ kind }) => kind === 'antimicrobial');
  if (isByReading && !mayComeByReading(other)) return false;
  return !findConflict(other, others, view, isByReading ? 'any' : 'never-both') && fitsDay(other, others, view.settings);
}

/** By the flavours noted; where one is not noted, only a pack without any flavour is surely another. */
function tastesOther(other: ShelfItem, than: ShelfItem): boolean {
  if (other.flavour !== undefined && than.flavour !== undefined) return tasteOf(other) !== tasteOf(than);
  return itemTraits(than).has('flavour') && !itemTraits(other).has('flavour');
}

/** The flavour by its name, where it is noted. */
function sayTaste(item: ShelfItem): string {
  if (item.flavour === undefined) return 'another taste';
  return tasteOf(item) === NO_FLAVOUR ? 'without flavour' : `another taste, ${item.flavour}`;
}

function stains({ item }: Candidate, { staining }: RegimenTables): boolean {
  const held = itemTraits(item);
  return staining.some(({ agentIds, traits }) => agentIds.includes(item.agentId) || traits.some((trait) => held.has(trait)));
}

const isLess = (a: number | null, b: number | null): boolean => a !== null && b !== null && a < b;
