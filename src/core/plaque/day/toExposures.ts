import type { Exposure } from '../types.ts';
import type { EatingNumbers } from './dayModel.ts';
import { type MixContext, mixPortions } from './mixPortions.ts';
import { nightSpans, type Span } from './nightSpans.ts';
import type { AcidDay, DayEvent, EatingEvent, Food, Portion } from './types.ts';

const UREA_MMOL_PER_G = 16.65;
const SHORTEST_MINUTES = 0.05;

/** A sip or a bite. */
interface Sip extends Span {
  readonly portions: readonly Portion[];
}

/**
 * What the mouth meets through the day, in order and without overlap, as `simulateDay` takes it. What is sipped becomes single sips; a sip
 * that falls into a meal is taken with it, one that falls into anything else is left out, since nobody sips while brushing.
 * @param day  checked before (`requireDay`)
 */
export function toExposures(day: AcidDay, context: MixContext): readonly Exposure[] {
  const fixed = day.events.filter((event) => !isSipped(event));
  const sips = day.events
    .filter(isEating)
    .filter(isSipped)
    .flatMap((event) => listSips(event, context));
  const meals = new Map(fixed.filter(isEating).map((event) => [event.id, [...event.portions]]));
  const free: Sip[] = [];
  for (const sip of sips.sort((a, b) => a.from - b.from)) {
    const beside = fixed.find((event) => event.startMinute < sip.to && endOf(event) > sip.from);
    if (beside) meals.get(beside.id)?.push(...sip.portions);
    else if (sip.from >= (free.at(-1)?.to ?? 0)) free.push(sip);
  }
  const awake = [
    ...fixed.filter(({ kind }) => kind !== 'nap').map((event) => toExposure(event, meals.get(event.id) ?? [], context)),
    ...free.map(({ from, to, portions }) => ({ startMinute: from, minutes: to - from, ...mixPortions(portions, to - from, context) })),
  ].sort((a, b) => a.startMinute - b.startMinute);
  const naps = fixed.filter(({ kind }) => kind === 'nap').map((event) => ({ from: event.startMinute, to: endOf(event) }));
  const asleep = [...nightSpans(day), ...naps].flatMap((span) => cutAround(span, awake));
  return [...awake, ...asleep.map(sleepExposure)].sort((a, b) => a.startMinute - b.startMinute);
}

const isEating = (event: DayEvent): event is EatingEvent => event.kind === 'eating';
const isSipped = (event: DayEvent): boolean => isEating(event) && event.sipped === true;
const endOf = ({ startMinute, minutes }: Pick<DayEvent, 'startMinute' | 'minutes'>): number => startMinute + minutes;

/** Evenly over the time, the first at its start, the last at its end, never closer than the least gap. */
function listSips(event: EatingEvent, { foods, eating }: MixContext): Sip[] {
  const isDrink = event.portions.every((portion) => unitOf(portion, foods) === 'mL');
  const amount = event.portions.reduce((total, portion) => total + portion.amount, 0);
  const sizeOfOne = isDrink ? eating.sipMl : eating.biteG;
  const minutes = Math.min(isDrink ? eating.sipMinutes : eating.biteMinutes, event.minutes);
  const most = 1 + Math.floor((event.minutes - minutes) / eating.leastGapMinutes);
  const count = Math.max(1, Math.min(Math.round(amount / sizeOfOne), most));
  const portions = event.portions.map((portion) => ({ ...portion, amount: portion.amount / count }));
  const gap = count === 1 ? 0 : (event.minutes - minutes) / (count - 1);
  return Array.from({ length: count }, (_, i) => {
    const from = event.startMinute + i * gap;
    return { from, to: Math.min(from + minutes, endOf(event)), portions };
  });
}

function unitOf(portion: Portion, foods: ReadonlyMap<string, Food>): Food['unit'] | undefined {
  return 'typed' in portion ? portion.typed.unit : foods.get(portion.food)?.unit;
}

function toExposure(event: DayEvent, portions: readonly Portion[], context: MixContext): Exposure {
  const { startMinute, minutes } = event;
  const at = { startMinute, minutes, hexoseMmolPerL: 0 };
  switch (event.kind) {
    case 'eating': {
      const mix = mixPortions(portions, minutes, context);
      return mix.kind === 'drinking' ? { ...at, ...mix, minutes: contactMinutes(portions, minutes, context) } : { ...at, ...mix };
    }
    case 'gum':
    case 'cheese':
      return { ...at, kind: 'chewing', flowMlPerMin: chewingFlow(event.kind, context.eating) };
    case 'water':
      return { ...at, kind: 'drinking' };
    case 'brushing':
      return { ...at, kind: 'brushing' };
    case 'nap':
      return { ...at, kind: 'sleep' };
    case 'rinse':
      return {
        ...at,
        kind: 'rinse',
        ...(event.rinse === 'alkaline' && { bicarbonateMmolPerL: event.bicarbonateMmolPerL }),
        ...(event.rinse === 'urea' && event.ureaPercent !== undefined && { ureaMmolPerL: 10 * event.ureaPercent * UREA_MMOL_PER_G }),
      };
  }
}

/** A drink taken at once fills the mouth for as long as its sips take together; between them it is swallowed. */
function contactMinutes(portions: readonly Portion[], minutes: number, { eating }: MixContext): number {
  const amountMl = portions.reduce((total, { amount }) => total + amount, 0);
  return Math.min(minutes, Math.max(1, amountMl / eating.sipMl) * eating.sipMinutes);
}

const chewingFlow = (kind: 'gum' | 'cheese', eating: EatingNumbers): number =>
  kind === 'gum' ? eating.gumFlowMlPerMin : eating.cheeseFlowMlPerMin;

/** What is left of a stretch between the exposures. */
function cutAround({ from, to }: Span, exposures: readonly Pick<Exposure, 'startMinute' | 'minutes'>[]): Span[] {
  const left: Span[] = [];
  let start = from;
  for (const exposure of exposures) {
    const end = exposure.startMinute + exposure.minutes;
    if (end <= start || exposure.startMinute >= to) continue;
    if (exposure.startMinute - start >= SHORTEST_MINUTES) left.push({ from: start, to: exposure.startMinute });
    start = Math.max(start, end);
  }
  if (to - start >= SHORTEST_MINUTES) left.push({ from: start, to });
  return left;
}

const sleepExposure = ({ from, to }: Span): Exposure => ({ kind: 'sleep', startMinute: from, minutes: to - from, hexoseMmolPerL: 0 });
