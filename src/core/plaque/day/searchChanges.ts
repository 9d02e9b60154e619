import { minutesBelow } from '../model/readCurve.ts';
import type { DayCurve } from '../types.ts';
import type { DayModel } from './dayModel.ts';
import { applyMoves, type DayMove, moveKey } from './dayMoves.ts';
import { isPossible, listMoves, type MoveContext } from './listMoves.ts';
import { runDay } from './runDay.ts';
import type { AcidDay } from './types.ts';

/** Some moves together, and the minutes on the acid side that are then left, by the usual values. */
export interface DayChange {
  readonly moves: readonly DayMove[];
  readonly minutes: number;
}

/** Best first. Each list was found as its name says. */
export interface ChangeSearch {
  /** Minutes of the day as it is. */
  readonly minutesNow: number;
  /** Every single move. */
  readonly ones: readonly DayChange[];
  /** Pairs of moves of two events; the best few. */
  readonly twos: readonly DayChange[];
  /** Every pair was tried; or, where there are very many moves, only those of the best single ones. */
  readonly twosOf: 'every-pair' | 'best-moves';
  /** Built on the best pair, then every one of its moves exchanged for every other until none helps: not every three were tried. */
  readonly three: DayChange | undefined;
}

export interface SearchContext extends MoveContext {
  readonly model: DayModel;
  readonly linePh: number;
  /** How many moves together, at most. */
  readonly most: 1 | 2 | 3;
  /** Of how many single moves, the best ones, pairs are made at most; 24 when absent. */
  readonly mostPaired?: number | undefined;
  /** pH; 0.02 when absent. */
  readonly tolerancePh?: number | undefined;
}

/** How far a search is, for whoever waits for it. */
export interface SearchProgress {
  readonly tried: number;
  readonly of: number;
}

const PAIRS_KEPT = 5;
/** 276 pairs at most, two seconds. A diary full of snacks may have a hundred moves. */
const MOST_PAIRED = 24;
const SEARCH_TOLERANCE_PH = 0.02;
/** Minutes by which an exchange must help: less is the error of the solver. */
const LEAST_HELP_MINUTES = 0.5;
const MOST_ROUNDS = 5;

/**
 * Looks for the changes that leave the fewest minutes on the acid side: all single moves, all pairs (of the best moves, where there are
 * very many), and for three the best pair widened and rechecked. Gives control back after every day that it works out, so that a worker can stop or tell how far it is.
 * Only moves that `listMoves` allows are ever tried, alone or together.
 */
export function* searchChanges(day: AcidDay, context: SearchContext): Generator<SearchProgress, ChangeSearch> {
  const { mostPaired = MOST_PAIRED } = context;
  const { minutesNow, attempt } = buildAttempts(day, context);
  const moves = listMoves(day, context);
  const ones: DayChange[] = [];
  for (const move of moves) {
    ones.push(attempt([move]));
    yield { tried: ones.length, of: moves.length };
  }
  ones.sort(byMinutes);
  const isEvery = moves.length <= mostPaired;
  const paired = isEvery ? moves : ones.slice(0, mostPaired).flatMap((one) => one.moves);
  const pairs = context.most < 2 ? [] : pairsOf(paired).filter((pair) => isPossible(day, pair, context.foods));
  const all = moves.length + pairs.length;
  const twos: DayChange[] = [];
  for (const pair of pairs) {
    twos.push(attempt(pair));
    yield { tried: ones.length + twos.length, of: all };
  }
  twos.sort(byMinutes);
  const [best] = twos;
  const three = context.most < 3 || !best ? undefined : yield* widen(day, best, paired, { attempt, context, all });
  return { minutesNow, ones, twos: twos.slice(0, PAIRS_KEPT), twosOf: isEvery ? 'every-pair' : 'best-moves', three };
}

interface Attempts {
  readonly minutesNow: number;
  readonly attempt: (moves: readonly DayMove[]) => DayChange;
}

/**
 * Days that begin alike are worked out from where they part: a single move from the day as it is, several from the first of them alone.
 * Found are the same minutes, to the last bit, as from the beginning.
 */
function buildAttempts(day: AcidDay, { model, foods, linePh, tolerancePh = SEARCH_TOLERANCE_PH }: SearchContext): Attempts {
  const now = runDay(day, model, foods, { tolerancePh });
  const alone = new Map<string, DayCurve>();
  const begins = (move: DayMove) => Math.min(...day.events.filter(({ id }) => isOf(move, id)).map(({ startMinute }) => startMinute));
  const runFrom = (moves: readonly DayMove[], previous: DayCurve) =>
    runDay(applyMoves(day, moves), model, foods, { tolerancePh, previous });
  const runAlone = (move: DayMove): DayCurve => {
    const curve = alone.get(moveKey(move)) ?? runFrom([move], now);
    alone.set(moveKey(move), curve);
    return curve;
  };
  return {
    minutesNow: minutesBelow(now, linePh),
    attempt: (moves) => {
      const [first] = [...moves].sort((a, b) => begins(a) - begins(b));
      const curve = !first ? now : moves.length === 1 ? runAlone(first) : runFrom(moves, runAlone(first));
      return { moves, minutes: minutesBelow(curve, linePh) };
    },
  };
}

const isOf = (move: DayMove, id: string): boolean => id === move.eventId || (move.kind === 'join' && id === move.mealId);

const byMinutes = (a: DayChange, b: DayChange): number => a.minutes - b.minutes || keyOf(a).localeCompare(keyOf(b), 'en');
const keyOf = ({ moves }: DayChange): string => moves.map(moveKey).sort().join(', ');

/** Moves of two different events. */
function pairsOf(moves: readonly DayMove[]): (readonly [DayMove, DayMove])[] {
  return moves.flatMap((first, i) =>
    moves
      .slice(i + 1)
      .filter((second) => second.eventId !== first.eventId)
      .map((second) => [first, second] as const),
  );
}

function* widen(
  day: AcidDay,
  pair: DayChange,
  moves: readonly DayMove[],
  { attempt, context, all }: { readonly attempt: Attempts['attempt']; readonly context: SearchContext; readonly all: number },
): Generator<SearchProgress, DayChange | undefined> {
  let tried = all;
  let best: DayChange | undefined;
  const fits = (kept: readonly DayMove[], move: DayMove) =>
    kept.every(({ eventId }) => eventId !== move.eventId) && isPossible(day, [...kept, move], context.foods);
  const tryAll = function* (kept: readonly DayMove[]): Generator<SearchProgress, boolean> {
    let helped = false;
    for (const move of moves.filter((one) => fits(kept, one))) {
      const change = attempt([...kept, move]);
      tried += 1;
      if (!best || change.minutes < best.minutes - LEAST_HELP_MINUTES) {
        best = change;
        helped = true;
      }
      yield { tried, of: Math.max(all, tried) };
    }
    return helped;
  };
  yield* tryAll(pair.moves);
  for (let round = 0; round < MOST_ROUNDS && best; round += 1) {
    let helped = false;
    for (const out of best.moves) helped = (yield* tryAll(best.moves.filter((move) => move !== out))) || helped;
    if (!helped) break;
  }
  return best;
}

/** Runs a search to its end. */
export function finish<P, R>(search: Generator<P, R>): R {
  for (;;) {
    const step = search.next();
    if (step.done) return step.value;
  }
}
