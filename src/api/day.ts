/** The people of one day: what the pages read, and the bodies they send. */
import { z } from 'zod';
import type { DateOrder } from '../core/day/birthday.ts';
import type { DayRow, RowVerdict } from '../core/day/dayRow.ts';
import type { DateOrderFinding } from '../core/day/findDateOrder.ts';
import type { DueThing } from '../core/day/listDue.ts';
import type { LeafletLanguage } from '../core/leaflet/types.ts';
import type { Level } from '../core/risk/types.ts';
import type { Answers, UnknownKind } from '../core/visit/answer.ts';

export type DayState = 'not-here' | 'open' | 'closed' | 'cancelled' | 'missed';

export interface DayAppointment {
  readonly id: string;
  readonly version: number;
  readonly note: string | null;
  /** Why it was cancelled or missed. */
  readonly reason: string | null;
}

export interface DayGuardian {
  readonly name: string;
  readonly relation: string | null;
  /** Null = not asked. */
  readonly mayConsent: boolean | null;
}

/** One line of a day. Nothing private stands in it. */
export interface DayLine {
  readonly patientId: string;
  readonly name: string;
  readonly chartNumber: string | null;
  readonly birthDate: string;
  readonly ageYears: number;
  /** Local time "09:40"; null = some time that day, or a walk-in. */
  readonly atTime: string | null;
  /** Null = a visit that nobody had planned. */
  readonly appointment: DayAppointment | null;
  readonly state: DayState;
  /** The visit of this day, or one that is still open from an earlier day. */
  readonly visitId: string | null;
  readonly due: readonly DueThing[];
  /** The level that a professional confirmed last. */
  readonly confirmed: { readonly level: Level; readonly protocol: string; readonly onDate: string } | null;
  /** Names of items that wait for a signature. */
  readonly waiting: readonly string[];
  /** Names of items in use, or waiting, that the shelf has not in stock. */
  readonly outOfStock: readonly string[];
  /** Language to interpret from; '' = none needed; null = not asked. */
  readonly interpreter: string | null;
  /** Only of somebody under 18; null = nobody on record. */
  readonly guardians: readonly DayGuardian[] | null;
  /** False where the record says that there is nowhere to swab. */
  readonly swab: boolean;
}

export interface OpenElsewhere {
  readonly visitId: string;
  readonly name: string;
  readonly onDate: string;
}

export interface DayView {
  /** Local dates, ISO. */
  readonly onDate: string;
  readonly today: string;
  readonly lines: readonly DayLine[];
  /** Visits that are open from other days, of people who are not on the list; only of today. */
  readonly openElsewhere: readonly OpenElsewhere[];
  /** Whether any visit was ever closed: a new practice is told what it still needs. */
  readonly isAnyoneSeen: boolean;
  /** Names of swab lots that are in date on the day. */
  readonly swabLots: readonly string[];
}

export interface FoundPerson {
  readonly id: string;
  readonly name: string;
  readonly chartNumber: string | null;
  readonly birthDate: string;
}

export const DayDate = z.strictObject({ date: z.union([z.iso.date(), z.literal('today')]) });
const clockTime = z.string().regex(/^([01]\d|2[0-3]):[0-5]\d$/, { error: 'must be a time such as 09:40' });

export const NewAppointment = z.strictObject({
  patientId: z.uuid(),
  atTime: clockTime.optional(),
  note: z.string().trim().min(1).max(500).optional(),
});
export type NewAppointment = z.infer<typeof NewAppointment>;

export const AppointmentChange = z.strictObject({
  version: z.int().nonnegative(),
  state: z.enum(['planned', 'cancelled', 'missed']).optional(),
  reason: z.string().trim().max(500).optional(),
  atTime: clockTime.nullable().optional(),
});
export type AppointmentChange = z.infer<typeof AppointmentChange>;

/** What the waiting room is asked on paper. No private answer leaves the server for it. */
export interface DaySheet {
  readonly patientId: string;
  readonly name: string;
  readonly birthDate: string;
  readonly ageYears: number;
  readonly atTime: string | null;
  /** Null = not on record. */
  readonly language: LeafletLanguage | null;
  readonly interpreter: string | null;
  readonly onDate: string;
  readonly answers: Answers;
  readonly unknown: readonly { readonly question: string; readonly kind: UnknownKind }[];
  /** Questions that make no sense in this mouth. */
  readonly notAsked: readonly string[];
}

const cell = z.string().max(500);
const rowChoice = z.enum(['same', 'another', 'same-move', 'same-second', 'another-second', 'move', 'second']);
const dayRow = z.strictObject({
  row: z.int().positive(),
  time: cell,
  chartNumber: cell,
  name: cell,
  birthday: cell,
  choice: rowChoice.optional(),
  leftOut: z.boolean().optional(),
  problem: z.string().max(2000).optional(),
});
export const MOST_ROWS = 2000;
const columnUse = z.enum(['time', 'chartNumber', 'name', 'birthday', 'not-used']);

/** A list as it was pasted or read from a file. */
export const ListText = z.strictObject({
  text: z.string().max(900_000, { error: 'is longer than 900,000 letters' }),
  columns: z.array(columnUse).max(100).optional(),
});

export const DayRows = z.strictObject({
  rows: z.array(dayRow).max(MOST_ROWS, { error: `must have ${MOST_ROWS} rows at most` }),
  dateOrder: z.enum(['day-first', 'month-first']).optional(),
});
export type DayRows = z.infer<typeof DayRows>;

export type ColumnUse = z.infer<typeof columnUse>;

export interface CheckedDay {
  readonly dates: DateOrderFinding;
  /** The order that was used; null = none yet. */
  readonly dateOrder: DateOrder | null;
  /** In the order of the rows. */
  readonly verdicts: readonly RowVerdict[];
}

/** A pasted or chosen list, taken apart. Nothing of it is lost: a line that cannot be read keeps its text in the name. */
export interface ReadList {
  readonly separator: 'comma' | 'semicolon' | 'tab';
  readonly hasHeader: boolean;
  /** What each column is taken for, in the order of the list. */
  readonly columns: readonly ColumnUse[];
  /** What the columns hold: the header, or else the first row. */
  readonly examples: readonly string[];
  readonly rows: readonly DayRow[];
}

export interface ReadDay extends ReadList, CheckedDay {}

export interface TakenDay {
  readonly verdicts: readonly RowVerdict[];
  readonly taken: number;
  /** New people among them. */
  readonly added: number;
}
