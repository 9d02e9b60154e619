import { type DayLanguage, dayWords, fillWords } from './dayWords.ts';
import type { DayEvent, Food } from './types.ts';

/** Names of the events of ready-made days in every language, by the id of the event. */
export type EventNames = Readonly<Record<string, Food['name']>>;

export interface NamingContext {
  readonly foods: ReadonlyMap<string, Food>;
  readonly language: DayLanguage;
  readonly names: EventNames;
}

/** The person's own word for an event, or what was taken, as it stands inside a sentence. */
export function nameOfEvent(event: DayEvent, { foods, language, names }: NamingContext): string {
  const said = inSentence(labelOfEvent(event, language, names));
  if (event.kind !== 'eating') return said || event.kind;
  const words = dayWords[language];
  const taken = event.portions.map((portion) =>
    'typed' in portion ? portion.typed.name : (foods.get(portion.food)?.name[language] ?? portion.food),
  );
  const [first = '', ...rest] = taken;
  const name = said || (rest.length > 0 ? fillWords(words.andMore, inSentence(first)) : inSentence(first));
  return event.sipped ? fillWords(words.sipped, name) : name;
}

/** What stands on the event: her own word as it is, the word of a ready-made day in the language asked for; '' where there is none. */
export function labelOfEvent({ id, label }: DayEvent, language: DayLanguage, names: EventNames): string {
  const own = label?.trim() ?? '';
  const ready = names[id];
  return ready !== undefined && own === ready.en ? ready[language] : own;
}

/** A name inside a sentence; one that is written in capitals keeps them. */
export const inSentence = (name: string): string => (/^\p{Lu}{2}/u.test(name) ? name : name.charAt(0).toLowerCase() + name.slice(1));
