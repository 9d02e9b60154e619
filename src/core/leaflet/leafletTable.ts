import type { Agent, Caution } from '../regimen/tables.ts';
import type { Jurisdiction } from '../regimen/types.ts';
import type { SourceRef } from '../visit/answer.ts';
import type { Catalog } from './sayMessage.ts';
import type { LeafletLanguage } from './types.ts';

/** What is done with an item. One sentence or two stands under each, as `use.<id>` in the catalog of a language. */
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

/** The content of leaflets, passed in by the caller: core never imports content. */
export interface LeafletTable {
  readonly uses: readonly LeafletUse[];
  readonly goals: readonly LeafletGoal[];
  /** Most urgent first: the order on the page. */
  readonly cautions: readonly Caution[];
  /** Only their waiting times are used. */
  readonly agents: readonly Pick<Agent, 'id' | 'waitMinutes'>[];
  /** The languages at hand. A page loads a catalog when it is needed; the server and the command line have all. */
  readonly catalogs: Readonly<Partial<Record<LeafletLanguage, Catalog>>>;
  /** Translations whose medical wording waits for a clinician who speaks the language. */
  readonly awaitingReview: readonly LeafletLanguage[];
}

/** @throws RangeError where the language is not at hand */
export function catalogOf({ catalogs }: Pick<LeafletTable, 'catalogs'>, language: LeafletLanguage): Catalog {
  const catalog = catalogs[language];
  if (catalog === undefined) throw new RangeError(`the words of the leaflet are not loaded in this language: ${language}`);
  return catalog;
}
