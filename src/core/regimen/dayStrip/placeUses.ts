import { awakeMinutes, onClock } from './dayMinutes.ts';
import { listSlots, type Slot } from './listSlots.ts';
import type { ApartInTime, DayRhythm, DayStrip, PlacedUse, StripTimes, TimedUse, UnplacedUse } from './types.ts';

export interface PlaceUsesInput {
  readonly uses: readonly TimedUse[];
  readonly apart: readonly ApartInTime[];
  readonly rhythm: DayRhythm;
  readonly times: StripTimes;
}

interface Placed {
  readonly use: TimedUse;
  readonly slot: Slot;
}

interface Best {
  readonly placed: readonly Placed[];
  readonly missing: number;
  readonly cost: number;
}

/** Uses of one item in a day. */
export const MOST_TIMES = 6;
/** Partial days that are looked into before the best one so far is taken; reached only by days nobody can keep. */
const MOST_STEPS = 20_000;

/**
 * What to use when: as many uses as the day holds, then the least cost (bed and morning for brushing, after what makes most acid for gum and
 * rinse, evenly spread for the rest). No use falls into sleep, eating, the wait of another, or within the minutes that a pair is kept apart.
 * The same input gives the same day, in whatever order the uses come.
 * @param input.uses  1 to 6 uses a day each; rarer or none are left out
 * @throws RangeError naming the field when a time lies outside its range
 */
export function placeUses(input: PlaceUsesInput): DayStrip {
  checkInput(input);
  const uses = input.uses
    .filter((u) => u.timesPerDay >= 1)
    .sort((a, b) => b.waitMinutes - a.waitMinutes || a.shelfItemId.localeCompare(b.shelfItemId, 'en'));
  const wanted = uses.flatMap((use) => Array.from({ length: Math.floor(use.timesPerDay) }, () => use));
  const slots = new Map(uses.map((use) => [use.shelfItemId, listSlots(use, input.rhythm, input.times)]));
  const best = search(wanted, slots, input);
  return {
    rhythm: input.rhythm,
    placed: best.placed
      .map((p) => ({ ...sayPlaced(p, input.rhythm), since: p.slot.since }))
      .sort((a, b) => a.since - b.since || a.shelfItemId.localeCompare(b.shelfItemId, 'en'))
      .map(({ since: _, ...placed }) => placed),
    notPlaced: uses.flatMap((use) => findUnplaced(use, best, slots)),
  };
}

function checkInput({ uses, rhythm }: PlaceUsesInput): void {
  const clock = { upMinute: rhythm.upMinute, bedMinute: rhythm.bedMinute };
  for (const [name, minute] of Object.entries(clock)) requireClock(name, minute);
  rhythm.eating.forEach(({ startMinute, minutes }, i) => {
    requireClock(`eating.${i}.startMinute`, startMinute);
    if (!(minutes >= 0 && minutes <= 1440)) throw new RangeError(`eating.${i}.minutes must be 0 to 1440: ${minutes}`);
  });
  for (const { shelfItemId, timesPerDay, waitMinutes } of uses) {
    if (!(timesPerDay >= 0 && timesPerDay <= MOST_TIMES))
      throw new RangeError(`timesPerDay of ${shelfItemId} must be 0 to ${MOST_TIMES}: ${timesPerDay}`);
    if (!(waitMinutes >= 0)) throw new RangeError(`waitMinutes of ${shelfItemId} must be 0 or more: ${waitMinutes}`);
  }
}

function requireClock(name: string, minute: number): void {
  if (!(Number.isInteger(minute) && minute >= 0 && minute < 1440)) throw new RangeError(`${name} must be 0 to 1439: ${minute}`);
}

/** Depth first over the wanted uses; a branch ends where even the cheapest slots for the rest cannot better the best day found. */
function search(wanted: readonly TimedUse[], slots: ReadonlyMap<string, readonly Slot[]>, input: PlaceUsesInput): Best {
  const least = leastForRest(wanted, slots);
  let best: Best = { placed: [], missing: Number.POSITIVE_INFINITY, cost: Number.POSITIVE_INFINITY };
  let steps = 0;
  const visit = (i: number, placed: readonly Placed[], missing: number, cost: number): void => {
    steps += 1;
    const rest = least[i] ?? { missing: 0, cost: 0 };
    if (!isBetter({ missing: missing + rest.missing, cost: cost + rest.cost }, best) || steps > MOST_STEPS) return;
    const use = wanted[i];
    if (!use) {
      best = { placed, missing, cost };
      return;
    }
    for (const next of rankSlots(use, placed, slots, input)) visit(i + 1, [...placed, { use, slot: next.slot }], missing, cost + next.cost);
    visit(i + 1, placed, missing + 1, cost);
  };
  visit(0, [], 0, 0);
  return best;
}

