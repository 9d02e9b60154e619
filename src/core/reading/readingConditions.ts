import { type ControlSpan, findSpan } from '../checks/controlSpan.ts';
import { lotStanding } from '../checks/lotStanding.ts';
import { boundOnMeter } from './boundOnMeter.ts';
import { parseTakenAt, sayDate, type TakenAt } from './parseTakenAt.ts';
import { sayDuration, secondsToReading } from './secondsToReading.ts';
import type { ConditionResult, Meter, SwabCondition, SwabLot, SwabReading } from './types.ts';

/** What the conditions look at. */
export interface SwabCircumstances {
  readonly reading: SwabReading;
  readonly taken: TakenAt | undefined;
  readonly meter: Meter | undefined;
  readonly lots: readonly SwabLot[];
  /** When the person's earlier swabs were taken, void ones too. */
  readonly past: readonly TakenAt[];
  /** ISO local date of the visit; used where the time of the swab was not noted. */
  readonly onDate: string;
  /** How the controls stood over the day; absent = not known. */
  readonly controls?: readonly ControlSpan[] | undefined;
  readonly timeZone?: string | undefined;
}

type Outcome = Omit<ConditionResult, 'id'>;
const met = (says: string): Outcome => ({ state: 'met', says });
const failing = (says: string): Outcome => ({ state: 'failing', says });
const unknown = (says: string): Outcome => ({ state: 'unknown', says });

/** One check per id of the table of conditions. */
const CHECKS: Readonly<Record<string, (swab: SwabCircumstances, condition: SwabCondition) => Outcome>> = {
  'once-in-24-h': onceInTime,
  'before-cleaning': ({ reading: { beforeCleaning } }) =>
    beforeCleaning === undefined
      ? unknown('not noted whether before cleaning')
      : beforeCleaning
        ? met('taken before cleaning, polishing and probing')
        : failing('taken after cleaning, polishing or probing'),
  'lot-in-date': lotInDate,
  'lot-compared': lotCompared,
  'meter-range': meterRange,
  'control-in-line': controlInLine,
  site: ({ reading: { site } }) =>
    site === undefined
      ? unknown('site not noted')
      : site === 'other'
        ? failing('taken at another site')
        : met('lower front teeth, tongue side'),
  'trained-operator': ({ reading: { operator } }) =>
    operator === undefined
      ? unknown('operator not noted')
      : operator.trained
        ? met('taken by a trained operator')
        : failing('operator not yet trained for swabs'),
  'since-eating': (swab, condition) => minutesSince(swab.reading.minutesSinceEating, 'eating', condition),
  'since-brushing': (swab, condition) => minutesSince(swab.reading.minutesSinceBrushing, 'brushing', condition),
  'since-rinsing': (swab, condition) => minutesSince(swab.reading.minutesSinceRinsing, 'rinsing', condition),
  'time-to-reading': timeToReading,
};

/** Ids that a table of conditions may use. */
export const CONDITION_IDS: readonly string[] = Object.keys(CHECKS);

/**
 * Each condition of the table: met, failing or unknown, with a short clause. What was not noted is unknown, never met.
 * @throws RangeError for an id without a check, or a time condition without its limit
 */
export function evaluateConditions(swab: SwabCircumstances, conditions: readonly SwabCondition[]): ConditionResult[] {
  return conditions.map((condition) => {
    const check = CHECKS[condition.id];
    if (check === undefined) throw new RangeError(`no check for the swab condition ${condition.id}`);
    return { id: condition.id, ...check(swab, condition) };
  });
}

const MS_PER = { h: 3_600_000, min: 60_000 } as const;
const DAY_MS = 24 * MS_PER.h;

function limitMs(condition: SwabCondition): number {
  if (condition.limit === undefined || condition.limitUnit === undefined)
    throw new RangeError(`swab condition ${condition.id} needs limit and limitUnit`);
  return condition.limit * MS_PER[condition.limitUnit];
}

/** Every earlier swab of the person counts here, void ones too: the plaque was wiped off all the same. */
function onceInTime({ taken, past, onDate }: SwabCircumstances, condition: SwabCondition): Outcome {
  const limit = limitMs(condition);
  if (taken === undefined) {
    // The earliest moment at which it is `onDate` anywhere on earth: UTC+14.
    const earliest = Date.parse(`${onDate}T00:00:00+14:00`);
    return past.every((p) => earliest - p.instantMs >= limit)
      ? met('no swab on record shortly before')
      : unknown('time of the swab not noted, and another swab is near');
  }
  // A clock that was set back must not hide a swab: one that seems to come later is as near as one before.
  const isLater = (p: TakenAt) => p.instantMs > taken.instantMs && p.instantMs - taken.instantMs < limit;
  const before = past.filter((p) => p.instantMs <= taken.instantMs).sort((a, b) => b.instantMs - a.instantMs)[0];
  const gapMs = before && taken.instantMs - before.instantMs;
  if (gapMs !== undefined && gapMs < limit) return failing(`taken ${sayGap(gapMs)} after the last swab`);
  if (past.some(isLater)) return unknown('another swab is on record at a later time: the clock may have been set back');
  if (before === undefined) return met('no earlier swab on record');
  return met(`last swab on ${sayDate(before.localDate)}`);
}

