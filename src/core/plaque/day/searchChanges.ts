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
  /** Every pair of moves of two events was tried; the best few. */
  readonly twos: readonly DayChange[];
  /** Built on the best pair, then every one of its moves exchanged for every other until none helps: not every three were tried. */
  readonly three: DayChange | undefined;
}

export interface SearchContext extends MoveContext {
  readonly model: DayModel;
  readonly linePh: number;
  /** How many moves together, at most. */
  readonly most: 1 | 2 | 3;
  /** pH; 0.02 when absent. */
  readonly tolerancePh?: number | undefined;
}

/** How far a search is, for whoever waits for it. */
export interface SearchProgress {
  readonly tried: number;
  readonly of: number;
}

const PAIRS_KEPT = 5;
const SEARCH_TOLERANCE_PH = 0.02;
/** Minutes by which an exchange must help: less is the error of the solver. */
const LEAST_HELP_MINUTES = 0.5;
const MOST_ROUNDS = 5;

/**
 * Looks for the changes that leave the fewest minutes on the acid side: all single moves, all pairs, and for three the best pair widened and
 * rechecked. Gives control back after every day that it works out, so that a worker can stop or tell how far it is.
 * Only moves that `listMoves` allows are ever tried, alone or together.
 */
export function* searchChanges(day: AcidDay, context: SearchContext): Generator<SearchProgress, ChangeSearch> {
  const attempt = buildAttempt(day, context);
  const moves = listMoves(day, context);
  const pairs = context.most < 2 ? [] : pairsOf(moves).filter((pair) => isPossible(day, pair, context.foods));
  const all = moves.length + pairs.length;
  const ones: DayChange[] = [];
  const twos: DayChange[] = [];
  for (const move of moves) {
    ones.push(attempt([move]));
    yield { tried: ones.length, of: all };
  }
  for (const pair of pairs) {
    twos.push(attempt(pair));
    yield { tried: ones.length + twos.length, of: all };
  }
  ones.sort(byMinutes);
  twos.sort(byMinutes);
  const [best] = twos;
  const three = context.most < 3 || !best ? undefined : yield* widen(day, best, moves, { attempt, context, all });
  return { minutesNow: attempt([]).minutes, ones, twos: twos.slice(0, PAIRS_KEPT), three };
}

type Attempt = (moves: readonly DayMove[]) => DayChange;

/** Days that begin alike are worked out from where they part. */
function buildAttempt(day: AcidDay, { model, foods, linePh, tolerancePh = SEARCH_TOLERANCE_PH }: SearchContext): Attempt {
  const now: DayCurve = runDay(day, model, foods, { tolerancePh });
  return (moves) => ({
    moves,
    minutes: minutesBelow(moves.length === 0 ? now : runDay(applyMoves(day, moves), model, foods, { tolerancePh, previous: now }), linePh),
  });
}

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
  { attempt, context, all }: { readonly attempt: Attempt; readonly context: SearchContext; readonly all: number },
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
