import type { AnswerValue, SourceRef } from './answer.ts';
import type { MouthReason } from './mouthReason.ts';

/** How an answer fills an item of a risk list. An item filled by several questions is true if any says true, false only if all say false. */
export type ItemFill = { readonly item: string } & (
  | { readonly copy: true }
  | { readonly equals: AnswerValue }
  /** Unknown, not false, for a choice in `unknownWhenAny` ("doubtful"). */
  | { readonly oneOf: readonly string[]; readonly unknownWhenAny?: readonly string[] | undefined }
  | { readonly atLeast: number }
  /** `setting`: the practice's own limit replaces the number. */
  | { readonly atMost: number; readonly setting?: 'stimulatedFlowLowAtMostMlPerMin' | undefined }
  /**
   * True when the list answer holds any of these ids (or anything at all, for an empty list here).
   * Unknown, not false, when none of them is held but one of `unknownWhenAny` is ("a medicine not on this list").
   */
  | { readonly includesAny: readonly string[]; readonly unknownWhenAny?: readonly string[] | undefined }
);

export type QuestionGroup = 'safety' | 'food' | 'home' | 'health' | 'look';

export interface Choice {
  readonly id: string;
  readonly label: string;
  /** Hidden by "Show patient" although the question is not. */
  readonly private?: boolean | undefined;
}

/** One thing asked or looked at, in our own words. Ids are ours; `fills` ties them to the item ids of the published lists. */
export interface Question {
  readonly id: string;
  readonly group: QuestionGroup;
  /** Short label on the line, e.g. "Snacks or sweet drinks between meals". */
  readonly label: string;
  /** Open prompt for the conversation. */
  readonly prompt: string;
  /** `date`: ISO text, to the day or to the month where the day is not known; a choice may stand in its place ("never"). */
  readonly kind: 'yes-no' | 'count' | 'measure' | 'choice' | 'list' | 'date';
  readonly unit?: string | undefined;
  readonly min?: number | undefined;
  readonly max?: number | undefined;
  readonly choices?: readonly Choice[] | undefined;
  readonly fills: readonly ItemFill[];
  /** Completed years, half-open. Absent = any age. */
  readonly fromAgeYears?: number | undefined;
  readonly belowAgeYears?: number | undefined;
  /** 0 = must be asked at every visit. Absent = does not go out of date. */
  readonly keepForMonths?: number | undefined;
  /** Hidden by "Show patient" and on every leaflet. */
  readonly private?: boolean | undefined;
  /** Asked or measured only where there is a reason: unanswered, it neither counts as missing nor keeps an item unknown that another question settles. */
  readonly optional?: boolean | undefined;
  /** Mouths in which it makes no sense: there it is not asked, fills nothing and does not count as missing. */
  readonly notIn?: readonly MouthReason[] | undefined;
  /** Mouths that are a reason to measure: there an optional question is wanted, unless one of `unlessKnown` is known. */
  readonly wantedIn?: { readonly mouths: readonly MouthReason[]; readonly unlessKnown: readonly string[] } | undefined;
  /** Put only after this answer to another question, where that answer counts today: one of these ids, or a number above this one. */
  readonly askedIf?: ({ readonly question: string } & ({ readonly anyOf: readonly string[] } | { readonly above: number })) | undefined;
  readonly sources: readonly SourceRef[];
}
