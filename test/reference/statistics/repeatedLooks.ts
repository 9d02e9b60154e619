import { blendNoise } from '../../../src/core/reading/blendNoise.ts';
import { compareWithPast } from '../../../src/core/reading/compareWithPast.ts';
import { changePoint } from '../../../src/core/reading/lookPoint.ts';
import { occasionSdLog, sumOfParts } from '../../../src/core/reading/noiseSums.ts';
import type { NoiseTable } from '../../../src/core/reading/noiseTable.ts';
import { personSeries } from '../../../src/core/reading/personSeries.ts';
import type { Meter, OwnEstimate, PastReading } from '../../../src/core/reading/types.ts';
import { seededRandom } from './seededRandom.ts';

/** What each reading is compared with. */
export const LOOK_RULES = ['last', 'first', 'mean of those before'] as const;

interface Looks {
  readonly people: number;
  readonly seed: number;
  readonly table: NoiseTable;
  readonly rule: (typeof LOOK_RULES)[number];
  /** `changing`: three hands in turn by chance and a new lot every second visit, each with its own lasting effect, all of it on record. */
  readonly hands: 'one' | 'changing';
}

const VISITS = 6;
const LEVEL_RLU = 5000;
const HANDS = ['Asha', 'Ben', 'Cleo'] as const;
const found = { studyId: 's', reportedOn: '2026-01-01', kind: 'hands' } as const;
/** Hands and lots differ much, so that they matter beside the other noise. */
const OWN: readonly OwnEstimate[] = [
  { component: 'operator', variance: 0.2, degreesOfFreedom: 500, ...found },
  { component: 'lot', variance: 0.1, degreesOfFreedom: 500, ...found },
];
/** Invented; wide, so that no simulated reading meets a limit. */
const METER: Meter = {
  id: 'a',
  name: 'Demo meter A',
  lowestRlu: 0.01,
  highestRlu: 1e9,
  cutoffRlu: 4200,
  countdownS: 25,
  cvAnalytical: 0.25,
  cvAnalyticalAssumed: true,
  cvWithinPerson: 0.35,
  cvWithinPersonAssumed: true,
};

/** Share of people without any change, read six times, who are told of a rise or fall at least once. */
export function falseChangeShare({ people, seed, table, rule, hands }: Looks): number {
  const { normal, uniform } = seededRandom(seed);
  const meter = hands === 'one' ? METER : { ...METER, own: OWN };
  const noise = blendNoise(table, meter);
  const sdOf = (part: 'operator' | 'lot') => Math.sqrt(noise[part].variance ?? 0);
  const sdRest = Math.sqrt(sumOfParts(noise, ['repeatability', 'withinPerson']));
  let told = 0;
  for (let person = 0; person < people; person++) {
    const handEffects = HANDS.map(() => sdOf('operator') * normal());
    let lotEffect = 0;
    const readings = Array.from({ length: VISITS }, (_, visit): PastReading => {
      const hand = hands === 'one' ? 0 : Math.floor(uniform() * HANDS.length);
      if (visit % 2 === 0) lotEffect = sdOf('lot') * normal();
      const log = Math.log(LEVEL_RLU) + (handEffects[hand] ?? 0) + lotEffect + sdRest * normal();
      return {
        takenAt: `2026-0${visit + 1}-01T09:00:00Z`,
        rlu: Math.exp(log),
        bound: 'exact',
        state: 'valid',
        meterId: 'a',
        operator: HANDS[hand] ?? '',
        lotId: `lot-${hands === 'one' ? 0 : Math.floor(visit / 2)}`,
      };
    });
    const isTold = (visit: number) =>
      rule === 'mean of those before' ? passesMean(readings, visit, changePoint(table) * occasionSdLog(noise)) : isChange(visit);
    const isChange = (visit: number) => {
      const [reading, before] = [readings[visit], readings[rule === 'last' ? visit - 1 : 0]];
      if (!reading || !before) throw new Error('a visit without a reading');
      const at = (ms: number) => ({ instantMs: ms, localDate: '', localTime: '' });
      const got = compareWithPast(reading, { meter, table }, [{ reading: before, at: at(visit - 1) }], visit);
      return got.kind === 'compared' && got.change.verdict !== 'within-noise';
    };
    if (Array.from({ length: VISITS - 1 }, (_, i) => i + 1).some(isTold)) told += 1;
  }
  return told / people;
}

/** ln of a reading further from the mean of those before it than `reach` single sds, allowed for both. */
function passesMean(readings: readonly PastReading[], visit: number, reach: number): boolean {
  const logs = readings.slice(0, visit + 1).map(({ rlu }) => Math.log(rlu));
  const mean = logs.slice(0, visit).reduce((sum, log) => sum + log, 0) / visit;
  return Math.abs((logs[visit] ?? 0) - mean) > reach * Math.sqrt(1 + 1 / visit);
}

/** People without any change, read six times by changing hands: told of a trend at least once; and whose interval of the mean holds. */
export function seriesShares({ people, seed, table }: Pick<Looks, 'people' | 'seed' | 'table'>): { toldOfTrend: number; meanHeld: number } {
  const { normal, uniform } = seededRandom(seed);
  const meter = { ...METER, own: OWN };
  const noise = blendNoise(table, meter);
  const sdOf = (part: 'operator' | 'lot') => Math.sqrt(noise[part].variance ?? 0);
  const sdRest = Math.sqrt(sumOfParts(noise, ['repeatability', 'withinPerson']));
  let [told, held] = [0, 0];
  for (let person = 0; person < people; person++) {
    const handEffects = HANDS.map(() => sdOf('operator') * normal());
    const lotEffects = [0, 1, 2].map(() => sdOf('lot') * normal());
    const readings = Array.from({ length: VISITS }, (_, visit): PastReading => {
      const [hand, lot] = [Math.floor(uniform() * HANDS.length), Math.floor(visit / 2)];
      const log = Math.log(LEVEL_RLU) + (handEffects[hand] ?? 0) + (lotEffects[lot] ?? 0) + sdRest * normal();
      const of = { operator: HANDS[hand] ?? '', lotId: `lot-${lot}` };
      return { takenAt: `2026-0${visit + 1}-01T09:00:00Z`, rlu: Math.exp(log), bound: 'exact', state: 'valid', meterId: 'a', ...of };
    });
    const seen = [3, 4, 5, 6].map((count) => personSeries(readings.slice(0, count), [meter], table)[0]);
    if (seen.some((series) => series?.trend.ok && series.trend.value.verdict !== 'within-noise')) told += 1;
    const mean = seen.at(-1)?.mean;
    if (mean?.ok && mean.value.lowRlu < LEVEL_RLU && LEVEL_RLU < mean.value.highRlu) held += 1;
  }
  return { toldOfTrend: told / people, meanHeld: held / people };
}