function sayGap(gapMs: number): string {
  const minutes = Math.floor(gapMs / MS_PER.min);
  if (minutes < 60) return minutes === 1 ? '1 minute' : `${minutes} minutes`;
  const hours = Math.floor(gapMs / MS_PER.h);
  if (gapMs >= 2 * DAY_MS) return `${Math.floor(gapMs / DAY_MS)} days`;
  return hours === 1 ? '1 hour' : `${hours} hours`;
}

function lotInDate({ reading: { lotId }, lots, taken, onDate }: SwabCircumstances): Outcome {
  if (lotId === undefined) return unknown('lot not noted');
  const lot = lots.find((l) => l.id === lotId);
  if (lot === undefined) return unknown('lot not on record');
  // ISO dates compare as text.
  const inDate = (taken?.localDate ?? onDate) <= lot.expiresOn;
  return inDate ? met(`lot ${lot.name} in date`) : failing(`lot ${lot.name} was past its date, ${sayDate(lot.expiresOn)}`);
}

/** A lot that nobody compared may read otherwise than the one before it; a reason to go on stands on each of its readings. */
function lotCompared({ reading: { lotId }, lots }: SwabCircumstances): Outcome {
  const lot = lots.find((l) => l.id === lotId);
  if (lot === undefined) return unknown('not known whether the lot was compared with the one before');
  switch (lotStanding(lot, lots)) {
    case 'first':
      return met(`no lot before ${lot.name} on record`);
    case 'compared':
      return met(`lot ${lot.name} was compared with the one before`);
    case 'went-on':
      return failing(`lot ${lot.name} was not compared with the one before; ${lot.uncompared?.by} went on: ${lot.uncompared?.reason}`);
    case 'not-compared':
      return unknown(`lot ${lot.name} was not compared with the one before, and no reason is noted`);
  }
}

function meterRange({ reading: { rlu, bound }, meter }: SwabCircumstances): Outcome {
  if (meter === undefined) return unknown('meter not named');
  if (rlu === undefined) return unknown('no number yet');
  const onMeter = boundOnMeter(rlu, bound, meter);
  if (onMeter === 'exact') return met("within the meter's range");
  return met(onMeter === 'at-most' ? "at or below the meter's lowest reading" : "at or above the meter's highest reading");
}

/**
 * A control out of limits stops its meter and lot until the next one in line; an override with its reason lets the reading count, and so
 * does a control in line after a stop of which nobody has noted what was done. A reading from before the stop may be under question.
 */
function controlInLine({ reading: { lotId }, meter, taken, controls, timeZone }: SwabCircumstances): Outcome {
  if (controls === undefined || meter === undefined || lotId === undefined) return unknown('control of this meter and lot not known');
  const span = findSpan(controls, { meterId: meter.id, lotId }, taken?.instantMs);
  if (span === undefined) return unknown('no control on record for this meter and lot');
  const at = parseTakenAt(span.from, timeZone);
  const when = at === undefined ? '' : ` of ${sayDate(at.localDate)}, ${at.localTime},`;
  if (span.question)
    return failing(`a later control was out of limits, and ${span.question.by} put this reading under question: ${span.question.reason}`);
  if (span.state === 'no-target') return unknown(`the control${when} has no target yet`);
  if (span.state !== 'out') return span.notResolvedSince === undefined ? met(`the control${when} was in line`) : notResolved(when);
  const out =
    span.lotId === undefined
      ? `the meter's own check${when} did not pass (${span.says})`
      : `the control${when} was out of limits (${span.says})`;
  if (span.override === undefined) return failing(out);
  const { by, reason } = span.override;
  return { ...failing(`${out}; ${by} let readings count that day: ${reason}`), effect: 'flag' };
}

const notResolved = (when: string): Outcome => ({
  ...failing(`the control${when} was in line again after a stop, and what was done about it is not recorded`),
  effect: 'flag',
});

function minutesSince(minutes: number | undefined, what: string, condition: SwabCondition): Outcome {
  const limit = limitMs(condition) / MS_PER.min;
  if (minutes === undefined) return unknown(`time since ${what} not noted`);
  const whole = Math.floor(minutes);
  const said = `${whole} ${whole === 1 ? 'minute' : 'minutes'} after ${what}`;
  return minutes < limit ? failing(`taken ${said}`) : met(said);
}

/** The number belongs to the swab only once the meter has counted down, and fades from then on. */
function timeToReading({ reading, meter }: SwabCircumstances, condition: SwabCondition): Outcome {
  const limitS = limitMs(condition) / 1000;
  if (reading.activatedAt === undefined) return unknown('time of activation not noted');
  if (reading.takenAt === undefined) return unknown('time of the reading not noted');
  const elapsedS = secondsToReading(reading);
  if (elapsedS === undefined) return unknown('time from activation to reading not known: the clock was set back');
  if (meter === undefined) return unknown('meter not named');
  const said = `read ${sayDuration(elapsedS)} after activation`;
  if (elapsedS < meter.countdownS) return failing(`${said}, before the count-down of ${meter.countdownS} seconds was over`);
  return elapsedS - meter.countdownS <= limitS ? met(said) : failing(said);
}
