import { cvOfLogVariance, sayPercent } from '../reading/sayNoise.ts';
import { oneWayAnova } from '../stats/variance/oneWayAnova.ts';
import type { CountedRuns } from './countedRuns.ts';
import { daysFigures } from './daysFigures.ts';
import { ALL_ALIKE, isConstant, percentOf, rangeOf, report, type StudyOutcome, sayLeftOut, tooFew, withoutHoles } from './studyOutcome.ts';

/** Noise of one swab as the meter has it now, to take it off the change from day to day. */
export interface SwabNoise {
  readonly variance: number;
  readonly degreesOfFreedom: number;
  readonly isOwn: boolean;
}

export function reportDays(runs: CountedRuns, swabNoise: SwabNoise | undefined): StudyOutcome {
  const { kept, leftOut } = withoutHoles(runs, ({ part }) => part ?? '');
  const pairs = kept.filter((person) => person.length === 2);
  if (pairs.length < 2) return tooFew(runs, 'people', 'with both of their days');
  const counted = pairs.flat();
  const values = pairs.map((person) => person.map(({ ln }) => ln));
  if (values.every(isConstant)) return ALL_ALIKE;
  const { days, withinPerson } = daysFigures(oneWayAnova(values).within, swabNoise);
  const own = withinPerson
    ? [
        `Without the noise of the swabs, ${sayPercent(cvOfLogVariance(swabNoise?.variance ?? 0))} ${swabNoise?.isOwn ? 'by your own study' : 'assumed'}, people themselves add ${percentOf(withinPerson)} (${rangeOf(withinPerson)}).`,
      ]
    : ['The noise of the swabs is not known, so it is still in this figure.'];
  return report({
    counted,
    leftOut,
    sentences: [`From one day to another one person's readings differ by ${percentOf(days)} (95 % interval ${rangeOf(days)}).`, ...own],
    figures: [
      { what: 'Day to day with the noise of the swabs', figure: days },
      ...(withinPerson ? [{ what: 'Day to day in a person', figure: withinPerson, component: 'withinPerson' as const }] : []),
    ],
    missing: sayLeftOut(runs, leftOut, 'person'),
  });
}
