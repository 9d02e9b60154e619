export type LeafletLanguage = 'en' | 'es' | 'fr' | 'ar';

/** Times of a day (and beyond it) at which something is done, in the order in which they are printed. */
export type DaySlot = 'morning' | 'after-meals' | 'evening' | 'bedtime' | 'any-time' | 'weekly' | 'at-visit';

/** How much: drawn to size where a size says something, and always in words too. */
export interface StepAmount {
  readonly kind: 'smear' | 'pea' | 'ribbon' | 'mL' | 'piece';
  /** cm for a ribbon, mL, or number of pieces. */
  readonly value?: number | undefined;
  /** Spread with a finger: told in words, since the drawings show a brush. */
  readonly isOnFinger?: true | undefined;
  /** The same in words, e.g. "a strip 2 cm long". */
  readonly text: string;
}

/** One block of the day strip: when, what, how much. */
export interface DayStep {
  readonly when: DaySlot;
  /** The time of this use, in the place of the name of the slot: "After breakfast", "07:10". */
  readonly time?: string | undefined;
  readonly text: string;
  readonly amount?: StepAmount | undefined;
}

/** A stretch of a day, minutes after midnight. */
export interface StripSpan {
  readonly from: number;
  readonly to: number;
}

/** What stands at a strip. */
export type StripWords = Readonly<Record<'title' | 'told' | 'changed' | 'dark' | 'caution', string>>;

export interface StripRow {
  readonly night: readonly StripSpan[];
  /** Where the plaque is on the acid side, in the model. */
  readonly acid: readonly StripSpan[];
  readonly eaten: readonly (StripSpan & { readonly name: string })[];
  /** What is used when, in the order of the clock; with uses, the acid side lies under them. Absent = none is drawn. */
  readonly uses?: readonly StripMark[] | undefined;
  /** Nothing by mouth after a use. */
  readonly waits?: readonly StripSpan[] | undefined;
  /** At school or at work. */
  readonly away?: readonly (StripSpan & { readonly name: string })[] | undefined;
  /** Getting up and going to bed. */
  readonly ticks?: readonly StripMark[] | undefined;
}

export interface StripMark {
  readonly minute: number;
  readonly name: string;
}

/** A day that was told, or the same with a change. */
export interface ToldRow extends StripRow {
  readonly of: 'told' | 'changed';
}

/** A person's day as it was told, and perhaps with a change: drawn, without any number. */
export interface LeafletStrip {
  readonly rows: readonly ToldRow[];
  /** Names of food that stand in English, because there are none in the language of the page. */
  readonly notInLanguage?: readonly string[] | undefined;
}

/** What to use when, over one day. */
export interface LeafletDay {
  readonly row: StripRow;
  /** Which day is drawn and on what ground, and what its hatching means. */
  readonly says: string;
}

type LeafletLabel = 'keep' | 'try' | 'day' | 'who' | 'advice' | 'cautions' | 'call' | 'stop' | 'cost' | 'next' | 'released';

/** The one-page leaflet as data, so that screen, print and PDF say the same words. */
export interface Leaflet {
  readonly language: LeafletLanguage;
  readonly title: string;
  readonly personName: string;
  /** Whose page of several: "For the home with her father". */
  readonly home?: string | undefined;
  readonly practiceName: string;
  readonly date: string;
  readonly keep: string;
  readonly tryThis: string | null;
  readonly day: readonly DayStep[];
  /** Who does it, where that is not the person named. */
  readonly who: string | null;
  /** What this kind of mouth asks for; no level, no reading, no cause. */
  readonly advice: readonly string[];
  readonly cautions: readonly string[];
  /** When to call the practice, and when the emergency number. */
  readonly call: readonly string[];
  /** Absent = nothing is used at a time of the day, or a leaflet of an earlier edition. */
  readonly dayStrip?: LeafletDay | undefined;
  /** Only where a professional chose it, with its words in the leaflet's language. */
  readonly strip?: (Pick<LeafletStrip, 'rows'> & { readonly words: StripWords }) | undefined;
  readonly stopUsing: readonly string[];
  /** Private matters that a professional released on purpose. */
  readonly released?: readonly string[] | undefined;
  readonly monthlyCost: string | null;
  /** Signed items name who signed. */
  readonly signedBy: readonly string[];
  readonly nextDate: string;
  readonly demoNotice: string | null;
  /** Labels of the blocks, in the leaflet's language. */
  readonly labels: Readonly<Record<LeafletLabel, string>>;
  /** Names of the times of the day, in the leaflet's language. */
  readonly slots: Readonly<Record<DaySlot, string>>;
  /** Last line of the page: whose, which day, which page. */
  readonly foot: string;
  /** The same where there may be several pages: "{page}" and "{pages}" stand in it. Empty in a leaflet of an earlier edition. */
  readonly footPages: string;
  /** That a translation waits for a clinician who speaks the language; null where nothing waits. */
  readonly review: string | null;
  /** For the professional, not printed: what stands on this page in another language, because there is no name for it in this one. */
  readonly notInLanguage: readonly string[];
}
