import { type I18n, setupI18n } from '@lingui/core';
import { compileMessage } from '@lingui/message-utils/compileMessage';
import { keepByKey } from '../keep/keepByKey.ts';
import { keepByTable } from '../keep/keepByTable.ts';
import type { MealId, RhythmId } from '../regimen/dayStrip/types.ts';
import type { ShelfItem } from '../regimen/types.ts';
import type { DaySlot, Leaflet, StripWords } from './types.ts';

/** Messages of one language by their ids, as a translator writes them: ICU, with places to fill and plurals. */
export type Catalog = Readonly<Record<string, string>>;

/** What stands in a catalog. Cautions, goals, advice and private choices go by ids of their own tables. */
export type MessageId =
  | `label.${keyof Leaflet['labels']}`
  | `slot.${DaySlot}`
  | `strip.${keyof StripWords}`
  | `form.${ShelfItem['form']}`
  | `tick.${'up' | 'bed' | 'school' | 'work'}`
  | `meal.${MealId}`
  | `time.${'up' | 'bed' | 'between' | `after-${MealId}`}`
  | `rhythm.${RhythmId}`
  | `uses.${'assumed' | 'named' | 'told' | 'waits'}`
  | `extra.${'again' | 'adultWatches' | 'wait' | 'seconds' | 'oneMinute' | 'timesADay' | 'courseDays'}`
  | `amount.${'smear' | 'pea' | 'ribbon' | 'ribbonOneToTwo' | 'mL' | 'pieces'}`
  | `cost.${'about' | 'atLeast'}`
  | `next.${'about' | 'ask' | 'firstTooth'}`
  | `call.${'us' | 'emergency'}`
  | `${'use' | 'goal' | 'caution' | 'advice' | 'private'}.${string}`
  | `keep${'Brushing' | 'BrushingWithFluoride' | 'Up' | 'UpForChild'}`
  | `title${'' | 'WithoutTeeth'}`
  | `signed${'' | 'OnOrder'}`
  | `foot${'' | 'Pages'}`
  | 'startWith'
  | 'forHome'
  | 'who.grownUp'
  | 'askBeforeFood'
  | 'demoNotice'
  | 'corrected'
  | 'review';

export type Say = (id: MessageId, values?: Readonly<Record<string, string | number>>) => string;

/**
 * Says the messages of a catalog with their places filled in: numbers and plurals by the rules of the locale.
 * @throws RangeError for a message that the catalog does not have, and for a place without a value, so that no gap is ever printed
 */
export function sayIn(catalog: Catalog, locale: string): Say {
  return sayers(catalog)(locale);
}

const sayers = keepByTable((catalog: Catalog) =>
  keepByKey((locale: string): Say => {
    const messages = setupI18n({ locale, locales: [locale], messages: { [locale]: catalog } }).setMessagesCompiler(compileMessage);
    return (id, values = {}) => sayOne(messages, catalog, id, values);
  }),
);

function sayOne(messages: I18n, catalog: Catalog, id: MessageId, values: Parameters<Say>[1] & object): string {
  const message = Object.hasOwn(catalog, id) ? catalog[id] : undefined;
  if (message === undefined) throw new RangeError(`no words for ${id.replace('.', ' ')}`);
  // Most messages have nothing to fill in: the words are taken as they stand.
  if (!message.includes('{')) return message;
  for (const place of placesOf(message)) {
    if (values[place] === undefined) throw new RangeError(`no value for {${place}} in: ${message}`);
  }
  return messages._(id, { ...values });
}

/** Names of the places of a message: `{item}`, `{n, plural, …}`. Nested ones count once. */
export const placesOf = keepByKey((message: string): readonly string[] => {
  let depth = 0;
  const places = [...message.matchAll(/\{(\w*)|\}/g)].flatMap(([brace, name]) => {
    if (brace === '}') depth -= 1;
    // A brace within a plural opens a text; one within that text is a place again.
    else if (depth++ % 2 === 0 && name) return [name];
    return [];
  });
  return [...new Set(places)];
});
