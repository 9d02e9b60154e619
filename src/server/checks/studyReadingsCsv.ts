import { writeCsv } from '../../actions/writeCsv.ts';
import type { Study, StudyReading } from '../../core/checks/study.ts';

const HEAD = ['run', 'rlu', 'solution or person', 'operator', 'lot', 'taken at', 'counted', 'not counted because'];
const BOUND_SIGNS = { 'at-most': '<', 'at-least': '>' } as const;

/** Every number of a study in the order of the sheet, void ones too, as a table that the page of a study reads as well. */
export function studyReadingsCsv(
  { runs }: Pick<Study, 'runs'>,
  readings: readonly StudyReading[],
  lots: readonly { readonly id: string; readonly name: string }[],
): string {
  const rows = [...readings]
    .sort((a, b) => a.run - b.run)
    .map(({ run: index, rlu, bound, operator, lotId, takenAt, state, voidReason }) => {
      const run = runs[index];
      return [
        index + 1,
        bound === 'exact' ? rlu : `${BOUND_SIGNS[bound]}${rlu}`,
        run?.part,
        operator ?? run?.operator,
        lots.find(({ id }) => id === lotId)?.name ?? lotId,
        takenAt,
        state === 'valid' ? 'yes' : 'no',
        voidReason,
      ];
    });
  return writeCsv([HEAD, ...rows]);
}