/** What the wanted uses from each on must cost at least: nothing is missing that has any time, and every time is the cheapest. */
function leastForRest(wanted: readonly TimedUse[], slots: ReadonlyMap<string, readonly Slot[]>): readonly Pick<Best, 'missing' | 'cost'>[] {
  const rests: Pick<Best, 'missing' | 'cost'>[] = [{ missing: 0, cost: 0 }];
  for (const use of wanted.toReversed()) {
    const [cheapest] = slots.get(use.shelfItemId) ?? [];
    const rest = rests[0] ?? { missing: 0, cost: 0 };
    rests.unshift(cheapest ? { ...rest, cost: rest.cost + cheapest.cost } : { ...rest, missing: rest.missing + 1 });
  }
  return rests;
}

/** Times still open to a use beside what is placed, cheapest first. */
function rankSlots(
  use: TimedUse,
  placed: readonly Placed[],
  slots: ReadonlyMap<string, readonly Slot[]>,
  input: PlaceUsesInput,
): readonly { readonly slot: Slot; readonly cost: number }[] {
  const before = placed.filter((p) => p.use === use);
  return (slots.get(use.shelfItemId) ?? [])
    .filter((slot) => isInTurn(slot, before, use) && placed.every((p) => mayFollow({ use, slot }, p, input)))
    .map((slot) => ({ slot, cost: slot.cost + crowding(slot, before, use, input) }))
    .sort((a, b) => a.cost - b.cost || a.slot.since - b.slot.since);
}

/** Uses of one item are alike: each set of times is looked at in one order only, dearest last. Spread uses take turns by the clock. */
function isInTurn({ since, cost }: Slot, before: readonly Placed[], { rhythm }: TimedUse): boolean {
  const last = before.at(-1)?.slot;
  if (!last) return true;
  if (rhythm === 'brushing' || rhythm === 'after-meals') return cost > last.cost || (cost === last.cost && since > last.since);
  return since > last.since;
}

const isBetter = (a: Pick<Best, 'missing' | 'cost'>, b: Pick<Best, 'missing' | 'cost'>): boolean =>
  a.missing < b.missing || (a.missing === b.missing && a.cost < b.cost - 1e-9);

/** Uses of one item that are spread over the day cost by how far they are from even gaps. */
function crowding({ since }: Slot, before: readonly Placed[], { rhythm: kind, timesPerDay }: TimedUse, { rhythm }: PlaceUsesInput): number {
  if (kind === 'brushing' || kind === 'after-meals') return 0;
  const awake = awakeMinutes(rhythm);
  const wish = (awake * (before.length + 1)) / (Math.floor(timesPerDay) + 1);
  return Math.abs(since - wish) / awake;
}

/** Whether two uses may stand in one day at these times. */
function mayFollow(a: Placed, b: Placed, { apart, times }: PlaceUsesInput): boolean {
  const gap = Math.abs(a.slot.since - b.slot.since);
  const [first, second] = a.slot.since <= b.slot.since ? [a, b] : [b, a];
  if (a.use === b.use) return gap >= times.between.minutes;
  if (gap < Math.max(first.use.waitMinutes, gap === 0 ? second.use.waitMinutes : 0)) return false;
  if (isBrushingAndApart(a.use, b.use) && gap < times.fromBrushing.minutes) return false;
  return apart.every(({ pair, minutes }) => !isPair(pair, a, b) || gap >= minutes);
}

const isBrushingAndApart = (a: TimedUse, b: TimedUse): boolean =>
  [a.rhythm, b.rhythm].includes('brushing') && [a.rhythm, b.rhythm].includes('apart-from-brushing');

const isPair = ([x, y]: ApartInTime['pair'], a: Placed, b: Placed): boolean =>
  (a.use.shelfItemId === x && b.use.shelfItemId === y) || (a.use.shelfItemId === y && b.use.shelfItemId === x);

function sayPlaced({ use, slot }: Placed, rhythm: DayRhythm): PlacedUse {
  const end = slot.since + use.waitMinutes;
  const isNeeded = use.waitMinutes > 0 && slot.since < awakeMinutes(rhythm) - use.waitMinutes;
  return {
    shelfItemId: use.shelfItemId,
    minute: onClock(slot.since, rhythm),
    nothingUntil: isNeeded ? onClock(end, rhythm) : null,
    ...(slot.after === undefined ? {} : { after: slot.after }),
  };
}

function findUnplaced(use: TimedUse, { placed }: Best, slots: ReadonlyMap<string, readonly Slot[]>): UnplacedUse[] {
  const times = Math.floor(use.timesPerDay) - placed.filter((p) => p.use === use).length;
  if (times === 0) return [];
  const hasSlot = (slots.get(use.shelfItemId) ?? []).length > 0;
  const because = hasSlot
    ? 'no other time of this day keeps it apart from eating, from its own uses and from the rest'
    : 'no time of this day is awake, at home and free of eating for long enough';
  return [{ shelfItemId: use.shelfItemId, times, because }];
}
