import type { AcidDayResult } from '../core/plaque/day/assessAcidDay.ts';
import { sayEvent, sayGain, sayMove } from '../core/plaque/day/sayDay.ts';
import type { AcidDay, Food } from '../core/plaque/day/types.ts';

const CHANGES_SHOWN = 8;

/** A worked-out day as a page to read. */
export function dayText(day: AcidDay, result: AcidDayResult, foods: ReadonlyMap<string, Food>): string {
  const { sentences, limits, band } = result;
  const nameOf = (id: string) => {
    const event = day.events.find((one) => one.id === id);
    return event ? sayEvent(event, foods) : id;
  };
  return [
    ...(day.label === undefined ? [] : [day.label, '']),
    sentences.headline,
    ...(sentences.change === undefined ? [] : [sentences.change]),
    sentences.caution,
    '',
    `Minutes under each line, with the band of ${band.samples} draws of the less certain numbers:`,
    ...result.minutesBelow.map(
      ({ line, minutes, low, high }) => `  ${minutes.toFixed(0).padStart(5)}  (${low.toFixed(0)} to ${high.toFixed(0)})  ${line.says}`,
    ),
    '',
    'Each event: lowest pH and when, back near rest, and what it costs in minutes on the acid side:',
    ...result.events.map(({ eventId, lowestPh, lowestAtMinute, backAtMinute }) => {
      const cost = result.costs.find((one) => one.eventId === eventId)?.minutes ?? 0;
      const back = backAtMinute === null ? 'not before the next' : `back ${clock(backAtMinute)}`;
      return `  ${nameOf(eventId)}: ${lowestPh.toFixed(1)} at ${clock(lowestAtMinute)}, ${back}, ${cost.toFixed(0)} min`;
    }),
    '',
    ...(limits.food.allowed === 'any' ? [] : [`Food: nothing is suggested, because ${limits.food.because}.`]),
    ...(limits.gum.allowed ? [] : [`Gum: nothing is suggested, because ${limits.gum.because}.`]),
    ...result.gains.slice(0, CHANGES_SHOWN).map((gain) => `  ${saidMoves(gain.moves)}: ${sayGain(gain)}`),
    ...result.together.map((gain) => `  ${saidMoves(gain.moves)} (${gain.found}): ${sayGain(gain)}`),
    ...limits.gum.warnings.filter(() => limits.gum.allowed),
    '',
    `Without unit, 1 is a reference day: loss ${result.mineral.loss.toFixed(2)}, gain ${result.mineral.gain.toFixed(2)}. They are no amounts of mineral.`,
    ...result.notCounted,
  ].join('\n');

  function saidMoves(moves: AcidDayResult['gains'][number]['moves']): string {
    return moves.map((move) => sayMove(move, day, foods)).join('; ');
  }
}

function clock(minute: number): string {
  const whole = Math.round(minute);
  return `${String(Math.floor(whole / 60)).padStart(2, '0')}:${String(whole % 60).padStart(2, '0')}`;
}
