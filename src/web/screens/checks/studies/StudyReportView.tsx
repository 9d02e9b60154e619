import type { Study } from '../../../../core/checks/study.ts';
import type { StudyRow } from '../../../../core/checks/studyOutcome.ts';
import { sayPercent } from '../../../../core/reading/sayNoise.ts';
import { sayRlu } from '../../../../core/reading/sayRlu.ts';
import type { StudyRecord } from '../../../data/studyQueries.ts';
import { formatNumber } from '../../../format.ts';
import type { namesOf } from './namesOf.ts';
import { StudyDots, StudyIntervals } from './StudyPictures.tsx';
import { type StudyPicture, studyPicture } from './studyPoints.ts';

interface StudyReportViewProps {
  readonly record: Pick<StudyRecord, 'study' | 'readings'>;
  readonly names: ReturnType<typeof namesOf>;
  readonly sentences: readonly string[];
  readonly rows: readonly StudyRow[];
}

const BY: Readonly<Partial<Record<Study['kind'], string>>> = { hands: 'member', 'paired-days': 'person' };

/** The answer in words, then drawn, then as a table. */
export function StudyReportView({ record, names, sentences, rows }: StudyReportViewProps) {
  const [answer, ...others] = sentences;
  const { study, readings } = record;
  const picture = studyPicture(study, readings, names.nameOfLot);
  return (
    <>
      {answer && <p className="opening">{answer}</p>}
      {others.map((sentence) => (
        <p key={sentence}>{sentence}</p>
      ))}
      <figure className="study-figure">
        <figcaption>{sayPicture(picture, rows.length > 0)}</figcaption>
        <StudyDots picture={picture} by={BY[study.kind] ?? 'lot'} />
        {rows.length > 0 && <StudyIntervals rows={rows} />}
      </figure>
      {rows.length > 0 && <RowsTable rows={rows} />}
      <details>
        <summary>Every number as a table</summary>
        <ReadingsTable record={record} names={names} />
      </details>
    </>
  );
}

/** What is drawn, in one sentence. */
function sayPicture({ scale, groups }: StudyPicture, hasIntervals: boolean): string {
  if (groups.length === 0) return 'No number yet to draw.';
  const dots =
    scale === 'rlu'
      ? 'Each dot is a swab, in a column for each person; a line joins the two days of one person.'
      : 'Each dot is a swab, in the order in which it was taken, held against the mean of the same solution.';
  return hasIntervals ? `${dots} Beside it what each part adds, with its 95 % interval.` : dots;
}

function RowsTable({ rows }: Pick<StudyReportViewProps, 'rows'>) {
  return (
    <table className="study-rows" aria-label="Parts of the noise">
      <thead>
        <tr>
          <th scope="col">Part of the noise</th>
          <th scope="col">Coefficient of variation</th>
          <th scope="col">95 % interval</th>
          <th scope="col">Degrees of freedom</th>
        </tr>
      </thead>
      <tbody>
        {rows.map(({ what, cv, low, high, degreesOfFreedom }) => (
          <tr key={what}>
            <th scope="row">{what}</th>
            <td data-label="Coefficient of variation">{sayPercent(cv)}</td>
            <td data-label="95 % interval">
              {sayPercent(low)} to {high === null ? 'far above 100 %' : sayPercent(high)}
            </td>
            <td data-label="Degrees of freedom">{formatNumber(degreesOfFreedom)}</td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}

function ReadingsTable({ record: { study, readings }, names }: Pick<StudyReportViewProps, 'record' | 'names'>) {
  const inOrder = [...readings].sort((a, b) => a.run - b.run);
  return (
    <table aria-label="Every number">
      <thead>
        <tr>
          <th scope="col">Swab</th>
          <th scope="col">What</th>
          <th scope="col">RLU</th>
          <th scope="col">Counted</th>
        </tr>
      </thead>
      <tbody>
        {inOrder.map((reading) => {
          const run = study.runs[reading.run];
          return (
            <tr key={reading.id}>
              <th scope="row">{reading.run + 1}</th>
              <td data-label="What">{run && names.sayRun(run)}</td>
              <td data-label="RLU">{sayRlu(reading.rlu, reading.bound)}</td>
              <td data-label="Counted">{reading.state === 'valid' ? 'yes' : `not counted: ${reading.voidReason}`}</td>
            </tr>
          );
        })}
      </tbody>
    </table>
  );
}
