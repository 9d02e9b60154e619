import type { AcidDay, Food } from './types.ts';

const STARCHY_FROM_G_PER_100 = 10;

/** What of this day the model leaves out, in sentences; unknown and not counted are never passed over. */
export function listNotCounted(day: AcidDay, foods: ReadonlyMap<string, Food>): readonly string[] {
  const portions = day.events.flatMap((event) => (event.kind === 'eating' ? event.portions : []));
  const known = portions.flatMap((portion) => ('food' in portion ? (foods.get(portion.food) ?? []) : []));
  const typed = portions.flatMap((portion) => ('typed' in portion ? portion.typed : []));
  const starchy = named(known.filter(({ starchGPer100 }) => starchGPer100 >= STARCHY_FROM_G_PER_100));
  const sour = named(known.filter(({ unit, acid, sugarsGPer100 }) => unit === 'mL' && acid === undefined && sugarsGPer100 > 0));
  const has = (kind: string) => day.events.some((event) => event.kind === kind);
  return [
    ...(starchy === '' ? [] : [`Starch is not in the model: ${starchy}.`]),
    ...(sour === '' ? [] : [`No acid of their own is counted for: ${sour}.`]),
    ...(typed.some(({ unit, pH }) => unit === 'mL' && pH === undefined) ? ['The pH of a typed drink is not known and not counted.'] : []),
    ...(has('brushing') ? ['Brushing takes food away; the plaque looked at is where the brush does not reach.'] : []),
    ...(day.events.some((event) => event.kind === 'rinse' && event.rinse === 'fluoride') || has('brushing')
      ? ['That fluoride slows the making of acid is not in the model.']
      : []),
    ...(has('cheese') ? ['Of cheese only the chewing is counted, not its calcium.'] : []),
  ];
}

const named = (foods: readonly Food[]): string => [...new Set(foods.map(({ name }) => name.en.toLowerCase()))].join('; ');
