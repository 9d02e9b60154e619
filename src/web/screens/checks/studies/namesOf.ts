import type { ChecksView } from '../../../../api/swabChecks.ts';
import type { Study, StudyRun } from '../../../../core/checks/study.ts';
import type { Meter } from '../../../../core/reading/types.ts';
import { sayRun } from './studyWords.ts';

/** How the parts of a study are called on the page. An id stands for itself where its name is gone. */
export function namesOf(study: Pick<Study, 'meterId' | 'lotIds'>, { meters, lots }: Pick<ChecksView, 'meters' | 'lots'>) {
  const nameOfMeter = (id: string) => meters.find(({ meter }) => meter.id === id)?.meter.name ?? id;
  const nameOfLot = (id: string) => lots.find((lot) => lot.id === id)?.name ?? id;
  return {
    meterName: nameOfMeter(study.meterId),
    lotNames: study.lotIds.map(nameOfLot),
    nameOfLot,
    nameOfMeter,
    sayRun: (run: StudyRun) => sayRun(run, nameOfLot, nameOfMeter),
    findMeter: (id: string): Meter | undefined => meters.find(({ meter }) => meter.id === id)?.meter,
  };
}
