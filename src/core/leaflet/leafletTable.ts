import type { Agent, Caution } from '../regimen/tables.ts';
import type { Jurisdiction } from '../regimen/types.ts';
import type { SourceRef } from '../visit/answer.ts';
import type { DaySlot, Leaflet, LeafletLanguage, StripWords } from './types.ts';

/** What is done with an item. One sentence or two per language stands under each in `LeafletWords.uses`. */
export type UseId =
  | 'brush'
  | 'brush-no-spit'
  | 'brush-strong'
  | 'rinse'
  | 'rinse-germs'
  | 'rinse-soda'
  | 'rinse-written-plan'
  | 'gel'
  | 'chew'
  | 'melt'
  | 'spread'
  | 'moisten'
  | 'varnish'
  | 'silver'
  | 'sealant'
  | 'at-visit'
  | 'as-shown';

/** Which times of the day an item takes; with the number of times a day this gives its places on the strip. */
export type Rhythm = 'brushing' | 'apart-from-brushing' | 'after-meals' | 'when-dry';

/** How the amount of one use is told. `paste` goes by the plan's size for the age: smear, pea, ribbon. */
export type Measure = 'paste' | 'pea' | 'pea-on-finger' | 'mL' | 'piece' | 'none';

/** One row of the use table: the first row that fits agent, form and jurisdiction is taken. */
export interface LeafletUse {
  readonly agentId: string;
  readonly forms?: readonly string[] | undefined;
  readonly jurisdiction?: Jurisdiction | undefined;
  readonly use: UseId;
  readonly rhythm: Rhythm;
  readonly measure: Measure;
  /** Length of the ribbon from age 7 where the label names one, cm. */
  readonly ribbonCm?: number | undefined;
  readonly source: SourceRef;
}

/** `food` changes what or when a person eats or drinks; `bottle-or-cup` only what a bottle or cup holds; `afterwards` neither. */
export type GoalFamily = 'care' | 'food' | 'bottle-or-cup' | 'afterwards';

export interface LeafletGoal {
  readonly id: string;
  readonly family: GoalFamily;
  /** Completed years, half-open. */
  readonly fromAgeYears?: number | undefined;
  readonly belowAgeYears?: number | undefined;
}

/** Every word of a leaflet in one language. `{item}`, `{n}`, `{date}` and the like are filled in. */
export interface LeafletWords {
  readonly title: string;
  /** Where there are no natural teeth. */
  readonly titleWithoutTeeth: string;
  readonly labels: Leaflet['labels'];
  readonly slots: Readonly<Record<DaySlot, string>>;
  readonly uses: Readonly<Record<UseId, string>>;
  /** Added to a step. */
  readonly extras: Readonly<Record<'again' | 'adultWatches' | 'wait' | 'seconds' | 'oneMinute' | 'timesADay' | 'courseDays', string>>;
  readonly amounts: Readonly<Record<'smear' | 'pea' | 'ribbon' | 'ribbonOneToTwo' | 'mL' | 'piece' | 'pieces', string>>;
  /** By goal id. */
  readonly goals: Readonly<Record<string, string>>;
  /** Where fluoride paste is on the page, and where it is planned but may not be printed yet. */
  readonly keepBrushing: string;
  readonly keepBrushingWithFluoride: string;
  readonly keepUp: string;
  /** To the carer, before the first tooth. */
  readonly keepUpForChild: string;
  readonly startWith: string;
  readonly forHome: string;
  /** Choices of private questions, by question and choice id. A choice without words is not printed. */
  readonly privateChoices: Readonly<Record<string, Readonly<Record<string, string>>>>;
  /** Follows a suggestion where none about food may be made. */
  readonly askBeforeFood: string;
  /** By id of the advice of a mouth. */
  readonly advice: Readonly<Record<string, string>>;
  /** By caution id; `<id>/cannot-spit` where the wording for a person who cannot spit differs. */
  readonly cautions: Readonly<Record<string, string>>;
  readonly signed: string;
  /** Signed on a named and dated standing order. */
  readonly signedOnOrder: string;
  readonly cost: Readonly<Record<'about' | 'atLeast', string>>;
  readonly next: Readonly<Record<'about' | 'aboutOneMonth' | 'ask' | 'firstTooth', string>>;
  readonly strip: StripWords;
  readonly demoNotice: string;
  readonly corrected: string;
  readonly foot: string;
}

/** The content of leaflets, passed in by the caller: core never imports content. */
export interface LeafletTable {
  readonly uses: readonly LeafletUse[];
  readonly goals: readonly LeafletGoal[];
  /** Most urgent first: the order on the page. */
  readonly cautions: readonly Caution[];
  /** Only their waiting times are used. */
  readonly agents: readonly Pick<Agent, 'id' | 'waitMinutes'>[];
  readonly words: Readonly<Record<LeafletLanguage, LeafletWords>>;
}
