import type { StudyEstimate } from '../../../../core/checks/study.ts';
import { type BlendedPart, blendNoise } from '../../../../core/reading/blendNoise.ts';
import type { NoiseTable } from '../../../../core/reading/noiseTable.ts';
import { cvOfLogVariance, sayPercent } from '../../../../core/reading/sayNoise.ts';
import type { Meter, StudyKind } from '../../../../core/reading/types.ts';

interface UseOf {
  readonly meter: Meter;
  readonly table: NoiseTable;
  readonly kind: StudyKind;
  readonly estimates: readonly StudyEstimate[];
  readonly today: string;
}

/** What will be reckoned otherwise once a study is reported: each part before and after, and which verdicts use it. */
export function sayUse({ meter, table, kind, estimates, today }: UseOf): readonly string[] {
  if (estimates.length === 0) return ['No verdict will be reckoned otherwise by it: it gives no part of the noise.'];
  const own = estimates.map((estimate) => ({ ...estimate, studyId: 'this', reportedOn: today, kind }));
  const before = blendNoise(table, meter);
  const after = blendNoise(table, { ...meter, own: [...(meter.own ?? []), ...own] });
  const parts = estimates.map(({ component }) => {
    const name = table.parts[component].name;
    return `${name}: ${saySize(before[component])} until now, ${saySize(after[component])} from now on, ${sayPercent(after[component].ownWeight)} of it from studies here.`;
  });
  const isOnlyDays = estimates.every(({ component }) => component === 'withinPerson');
  const verdicts = isOnlyDays
    ? `Every verdict on ${meter.name} whether a person's reading has changed uses it from now on.`
    : `Every verdict on ${meter.name} uses it from now on: whether a reading is above the cut-off, and whether it has changed.`;
  return [
    ...parts.map(capital),
    verdicts,
    'Verdicts given before stay on the record as they were; Over time says beside them what they would be now.',
  ];
}

function saySize({ variance, prior, own }: BlendedPart): string {
  if (variance === null) return 'not counted';
  const from = own ? '' : prior.from === 'assumed' ? ' (assumed)' : ' (typed as measured)';
  return `${sayPercent(cvOfLogVariance(variance))}${from}`;
}

const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);
