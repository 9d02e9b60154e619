import type { PersonRecord, StoredReading } from '../../api/bundles.ts';
import { noiseOfMeter } from '../../core/reading/blendNoise.ts';
import { compareWithPast } from '../../core/reading/compareWithPast.ts';
import { expectedFall, FEWEST_PEOPLE } from '../../core/reading/expectedFall.ts';
import { knownParts, OCCASION_PARTS, occasionSdLog } from '../../core/reading/noiseSums.ts';
import { parseTakenAt } from '../../core/reading/parseTakenAt.ts';
import { sayChange } from '../../core/reading/readingSentences.ts';
import type { PastReading } from '../../core/reading/types.ts';
import { content } from '../content.ts';
import { formatNumber } from '../format.ts';
import { isCounted, meterOf } from './storedReading.ts';

type Numbered = StoredReading & { readonly rlu: number };

/**
 * First what is told, then what it rests on: what the last two counted readings on one meter say of change, with the limit and which part of the noise is assumed. Never
 * "improved", never an arrow; one meter is never compared with another.
 */
export function sayLastChange(readings: readonly StoredReading[], firstReadings: PersonRecord['firstReadings'] = []): readonly string[] {
  const counted = readings.filter((r): r is Numbered => isCounted(r) && r.rlu !== null);
  const last = counted.at(-1);
  if (!last) return ['No reading that counts yet.'];
  const meter = { meter: meterOf(last), table: content.readingNoise };
  const before = counted.slice(0, -1).flatMap((r) => {
    const at = parseTakenAt(r.takenAt);
    return at ? [{ reading: toPast(r), at }] : [];
  });
  const comparison = compareWithPast(toPast(last), meter, before, Date.parse(last.takenAt));
  if (comparison.kind === 'none') return ['One reading that counts: no change can be told yet.'];
  const [change = '', ...limit] = sayChange(comparison, meter).slice(0, 2);
  const isFall = comparison.kind === 'compared' && comparison.change.verdict === 'fall';
  const first = comparison.kind === 'compared' ? comparison.past.reading : undefined;
  return [change, ...limit, ...(isFall && first ? sayRegression(first, last, firstReadings) : [])];
}

/** High first readings fall by themselves; by how much is said only from enough people of this practice, on this meter. */
function sayRegression(first: PastReading, last: Numbered, firstReadings: PersonRecord['firstReadings']): readonly string[] {
  const population = firstReadings.find(({ meterId }) => meterId === last.meterId);
  const noise = noiseOfMeter(content.readingNoise, meterOf(last));
  const sdLogSingle = occasionSdLog(noise);
  const fall = population && first.rlu > 0 ? expectedFall({ firstRlu: first.rlu, population, sdLogSingle }) : undefined;
  const isHigh = first.rlu >= last.cutoffRlu || fall?.ok === true;
  if (!isHigh) return [];
  const general = 'High first readings tend to fall without treatment; part of this fall is that';
  if (!fall?.ok) {
    const few = population && population.people < FEWEST_PEOPLE ? `: by how much is not said from ${population.people} people` : '';
    return [`${general}${few}.`];
  }
  const seen = 1 - last.rlu / first.rlu;
  const { fraction, people } = fall.value;
  const isAssumed = knownParts(noise, OCCASION_PARTS).some(({ prior, ownWeight }) => prior.from === 'assumed' && ownWeight < 1);
  const assumed = isAssumed ? ', with noise that is partly assumed' : '';
  return [
    `${general}: about ${sayPercent(fraction)} would be expected by that alone, ${sayPercent(seen)} was seen. Worked out from the first readings of ${formatNumber(people)} people of this practice on this meter${assumed}.`,
  ];
}

const sayPercent = (fraction: number) => `${formatNumber(Math.round(100 * fraction))} %`;

const toPast = ({ takenAt, rlu, bound, meterId, operator, lotId }: Numbered): PastReading => ({
  takenAt,
  rlu,
  bound,
  state: 'valid',
  meterId,
  ...(operator !== null && { operator }),
  ...(lotId !== null && { lotId }),
});
