import { oneWayComponents } from '../stats/variance/oneWayComponents.ts';
import type { CountedRuns } from './countedRuns.ts';
import { lotsFigures } from './lotsFigures.ts';
import {
  ALL_ALIKE,
  cannot,
  isConstant,
  percentOf,
  rangeOf,
  report,
  type StudyOutcome,
  sayLeftOut,
  tooFew,
  withoutHoles,
} from './studyOutcome.ts';

export function reportLots(runs: CountedRuns): StudyOutcome {
  const lots = new Set([...runs.counted.map(({ run }) => run), ...runs.missing.map(({ run }) => run)].map(({ lotId }) => lotId));
  if (lots.size < 2) return cannot('One lot alone shows no difference between lots.', 'Add swabs of a second lot.');
  // One swab of every lot makes a round, so that each lot keeps the same number.
  const { kept, leftOut } = withoutHoles(runs, ({ replicate }) => String(replicate));
  if (kept.length < 2) return tooFew(runs, 'rounds', 'with a swab of every lot');
  const counted = kept.flat();
  const values = [...lots].map((lotId) => counted.filter(({ run }) => run.lotId === lotId).map(({ ln }) => ln));
  if (values.every(isConstant)) return ALL_ALIKE;
  const { lots: between, swabs } = lotsFigures(oneWayComponents(values));
  return report({
    counted,
    leftOut,
    sentences: [
      `Lots add ${percentOf(between)}, swabs of one lot ${percentOf(swabs)}.`,
      `95 % intervals: lots ${rangeOf(between)}, swabs ${rangeOf(swabs)}.`,
      ...(between.interval.low === 0 ? ['Lots may add nothing that this study can see.'] : []),
    ],
    figures: [
      { what: 'Lots', figure: between, component: 'lot' },
      { what: 'One swab after another', figure: swabs, component: 'repeatability' },
    ],
    missing: sayLeftOut(runs, leftOut, 'round'),
  });
}
