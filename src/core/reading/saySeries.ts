import type { NoiseTable } from './noiseTable.ts';
import type { PersonSeries, SeriesTrend } from './personSeries.ts';
import { sayPercent } from './sayNoise.ts';
import { sayNumber } from './sayRlu.ts';

/** What the readings of one person on one meter say together; a sentence for each thing, none with an arrow or a praise. */
export function saySeries({ counted, hollow, mean, trend }: PersonSeries, table: NoiseTable): string[] {
  if (counted.length < 2) return [];
  return [sayMean(counted.length, mean), ...sayTrend(trend, table), ...sayHollow(hollow.length)];
}

/** Three digits: more would be noise. */
const sayRounded = (rlu: number): string => sayNumber(Number(rlu.toPrecision(3)));

function sayMean(count: number, mean: PersonSeries['mean']): string {
  const which = `the ${count} readings that count`;
  if (mean.ok) {
    const { rlu, lowRlu, highRlu } = mean.value;
    return `Geometric mean of ${which}: ${sayRounded(rlu)} RLU, 95 % interval ${sayRounded(lowRlu)} to ${sayRounded(highRlu)} for this noise.`;
  }
  const side = mean.reason === 'all-at-most' ? 'lower' : 'upper';
  return `No mean: all of ${which} stand at the ${side} limit of the meter.`;
}

function sayTrend(trend: PersonSeries['trend'], { looks }: NoiseTable): string[] {
  if (!trend.ok) return trend.reason === 'too-few' ? [] : ['No trend: too few of the numbers lie inside the range of the meter.'];
  const { verdict, change, days, moreThanNoise } = trend.value;
  const over = days < 60 ? `${days} days` : `${Math.round(days / 30.4375)} months`;
  const range = `between ${saySigned(change.low)} and ${saySigned(change.high)}`;
  const told = {
    'within-noise': `No trend that this method can see over ${over}: the line through them changes by ${range}.`,
    rise: `Over ${over} the line through them rises by more than noise explains: it changes by ${range}.`,
    fall: `Over ${over} the line through them falls by more than noise explains: it changes by ${range}.`,
  } as const satisfies Record<SeriesTrend['verdict'], string>;
  const oneIn = sayNumber(Math.round(1 / looks.chance));
  return [
    `${told[verdict]} Looked at after each of ${looks.visits} readings, noise alone shows a trend at least once in at most 1 of ${oneIn} people, if the noise is as said.`,
    ...(moreThanNoise === true
      ? ['These readings lie further from the line than the noise said here explains: the interval is then too narrow.']
      : []),
  ];
}

/** "+120 %", "-30 %" with a true minus sign. */
const saySigned = (fraction: number): string => `${fraction < 0 ? '−' : '+'}${sayPercent(Math.abs(fraction))}`;

function sayHollow(count: number): string[] {
  if (count === 0) return [];
  return [count === 1 ? '1 reading does not count and is in none of this.' : `${count} readings do not count and are in none of this.`];
}
