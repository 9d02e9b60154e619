/** How an answer came about. Only `asked` and an in-date `carried` answer count as known; the rest are four kinds of unknown. */
export type HowGot = 'asked' | 'carried' | 'declined' | 'does-not-know' | 'not-asked';

/** A yes/no, a number (count, months, mL/min), one choice id, or a list of ids (medicines, allergies). */
export type AnswerValue = boolean | number | string | readonly string[];

export interface Answer {
  readonly how: HowGot;
  /** Absent unless `how` is asked or carried. */
  readonly value?: AnswerValue | undefined;
  /** ISO local date on which the value was last asked of the person. */
  readonly askedOn?: string | undefined;
  /** Told by the person with nobody else there who speaks for him or her. */
  readonly alone?: true | undefined;
}

/** Why an answer is not known today. `out-of-date`: carried past its keep-for time. */
export type UnknownKind = 'not-asked' | 'does-not-know' | 'declined' | 'out-of-date';

/** Answers of a visit by question id. An absent question was not asked. */
export type Answers = Readonly<Record<string, Answer>>;

/** Where a number or a rule comes from, and how far it is trusted. `key` stands in docs/sources.md. */
export type SourceStatus = 'read' | 'memory' | 'mixed' | 'common-practice' | 'derived' | 'proposal';
export interface SourceRef {
  readonly key: string;
  readonly status: SourceStatus;
  readonly note?: string | undefined;
}
