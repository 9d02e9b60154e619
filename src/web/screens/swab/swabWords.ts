import { parseTakenAt, sayDate } from '../../../core/reading/parseTakenAt.ts';
import { FAILED_IS_NO_SWAB } from '../../../core/reading/readingSentences.ts';
import { sayDuration, secondsToReading } from '../../../core/reading/secondsToReading.ts';
import type { SwabLot, SwabReading } from '../../../core/reading/types.ts';
import { capitalise, formatClock, formatDate } from '../../format.ts';
import { NOT_TAKEN } from '../visit/swabLines.ts';
import type { ChoiceDoes } from './listChoices.ts';
import { findStoppedControl, findUncomparedLot, isMeterStopped, listOpenConditions } from './listOpenConditions.ts';
import { enoughMinutes, findMeter, type SwabFlow, type SwabSetting, type SwabStep, swabTimes } from './swabFlow.ts';

export interface StepWords {
  readonly title: string;
  readonly text: readonly string[];
}

/** The step in large words, and what goes with it. */
export function sayStep(step: SwabStep, flow: SwabFlow, setting: SwabSetting, now: string): StepWords {
  switch (step) {
    case 'before-cleaning':
      return say('Is it before any cleaning, polishing or probing today?', 'The swab comes first; after cleaning it is not counted.');
    case 'since':
      return say(
        `${sayWait(setting)} since eating or drinking, brushing and a mouth rinse?`,
        'Ask the patient. A shorter time is noted and counts with caution.',
      );
    case 'since-eating':
      return say('How long since eating or drinking?', 'Anything but water.');
    case 'since-brushing':
      return say('How long since brushing?');
    case 'since-rinsing':
      return say('How long since a mouth rinse?');
    case 'taken-by':
      return say('Who takes the swab?', ...saySupplies(flow, setting));
    case 'site':
      return say(
        'Wipe once along the gum line.',
        'Tongue side of the six lower front teeth, from canine to canine: one firm pass. Was it along this path?',
      );
    case 'start':
      return say('Activate the swab, put it in the meter, and start.', `${meterName(flow, setting)} counts down; so does this page.`);
    case 'count-down':
      return say('Wait for the meter.', `${meterName(flow, setting)} takes its time; the number comes at the end.`);
    case 'number':
      return say('Type the number on the meter, then Enter.', ...sayLimits(flow, setting));
    case 'read':
      return say('The reading is noted.', sayTime(flow.reading));
    case 'not-taken':
      return say('No swab today.', sayReason(flow.reading), 'The visit is complete without a reading.');
    case 'failed':
      return say('Swab or meter failed.', FAILED_IS_NO_SWAB, 'The visit is complete without a reading.');
    case 'choose-reason':
      return say('No swab today, because');
    case 'type-note':
      return say('Why not? A few words, then Enter.', 'Enter alone will do.');
    default:
      return sayStopped(step, flow, setting, now);
  }
}

type StoppedStep = Extract<
  SwabStep,
  'no-site' | 'too-soon' | 'no-meter' | 'control-out' | 'not-compared' | 'after-cleaning' | 'other-site' | 'stopped'
>;

function sayStopped(step: StoppedStep, flow: SwabFlow, setting: SwabSetting, now: string): StepWords {
  const complete = 'The visit is complete without a reading.';
  switch (step) {
    case 'no-site':
      return say('No swab.', setting.mouth?.says ?? complete);
    case 'too-soon':
      return say('No swab now.', saySoonest(setting, now), complete);
    case 'no-meter':
      return say('No meter is set up here.', 'Its name, limits and cut-off stand under Rules, Practice.', complete);
    case 'control-out':
      return say(
        'Run today without swabs.',
        `A number would not be counted: ${findStoppedControl(flow.reading, findMeter(setting, flow.meterId), setting, now)?.says}.`,
        isMeterStopped(flow.reading, findMeter(setting, flow.meterId), setting, now)
          ? `Take another meter that passed its check, or look at Swab checks. ${complete}`
          : `Take another pack whose control is in line, or look at Swab checks. ${complete}`,
      );
    case 'not-compared':
      return say(
        `Lot ${findUncomparedLot(flow.reading, setting)?.name} was not compared with the lot before it.`,
        'It may read higher or lower. Compare the two first, under Swab checks, Studies, or take another pack.',
        'Or go on: say why, then Enter. The reason stands on each reading with this lot until it is compared.',
      );
    case 'after-cleaning':
      return say(
        'No swab now: cleaning has begun.',
        `After cleaning, polishing or probing a number is not counted. The next swab is for the next planned visit. ${complete}`,
      );
    case 'other-site':
      return say(
        'Not counted: another site.',
        `A number is only counted from the lower front teeth, tongue side. The next swab is for the next planned visit. ${complete}`,
      );
    case 'stopped': {
      const open = listOpenConditions(flow.reading, findMeter(setting, flow.meterId), setting, now);
      return say('No swab now.', `A number would not be counted: ${open.map((c) => c.says).join('; ')}. ${complete}`);
    }
  }
}

const say = (title: string, ...text: readonly string[]): StepWords => ({ title, text });

const sayWait = (setting: SwabSetting): string => {
  const minutes = enoughMinutes('since-eating', setting);
  return minutes === 60 ? 'An hour or more' : `${minutes} minutes or more`;
};

