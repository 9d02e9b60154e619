import type { Interval } from '../plaque/day/dayBand.ts';
import type { DayLanguage } from '../plaque/day/dayWords.ts';

/** What was said of one described day when its visit closed. */
export interface DayRecord {
  readonly headline: string;
  /** The same where private matters are hidden; absent = nothing in it is private. */
  readonly openHeadline?: string | undefined;
  /** Minutes below each line: by the usual values, and the band. */
  readonly below: Readonly<Record<string, Interval & { readonly ph: number; readonly minutes: number }>>;
}

/** As the result of kind `day` keeps it. */
export interface DaysRecord {
  /** Over all days that were told, as a professional and as the person may read it. */
  readonly sentence: Readonly<Record<DayLanguage, string>>;
  /** The same where private matters are hidden; absent = nothing in it is private. */
  readonly openSentence?: Readonly<Record<DayLanguage, string>> | undefined;
  readonly days: readonly DayRecord[];
  /** With what it was said to change beside the day as told. */
  readonly changed?: (DayRecord & { readonly sentence?: string | undefined }) | undefined;
  readonly draws: number;
  readonly seed: number;
}
