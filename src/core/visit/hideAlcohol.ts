import type { AcidDay, DayEvent, EatingEvent, Food, Portion } from '../plaque/day/types.ts';
import { listReleased } from './privacy.ts';
import type { VisitInput } from './types.ts';

/** The private answer that speaks of alcohol. */
const ALCOHOL_ANSWER = 'drug-or-alcohol-misuse';

const WORDS =
  'alcohol|ale|beers?|bourbon|brandy|champagne|ciders?|cocktails?|cognac|gin|lager|liqueurs?|liquor|mojitos?|port|prosecco|rum|sangria|schnapps|sherry|spirits|stout|tequila|vermouth|vodka|whisk(?:e)?y|wines?|' +
  'aguardiente|brandi|cava|cervezas?|champán|cubatas?|ginebra|jerez|licor(?:es)?|ron|sangría|sidra|vermú|vinos?';
const TELLS = new RegExp(`(?<![\\p{L}])(?:${WORDS})(?![\\p{L}])`, 'iu');

const A_DRINK = { en: 'A drink', es: 'Una bebida' } as const;

interface HideInput {
  readonly foods: ReadonlyMap<string, Food>;
  readonly language?: keyof typeof A_DRINK;
}

/**
 * A day as anybody may read it: beer, wine and spirits are a drink, and an own word that may tell of them is left out. For showing only;
 * the model is asked about the day as it was told. The same events where nothing in them tells.
 */
export const hideAlcohol = (day: AcidDay, input: HideInput): AcidDay => ({
  ...day,
  events: day.events.map((event) => hideInEvent(event, input)),
});

export function hideInEvent(event: DayEvent, input: HideInput): DayEvent {
  if (event.kind !== 'eating') return tells(event.label) ? withoutLabel(event) : event;
  const hidden = event.portions.map((portion) => (isAlcohol(portion, input.foods) ? aDrink(portion, input) : portion));
  const isHidden = hidden.some((portion, i) => portion !== event.portions[i]);
  if (!isHidden && !tells(event.label)) return event;
  // "The sipped a drink" is no sentence, so how it was drunk goes with its name.
  const { sipped: _, ...rest } = withoutLabel(event) as EatingEvent;
  return { ...rest, portions: hidden };
}

/** Whether a professional put on this visit's leaflet that the person spoke of alcohol; then its names stand there too. */
export const isAlcoholReleased = (visit: VisitInput['visit']): boolean =>
  listReleased(visit).some(({ choices }) => choices.includes(ALCOHOL_ANSWER));

const tells = (words: string | undefined): boolean => words !== undefined && TELLS.test(words);

function isAlcohol(portion: Portion, foods: HideInput['foods']): boolean {
  if ('typed' in portion) return portion.typed.unit === 'mL' && tells(portion.typed.name);
  return foods.get(portion.food)?.isAlcohol === true;
}

function aDrink({ amount }: Portion, { language = 'en' }: HideInput): Portion {
  return { typed: { name: A_DRINK[language], unit: 'mL', sugarsGPer100: 0, retention: 'clears' }, amount };
}

function withoutLabel(event: DayEvent): DayEvent {
  const { label: _, ...rest } = event;
  return rest as DayEvent;
}
