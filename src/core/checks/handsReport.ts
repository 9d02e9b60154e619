import { crossedComponents } from '../stats/variance/crossedComponents.ts';
import { handsFigures } from './handsFigures.ts';
import { cvOfLogVariance, type NoiseFigure } from './noiseFigure.ts';
import type { Study, StudyReading, StudyReport } from './study.ts';

export type ComputedReport = Pick<StudyReport, 'sentences' | 'estimates' | 'body'>;

/**
 * What the hands of a practice add to a reading, from solutions swabbed by several people several times each.
 * @throws RangeError saying what is missing and what would make the study work
 */
export function handsReport(study: Study, readings: readonly StudyReading[]): ComputedReport {
  const observations = readings.flatMap(({ run, rlu, operator, state }) => {
    const { part, operator: planned } = study.runs[run] ?? {};
    const who = operator ?? planned;
    return state === 'void' || part === undefined || who === undefined ? [] : [{ part, operator: who, value: Math.log(rlu) }];
  });
  const components = crossedComponents(observations);
  const figures = handsFigures(components);
  const { swabs, hands } = figures;
  const estimateOf = ({ variance, degreesOfFreedom }: NoiseFigure) => ({ variance, degreesOfFreedom, readings: observations.length });
  const people = new Set(observations.map(({ operator }) => operator)).size;
  return {
    sentences: [
      `Hands add ${sayFigure(hands)}, one swab after another ${sayFigure(swabs)}.`,
      `${observations.length} swabs by ${people} people: with so few people the part of the hands is known only roughly.`,
      ...(hands.variance < 0 ? ['Between people there was less difference than chance alone would give, so nothing is added for it.'] : []),
    ],
    estimates: [
      { component: 'repeatability', ...estimateOf(swabs) },
      { component: 'operator', ...estimateOf(hands) },
    ],
    body: { figures, components },
  };
}

const sayPercent = (variance: number): string => `${Math.round(100 * cvOfLogVariance(variance))} %`;

/** "9 % (95 % interval 3 % to 60 %)". */
const sayFigure = ({ variance, interval }: NoiseFigure): string =>
  `${sayPercent(variance)} (95 % interval ${sayPercent(interval.low)} to ${sayPercent(interval.high)})`;