const meterName = (flow: SwabFlow, setting: SwabSetting): string => findMeter(setting, flow.meterId)?.name ?? 'the meter';

/** When the last swab was and when the next may be; or that the clock cannot be right. */
function saySoonest(setting: SwabSetting, now: string): string {
  const { conditions, timeZone } = setting;
  const hours = conditions.find((c) => c.id === 'once-in-24-h')?.limit ?? 24;
  const newest = swabTimes(setting).sort((a, b) => Date.parse(b) - Date.parse(a))[0];
  const last = newest === undefined ? undefined : parseTakenAt(newest, timeZone);
  if (!last || !newest) return `At most one swab in ${hours} hours.`;
  const lastSaid = `${sayDate(last.localDate)} at ${last.localTime}`;
  if (last.instantMs > Date.parse(now))
    return `A swab is on record for ${lastSaid}, which is still to come: look at the clock of this computer.`;
  const next = parseTakenAt(new Date(last.instantMs + hours * 3_600_000).toISOString(), timeZone);
  return `The last swab was on ${lastSaid}. At most one in ${hours} hours: not before ${next ? `${sayDate(next.localDate)} at ${next.localTime}` : 'then'}.`;
}

function saySupplies({ reading }: SwabFlow, { lots, onDate }: SwabSetting): string[] {
  const lot = lots.find((l) => l.id === reading.lotId);
  if (lot)
    return lot.expiresOn >= onDate
      ? [sayLot(lot)]
      : [`Lot ${lot.name} was past its date, ${formatDate(lot.expiresOn)}: take another pack.`];
  return lots.some((l) => l.expiresOn >= onDate)
    ? ['Choose the pack that is open.']
    : ['No pack in date is on record. A new one is entered under Rules, Practice.'];
}

const sayLot = (lot: SwabLot): string => `From lot ${lot.name}, in date until ${formatDate(lot.expiresOn)}. Look at the pack.`;

function sayLimits(flow: SwabFlow, setting: SwabSetting): string[] {
  const meter = findMeter(setting, flow.meterId);
  return meter ? [`<${meter.lowestRlu} or >${meter.highestRlu} where the meter shows only its limit.`] : [];
}

/** "Activated at 10:35:22, read at 10:36:00: 38 seconds." */
function sayTime(reading: SwabReading): string {
  const { activatedAt, takenAt } = reading;
  if (activatedAt === undefined) return 'The time of activation was not noted.';
  const seconds = secondsToReading(reading);
  if (takenAt === undefined || seconds === undefined) return 'Time from activation to reading not known: the clock was set back.';
  return `Activated at ${formatClock(activatedAt)}, read at ${formatClock(takenAt)}: ${sayDuration(seconds)}.`;
}

function sayReason({ notTaken, notTakenNote }: SwabReading): string {
  const reason = NOT_TAKEN.find((r) => r.id === notTaken)?.label ?? 'another reason';
  return `Because: ${reason}${notTakenNote === undefined ? '' : `, ${notTakenNote}`}.`;
}

/** The words on a key. */
export function sayChoice(does: ChoiceDoes, setting: SwabSetting): string {
  switch (does.kind) {
    case 'before-cleaning':
      return does.value ? 'Yes, before any of it' : 'No, it has begun';
    case 'hour-since-all':
      return does.value ? 'Yes, since all three' : 'No, or not sure';
    case 'minutes':
      return does.minutes === undefined ? 'Not known' : sayMinutesChoice(does.minutes, enoughMinutes('since-eating', setting));
    case 'member':
      return does.trained ? does.name : `${does.name}, not trained yet`;
    case 'lot':
      return sayLotChoice(setting, does.lotId);
    case 'meter':
      return setting.meters.find((m) => m.id === does.meterId)?.name ?? does.meterId;
    case 'site':
      return does.value === 'other' ? 'No, somewhere else' : 'Yes, along this path';
    case 'start':
      return 'Start';
    case 'reason':
      return capitalise(NOT_TAKEN.find((r) => r.id === does.reason)?.label ?? does.reason);
    case 'no-swab':
      return 'No swab today';
    case 'failed':
      return 'Swab or meter failed';
    case 'undo':
      return 'Undo the last key';
  }
}

const sayMinutesChoice = (minutes: number, enough: number): string =>
  minutes >= enough ? `${minutes} minutes or more` : minutes <= 5 ? `${minutes} minutes or less` : `About ${minutes} minutes`;

function sayLotChoice({ lots, onDate }: SwabSetting, lotId: string): string {
  const lot = lots.find((l) => l.id === lotId);
  if (!lot) return lotId;
  return lot.expiresOn >= onDate ? `Lot ${lot.name}, until ${formatDate(lot.expiresOn)}` : `Lot ${lot.name}, past its date`;
}

/** What a screen reader says of the count-down: start, ten seconds, done. */
export function sayCountDown(step: SwabStep, left: number, countdownS: number): string {
  if (step === 'number') return 'Done. Type the number on the meter.';
  if (step !== 'count-down') return '';
  return left <= 10 && countdownS > 10 ? '10 seconds left.' : `Count-down started: ${countdownS} seconds.`;
}
