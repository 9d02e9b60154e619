import type { SourceRef } from '../../visit/answer.ts';

/**
 * How long what was eaten stays in the mouth. `clears`: gone with the swallow, as drinks are. `lingers`: some stays between the teeth
 * for minutes. `sticks`: is dissolved slowly.
 */
export type Retention = 'clears' | 'lingers' | 'sticks';

/** What a drink or food does besides its sugar. */
export interface AcidOfFood {
  readonly pH: number;
  /** mmol of alkali that a litre takes up to pH 7 or near it; absent = not known, and then only the pH is counted. */
  readonly titratableMmolPerL?: number | undefined;
  readonly source: SourceRef;
}

/** One row of the table of foods. Sugars are published; how it is eaten is our proposal. */
export interface Food {
  readonly id: string;
  readonly name: Readonly<Record<'en' | 'es', string>>;
  /** Other words by which it is looked up, English and Spanish together. */
  readonly words?: string | undefined;
  /** Drinks are measured in mL and counted as 1 g/mL. */
  readonly unit: 'g' | 'mL';
  readonly sugarsGPer100: number;
  /** Carbohydrate that is neither sugar nor fibre. The plaque model does not count it. */
  readonly starchGPer100: number;
  readonly waterGPer100: number;
  /** The sugars are those of milk, which plaque ferments slowly. */
  readonly isMilkSugar?: true | undefined;
  /** Milk, or drunk in its place: what a young child may be fed with. */
  readonly isMilk?: true | undefined;
  /** Private with alcohol: named only where private matters may be seen. */
  readonly isAlcohol?: true | undefined;
  readonly retention: Retention;
  readonly usualAmount: number;
  readonly usualMinutes: number;
  readonly acid?: AcidOfFood | undefined;
  /** Where the sugars come from; its note gives the row. */
  readonly source: SourceRef;
}

/** What is not in the table, as read from a label. */
export interface TypedFood {
  readonly name: string;
  readonly unit: 'g' | 'mL';
  /** g in 100 g or 100 mL, 0 to 100. */
  readonly sugarsGPer100: number;
  readonly retention: Retention;
  /** 2 to 12; absent = not known, nothing is counted. */
  readonly pH?: number | undefined;
}

/** A food or drink and how much of it, in g or mL as its row says. */
export type Portion = { readonly food: string; readonly amount: number } | { readonly typed: TypedFood; readonly amount: number };

interface EventBase {
  /** Names the event within its day. */
  readonly id: string;
  /** The person's own word: "lunch", "cola at the desk". */
  readonly label?: string | undefined;
  /** Minutes after midnight, 0 to 1439. */
  readonly startMinute: number;
  /** How long it lasts. It ends by midnight: what goes on after is an event of its own from 0. */
  readonly minutes: number;
  /** The person will not change this one: no suggestion touches it. */
  readonly keep?: true | undefined;
}

/** Eating and drinking: everything that is taken together. */
export interface EatingEvent extends EventBase {
  readonly kind: 'eating';
  readonly occasion: 'meal' | 'between-meals';
  readonly portions: readonly Portion[];
  /** Taken in small amounts over the whole time, beside other things: the only events that others may overlap. */
  readonly sipped?: true | undefined;
  /** From a baby's bottle or a lidded cup. */
  readonly inBottleOrCup?: true | undefined;
}

export interface GumEvent extends EventBase {
  /** Without sugar. Gum with sugar is food. */
  readonly kind: 'gum';
}

export interface CheeseEvent extends EventBase {
  /** A piece of hard cheese at the end of eating. */
  readonly kind: 'cheese';
}

export interface WaterEvent extends EventBase {
  readonly kind: 'water';
}

export interface BrushingEvent extends EventBase {
  readonly kind: 'brushing';
  /** ppm F of the paste; absent = not known, nothing is counted. */
  readonly fluoridePpm?: number | undefined;
}

export interface RinseEvent extends EventBase {
  readonly kind: 'rinse';
  readonly rinse: 'fluoride' | 'alkaline' | 'urea';
  /** ppm F; absent = not known. */
  readonly fluoridePpm?: number | undefined;
  /** mmol/L; needed for an alkaline rinse. */
  readonly bicarbonateMmolPerL?: number | undefined;
  /** g in 100 mL; needed for a urea rinse. */
  readonly ureaPercent?: number | undefined;
}

/** Sleep besides the night. */
export interface NapEvent extends EventBase {
  readonly kind: 'nap';
}

/** One thing that the person did. */
export type DayEvent = EatingEvent | GumEvent | CheeseEvent | WaterEvent | BrushingEvent | RinseEvent | NapEvent;
export type DayEventKind = DayEvent['kind'];

/** A usual day from midnight to midnight, as told or written down. */
export interface AcidDay {
  readonly label?: string | undefined;
  /** Minutes after midnight, 0 to 1439. Between `sleepMinute` and `wakeMinute` she sleeps, over midnight or not. */
  readonly wakeMinute: number;
  readonly sleepMinute: number;
  readonly events: readonly DayEvent[];
}

/** What is wrong with one field of a day; the path begins at the day: "events.3.minutes". */
export interface DayProblem {
  readonly path: string;
  /** The end of a sentence that the path begins, with the allowed range. */
  readonly message: string;
}
