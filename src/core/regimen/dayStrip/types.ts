import type { SourceRef } from '../../visit/answer.ts';

/** How an item goes with the day: with brushing, at another time than brushing, after eating, or spread over the day. */
export type UseRhythm = 'brushing' | 'apart-from-brushing' | 'after-meals' | 'when-dry';

/** Something that is used at home, as far as its time of day depends on it. */
export interface TimedUse {
  readonly shelfItemId: string;
  /** Uses a day, 1 to 6; rarer ones are not on the strip. */
  readonly timesPerDay: number;
  readonly rhythm: UseRhythm;
  /** Can be used away from home: gum, lozenge, spray. */
  readonly isPortable: boolean;
  /** Nothing by mouth for so many minutes afterwards; 0 = no wait. */
  readonly waitMinutes: number;
}

/** Two items that are not used within so many minutes of each other, in either order. */
export interface ApartInTime {
  readonly pair: readonly [string, string];
  readonly minutes: number;
  readonly ruleId: string;
}

/** A meal that a usual day has; a leaflet has a word for each. */
export type MealId = 'breakfast' | 'midday' | 'evening' | 'first' | 'at-work' | 'last';

/** How a day runs, as far as one word tells it. `home`: nowhere for long. */
export const RHYTHM_IDS = ['home', 'school', 'work', 'early', 'late', 'night'] as const;
export type RhythmId = (typeof RHYTHM_IDS)[number];

/** One time of eating. */
export interface EatingTime {
  /** Minutes after midnight, 0 to 1439. */
  readonly startMinute: number;
  readonly minutes: number;
  readonly name: string;
  /** Absent = the person's own day: the name is her word. */
  readonly meal?: MealId | undefined;
  /** Acid minutes that it makes in the model; absent = not worked out: then every time of eating counts alike. */
  readonly acidMinutes?: number | undefined;
}

/** A person's day as far as the strip goes by it. The night may lie anywhere, so that shift work is a day like others. */
export interface DayRhythm {
  /** Minutes after midnight, 0 to 1439. */
  readonly upMinute: number;
  readonly bedMinute: number;
  readonly eating: readonly EatingTime[];
  /** At school or at work: only what can be used away from home. Minutes after midnight; may cross midnight. */
  readonly away?: { readonly fromMinute: number; readonly toMinute: number } | undefined;
  /** Told by the person; the usual times of a rhythm that she named; or a usual day that nobody asked about. */
  readonly basis: 'told' | 'named' | 'usual';
  /** Which rhythm was named, or is taken for usual. Absent = told. */
  readonly rhythm?: RhythmId | undefined;
  /** When it was named, where that was at an earlier visit; a usual day says with it that the answer is out of date. */
  readonly askedOn?: string | undefined;
}

/** One use at its time. */
export interface PlacedUse {
  readonly shelfItemId: string;
  /** Minutes after midnight. */
  readonly minute: number;
  /** Nothing by mouth until then; null where there is no wait, or sleep covers it. */
  readonly nothingUntil: number | null;
  /** The time of eating that it follows, where that is why it stands here. */
  readonly after?: string | undefined;
}

export interface UnplacedUse {
  readonly shelfItemId: string;
  /** How many of its uses found no time. */
  readonly times: number;
  readonly because: string;
}

/** What to use when, over one day from getting up to bed. */
export interface DayStrip {
  readonly rhythm: DayRhythm;
  /** In the order of the day. */
  readonly placed: readonly PlacedUse[];
  readonly notPlaced: readonly UnplacedUse[];
}

/** Minutes that the placing goes by, each with where it is from. */
export interface StripTimes {
  /** Gum, lozenge or rinse follows eating by so much. */
  readonly afterEating: { readonly earliest: number; readonly latest: number; readonly source: SourceRef };
  /** At least so long between two uses of one item. */
  readonly between: { readonly minutes: number; readonly source: SourceRef };
  /** Something that is to be used at another time than brushing. */
  readonly fromBrushing: { readonly minutes: number; readonly source: SourceRef };
}
