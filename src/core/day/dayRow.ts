/** One row of a list that fills a day, as it was typed, pasted or read from a file. */
export interface DayRow {
  /** Number of the row in what was pasted, from 1. */
  readonly row: number;
  readonly time: string;
  readonly chartNumber: string;
  readonly name: string;
  readonly birthday: string;
  /** What was answered to a question about this row. */
  readonly choice?: RowChoice | undefined;
  readonly leftOut?: boolean | undefined;
  /** Why the line could not be taken apart; gone once somebody mends the row. */
  readonly problem?: string | undefined;
}

export type RowField = 'time' | 'chartNumber' | 'name' | 'birthday';

/** `same` and `another` answer whether it is the person on file; `move` and `second` what an appointment at another time means. */
export type RowChoice = 'same' | 'another' | 'same-move' | 'same-second' | 'another-second' | 'move' | 'second';

export const FIELD_WORDS: Readonly<Record<RowField, string>> = {
  time: 'time',
  chartNumber: 'chart number',
  name: 'name',
  birthday: 'birthday',
};

/** Whoever is on file. */
export interface KnownPerson {
  readonly id: string;
  readonly name: string;
  /** Accent-free words of the name, in the order of the alphabet, so that "Brandt, Odile" is "Odile Brandt". */
  readonly nameKey: string;
  readonly chartNumber: string | undefined;
  readonly chartKey: string | undefined;
  readonly birthDate: string;
}

/** What stands on the day already. */
export interface KnownAppointment {
  readonly id: string;
  readonly patientId: string;
  readonly atTime: string | null;
  readonly state: 'planned' | 'cancelled' | 'missed';
}

/** What a row will do. Nothing is written before somebody has seen it. */
export type RowVerdict =
  /** Puts somebody on file down; `addsChartNumber` where the file gives one and the record has none. */
  | {
      readonly kind: 'known';
      readonly person: KnownPerson;
      readonly atTime: string | null;
      readonly moves?: KnownAppointment | undefined;
      readonly addsChartNumber?: string | undefined;
      readonly says: string;
    }
  | {
      readonly kind: 'new';
      readonly name: string;
      readonly birthDate: string;
      readonly chartNumber: string | undefined;
      readonly atTime: string | null;
      readonly says: string;
    }
  | { readonly kind: 'ask'; readonly says: string; readonly choices: readonly { readonly id: RowChoice; readonly label: string }[] }
  /** Nothing to do: it stands there already, or another row says the same. */
  | { readonly kind: 'nothing'; readonly says: string }
  | { readonly kind: 'wrong'; readonly field: RowField | 'row'; readonly says: string }
  | { readonly kind: 'left-out'; readonly says: string };
