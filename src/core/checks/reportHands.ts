import { cvOfLogVariance, sayPercent } from '../reading/sayNoise.ts';
import { crossedComponents } from '../stats/variance/crossedComponents.ts';
import type { CountedRuns } from './countedRuns.ts';
import { handsFigures } from './handsFigures.ts';
import {
  ALL_ALIKE,
  cannot,
  isFlat,
  percentOf,
  rangeOf,
  report,
  type StudyOutcome,
  sayLeftOut,
  tooFew,
  withoutHoles,
} from './studyOutcome.ts';

/** Change of a person from day to day as the meter has it now, to stand beside what hands and swabs add. */
export interface DayNoise {
  readonly variance: number;
  readonly isOwn: boolean;
}

export function reportHands(runs: CountedRuns, dayNoise: DayNoise | undefined): StudyOutcome {
  const operators = new Set([...runs.counted.map(({ run }) => run), ...runs.missing.map(({ run }) => run)].map(({ operator }) => operator));
  if (operators.size < 2)
    return cannot('One pair of hands alone cannot be told from its swabs.', 'Let a second person swab the same solutions.');
  const { kept, leftOut } = withoutHoles(runs, ({ part }) => part ?? '');
  if (kept.length < 2) return tooFew(runs, 'solutions', 'swabbed by every hand every time');
  const counted = kept.flat();
  if (isFlat(counted)) return ALL_ALIKE;
  const observations = counted.map(({ run, ln }) => ({ part: run.part ?? '', operator: run.operator ?? '', value: ln }));
  const figures = handsFigures(crossedComponents(observations));
  const { swabs, hands, together } = figures;
  const people = dayNoise
    ? `, people themselves ${sayPercent(cvOfLogVariance(dayNoise.variance))} from day to day (${dayNoise.isOwn ? 'own study' : 'assumed'})`
    : '';
  const fewHands =
    hands.interval.high > 4 * Math.max(hands.variance, swabs.variance)
      ? [`${operators.size} pairs of hands say little of how hands differ: only more hands would narrow that, more swabs would not.`]
      : [];
  return report({
    counted,
    leftOut,
    sentences: [
      `Hands add ${percentOf(hands)}, swabs ${percentOf(swabs)}${people}.`,
      `95 % intervals: hands ${rangeOf(hands)}, swabs ${rangeOf(swabs)}.`,
      ...(hands.interval.low === 0 ? ['Hands may add nothing that this study can see.'] : []),
      ...fewHands,
      'Measured on solutions: how evenly hands pick up plaque is not in it.',
    ],
    figures: [
      { what: 'Hands', figure: hands, component: 'operator' },
      { what: 'One swab after another', figure: swabs, component: 'repeatability' },
      { what: 'Hands and swabs together', figure: together },
    ],
    missing: sayLeftOut(runs, leftOut, 'solution'),
  });
}
