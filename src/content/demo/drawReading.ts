import type { NotTakenReason, SwabReading } from '../../core/reading/types.ts';
import type { Chance } from './chance.ts';
import { demoMembers } from './members.ts';
import { DEMO_LOTS, DEMO_METER, DEMO_METER_SCALE } from './practice.ts';
import type { DemoProfile } from './profile.ts';

const MINUTE_MS = 60_000;
const YOUNGEST_WITH_SWAB_YEARS = 5;

/** The swab of one visit: log-normal about the person's mean, at the meter's limits a bound, and now and then not taken or after polishing. */
export function drawReading(
  profile: DemoProfile,
  startedAt: string,
  chance: Chance,
): { readonly meterId: string; readonly reading: SwabReading } {
  return { meterId: DEMO_METER, reading: profile.has('no-teeth') ? { notTaken: 'no-site' } : drawTaken(profile, startedAt, chance) };
}

function drawTaken(profile: DemoProfile, startedAt: string, chance: Chance): SwabReading {
  const isTooYoung = Number(startedAt.slice(0, 4)) - Number(profile.birthDate.slice(0, 4)) <= YOUNGEST_WITH_SWAB_YEARS;
  if (isTooYoung) return { notTaken: 'could-not-tolerate' };
  if (chance.happens(0.08)) return { notTaken: chance.pick<NotTakenReason>(['declined', 'bleeding', 'no-stock']) };
  const { cvAnalytical, cvWithinPerson, lowestRlu, highestRlu } = DEMO_METER_SCALE;
  const sdLog = Math.sqrt(Math.log1p(cvAnalytical ** 2) + Math.log1p(cvWithinPerson ** 2));
  const rlu = Math.round(Math.exp(profile.meanLogRlu + sdLog * chance.normal()));
  const taker = demoMembers.find(({ id }) => id === (chance.happens(0.65) ? 'tomas' : 'ines'));
  return {
    takenAt: new Date(Date.parse(startedAt) + chance.whole(3, 9) * MINUTE_MS).toISOString(),
    ...(rlu >= highestRlu
      ? { rlu: highestRlu, bound: 'at-least' }
      : rlu <= lowestRlu
        ? { rlu: lowestRlu, bound: 'at-most' }
        : { rlu, bound: 'exact' }),
    lotId: DEMO_LOTS.inUse,
    ...(taker && { operator: { name: taker.name, trained: taker.trainedSwab } }),
    site: 'lower-front-tongue-side',
    beforeCleaning: !chance.happens(0.05),
    minutesSinceEating: chance.whole(4, 24) * 10,
    minutesSinceBrushing: chance.whole(6, 30) * 10,
    minutesSinceRinsing: chance.whole(6, 30) * 10,
  };
}
