import type { NotTakenReason, SwabReading } from '../../core/reading/types.ts';
import type { Chance } from './chance.ts';
import { addDays } from './days.ts';
import { demoMembers } from './members.ts';
import { DAYS_SINCE_LOT_EXPIRED, DEMO_LOTS, DEMO_METER, DEMO_METER_SCALE } from './practice.ts';
import type { DemoProfile } from './profile.ts';

const MINUTE_MS = 60_000;
const YOUNGEST_WITH_SWAB_YEARS = 5;
/**
 * Scatter of one person's readings, on the logarithm: from day to day (geometric sd 1.45) and of swab and meter (cv 30 %). Both assumed,
 * and a little more than the practice has noted for its meter, as its own swab studies would find.
 */
const SD_LOG_OF_DAYS = Math.log(1.45);
const SD_LOG_OF_SWABS = Math.sqrt(Math.log1p(0.3 ** 2));

/** Who takes the swabs, and how often. */
const TAKERS = { tomas: 0.55, ines: 0.2, una: 0.2, wim: 0.05 } as const;
const REASONS = { bleeding: 3, 'no-stock': 1, 'meter-out': 1, calculus: 2, declined: 3, other: 1 } as const satisfies Partial<
  Record<NotTakenReason, number>
>;
const SHARE_NOT_TAKEN = 0.07;
const SHARE_NOT_TAKEN_WITH_BRACE = 0.3;
const SHARE_AFTER_POLISHING = 0.04;
const SHARE_OF_FORGOTTEN_LOT = 0.06;
const SHARE_FAILED = 0.015;

interface SwabDraw {
  readonly profile: Pick<DemoProfile, 'has' | 'isToothless' | 'birthDate' | 'meanLogRlu'>;
  /** ISO UTC. */
  readonly startedAt: string;
  /** ISO local date of the demonstration, from which the lots' dates are counted. */
  readonly today: string;
}

/** The swab of one visit: log-normal about the person's mean, at the meter's limits a bound, and now and then not taken or not counted. */
export function drawReading(swab: SwabDraw, chance: Chance): { readonly meterId: string; readonly reading: SwabReading } {
  const notTaken = drawNotTaken(swab, chance);
  return { meterId: DEMO_METER, reading: notTaken ? { notTaken } : drawTaken(swab, chance) };
}

function drawNotTaken({ profile, startedAt }: SwabDraw, chance: Chance): NotTakenReason | undefined {
  const { has, isToothless, birthDate } = profile;
  if (isToothless || has('overdenture-roots')) return 'no-site';
  if (Number(startedAt.slice(0, 4)) - Number(birthDate.slice(0, 4)) <= YOUNGEST_WITH_SWAB_YEARS) return 'could-not-tolerate';
  if (has('declines-swab')) return 'declined';
  if ((has('brace') || has('retainer')) && chance.happens(SHARE_NOT_TAKEN_WITH_BRACE)) return 'appliance';
  return chance.happens(SHARE_NOT_TAKEN) ? chance.pickByShare<keyof typeof REASONS>(REASONS) : undefined;
}

function drawTaken({ profile, startedAt, today }: SwabDraw, chance: Chance): SwabReading {
  const sdLog = Math.hypot(SD_LOG_OF_DAYS, SD_LOG_OF_SWABS);
  const rlu = Math.round(Math.exp(profile.meanLogRlu + sdLog * chance.normal()));
  const id = chance.pickByShare<keyof typeof TAKERS>(TAKERS);
  const taker = demoMembers.find((member) => member.id === id);
  return {
    takenAt: new Date(Date.parse(startedAt) + chance.whole(3, 9) * MINUTE_MS).toISOString(),
    lotId: drawLot(startedAt.slice(0, 10), today, chance),
    ...(taker && { operator: { name: taker.name, trained: taker.trainedSwab } }),
    site: 'lower-front-tongue-side',
    beforeCleaning: !chance.happens(SHARE_AFTER_POLISHING),
    minutesSinceEating: chance.whole(4, 24) * 10,
    minutesSinceBrushing: chance.whole(6, 30) * 10,
    minutesSinceRinsing: chance.whole(6, 30) * 10,
    ...(chance.happens(SHARE_FAILED) ? { failed: true } : onScale(rlu)),
  };
}

/** The old lot as long as it was in date; after that the new one, and now and then one of the old that was left in the drawer. */
function drawLot(onDate: string, today: string, chance: Chance): string {
  const isOldInDate = onDate <= addDays(today, -DAYS_SINCE_LOT_EXPIRED);
  return isOldInDate || chance.happens(SHARE_OF_FORGOTTEN_LOT) ? DEMO_LOTS.expired : DEMO_LOTS.inUse;
}

/** Where the meter's scale ends, it shows its limit. */
function onScale(rlu: number): Pick<SwabReading, 'rlu' | 'bound'> {
  const { lowestRlu, highestRlu } = DEMO_METER_SCALE;
  if (rlu >= highestRlu) return { rlu: highestRlu, bound: 'at-least' };
  return rlu <= lowestRlu ? { rlu: lowestRlu, bound: 'at-most' } : { rlu, bound: 'exact' };
}
