import type { Study, StudyReading } from '../../../../core/checks/study.ts';

/** Every number of a study, void ones too, as a table that the same page and every spreadsheet reads. */
export function readingsCsv({ runs }: Pick<Study, 'runs'>, readings: readonly StudyReading[], nameOfLot: (id: string) => string): string {
  const lines = [...readings]
    .sort((a, b) => a.run - b.run)
    .map((reading) => {
      const run = runs[reading.run];
      const bound = reading.bound === 'at-most' ? '<' : reading.bound === 'at-least' ? '>' : '';
      return [
        String(reading.run + 1),
        `${bound}${reading.rlu}`,
        run?.part ?? '',
        reading.operator ?? run?.operator ?? '',
        reading.lotId === null ? '' : nameOfLot(reading.lotId),
        reading.takenAt,
        reading.state === 'valid' ? 'yes' : 'no',
        reading.voidReason ?? '',
      ];
    });
  const head = ['run', 'rlu', 'solution or person', 'operator', 'lot', 'taken at', 'counted', 'not counted because'];
  return [head, ...lines].map((cells) => cells.map(cellOf).join(',')).join('\r\n');
}

/** A spreadsheet takes a cell that begins with one of these for a formula; a number is let through. */
const FORMULA = /^[=+\-@\t\r]/;

function cellOf(text: string): string {
  const plain = FORMULA.test(text) ? `'${text}` : text;
  return /[",\r\n]/.test(plain) ? `"${plain.replaceAll('"', '""')}"` : plain;
}
