import type { DayGuardian, DayLine, DayView } from '../../../api/day.ts';
import { protocolName } from '../../content.ts';
import { formatDate, formatMonth, joinWords, plural } from '../../format.ts';

const MS_PER_DAY = 86_400_000;

/** The local date so many days later. */
export function dayAfter(isoDate: string, days: number): string {
  return new Date(Date.parse(`${isoDate}T00:00:00Z`) + days * MS_PER_DAY).toISOString().slice(0, 10);
}

/** "Today", "Tomorrow", or nothing for a day that has no such name. */
export function nameOfDay(onDate: string, today: string): string | undefined {
  if (onDate === today) return 'Today';
  if (onDate === dayAfter(today, 1)) return 'Tomorrow';
  return onDate === dayAfter(today, -1) ? 'Yesterday' : undefined;
}

/** Address of a day. */
export const dayPath = (onDate: string, today: string): string => (onDate === today ? '/' : `/day/${onDate}`);

/** ISO dates inside a sentence as people write them. */
export function withDates(text: string): string {
  return text.replace(/\d{4}-\d{2}-\d{2}/g, formatDate);
}

export function sayState({ state, appointment }: Pick<DayLine, 'state' | 'appointment'>): string {
  const why = appointment?.reason ? `: ${appointment.reason}` : '';
  switch (state) {
    case 'not-here':
      return 'not here yet';
    case 'open':
      return appointment ? 'visit open' : 'visit open, not planned';
    case 'closed':
      return appointment ? 'visit closed' : 'visit closed, not planned';
    case 'cancelled':
      return `cancelled${why}`;
    case 'missed':
      return `missed${why}`;
  }
}

export function sayLevel({ confirmed }: Pick<DayLine, 'confirmed'>): string {
  if (!confirmed) return 'no level confirmed yet';
  return `level ${confirmed.level}, ${protocolName(confirmed.protocol)}, ${formatMonth(confirmed.onDate)}`;
}

export interface ReadyThing {
  readonly says: string;
  /** Not on record, rather than known. */
  readonly isUnknown?: boolean;
}

/** What to have ready for one person. What nobody has asked is said to be not on record. */
export function sayReady(line: DayLine): readonly ReadyThing[] {
  const { waiting, outOfStock, interpreter, guardians, ageYears, state } = line;
  const notOnRecord = [interpreter === null && 'interpreter', ageYears < 18 && guardians === null && 'guardian'].filter(Boolean);
  return [
    ...(line.swab && (state === 'not-here' || state === 'open') ? [{ says: 'swab' }] : []),
    ...waiting.map((item) => ({ says: `waits for a signature: ${item}` })),
    ...outOfStock.map((item) => ({ says: `out of stock: ${item}` })),
    ...(interpreter ? [{ says: `interpreter: ${interpreter}` }] : []),
    ...(guardians ?? []).map((guardian) => ({ says: `guardian: ${sayGuardian(guardian)}` })),
    ...(notOnRecord.length > 0 ? [{ says: `not on record: ${notOnRecord.join(', ')}`, isUnknown: true }] : []),
  ];
}

function sayGuardian({ name, relation, mayConsent }: DayGuardian): string {
  const consent =
    mayConsent === null ? 'whether to say yes to care: not asked' : mayConsent ? 'may say yes to care' : 'may not say yes to care';
  return `${relation ? `${relation} ${name}` : name} (${consent})`;
}

const isNotOff = ({ state }: DayLine) => state !== 'cancelled' && state !== 'missed';
const isExpected = ({ state }: DayLine) => state === 'not-here' || state === 'open';

/** One sentence over the list: how many, and what to have ready for all of them together. */
export function sayWholeDay({ lines, swabLots }: Pick<DayView, 'lines' | 'swabLots'>): string {
  if (lines.length === 0) return 'Nobody is on the list of this day yet.';
  const expected = lines.filter(isExpected);
  const swabs = expected.filter((line) => line.swab).length;
  const lots = swabLots.length > 0 ? `in date: ${joinWords(swabLots)}` : 'no swab lot on record is in date';
  const interpreters = expected.filter((line) => line.interpreter).map((l) => `${l.interpreter}${l.atTime ? ` at ${l.atTime}` : ''}`);
  // Somebody with two appointments in a day has two lines, and waits once.
  const signatures = new Set(lines.filter(isNotOff).flatMap((line) => line.waiting.map((item) => `${line.patientId} ${item}`))).size;
  const missing = [...new Set(expected.flatMap((line) => line.outOfStock))];
  return [
    sayCounts(lines),
    swabs > 0 && `Swabs for up to ${swabs}, ${lots}.`,
    signatures > 0 && `For these people ${plural(signatures, 'item')} ${signatures === 1 ? 'waits' : 'wait'} for a signature.`,
    interpreters.length > 0 && `Interpreter: ${joinWords(interpreters)}.`,
    missing.length > 0 && `Out of stock: ${joinWords(missing)}.`,
  ]
    .filter(Boolean)
    .join(' ');
}

function sayCounts(lines: readonly DayLine[]): string {
  const count = (state: DayLine['state']) => lines.filter((line) => line.state === state).length;
  const others = [
    count('open') > 0 && `${count('open')} here`,
    count('closed') > 0 && `${count('closed')} seen`,
    count('cancelled') > 0 && `${count('cancelled')} cancelled`,
    count('missed') > 0 && `${count('missed')} missed`,
  ].filter(Boolean);
  const people = new Set(lines.map(({ patientId }) => patientId)).size;
  return `${plural(people, 'person', 'people')} on the list${others.length > 0 ? `: ${others.join(', ')}` : ''}.`;
}
