import { useEffect, useRef } from 'react';
import type { ChecksView } from '../../../../api/swabChecks.ts';
import { useChecks } from '../../../data/checkQueries.ts';
import type { StudyRecord } from '../../../data/studyQueries.ts';
import { useStudy } from '../../../data/studyQueries.ts';
import { formatDate, plural } from '../../../format.ts';
import { Link } from '../../../parts/Link.tsx';
import { LoadState } from '../../../parts/LoadState.tsx';
import { namesOf } from './namesOf.ts';
import { sayNotChecked } from './sayPeople.ts';
import { nameOfKind } from './studyWords.ts';

/** The order of the swabs on paper, with a box for each number; the same order as on the screen. */
export function RunSheetScreen({ studyId }: { readonly studyId: string }) {
  const record = useStudy(studyId);
  const checks = useChecks();
  const button = useRef<HTMLButtonElement>(null);
  const isThere = record.data !== undefined && checks.data !== undefined;
  useEffect(() => {
    if (isThere) button.current?.focus();
  }, [isThere]);
  if (!record.data) return <LoadState query={record} what="the study" />;
  if (!checks.data) return <LoadState query={checks} what="meters and lots" />;
  return (
    <>
      <div className="sheets-head">
        <h1>Run sheet</h1>
        <div className="actions">
          <button ref={button} type="button" className="action primary" onClick={() => print()}>
            Print
          </button>
          <Link to={`/checks/studies/${studyId}`} className="action">
            Back to the study
          </Link>
        </div>
      </div>
      <Sheet record={record.data} checks={checks.data} />
    </>
  );
}

function Sheet({ record, checks }: { readonly record: StudyRecord; readonly checks: ChecksView }) {
  const { study } = record;
  const notChecked = sayNotChecked(record);
  const { meterName, sayRun } = namesOf(study, checks);
  return (
    <article className="run-sheet" aria-label="Run sheet">
      <h2>{nameOfKind(study.kind)}</h2>
      <p>
        {plural(study.runs.length, 'swab')} on {meterName}, planned on {formatDate(study.plannedAt)} by {study.plannedBy}. Order of chance
        number {study.design.seed}.
      </p>
      <p>
        {study.kind === 'paired-days'
          ? 'Two swabs of one person lie 24 hours or more apart, each before cleaning. Who stands behind a number is noted elsewhere, never on this sheet.'
          : 'Take the swabs in this order, and write each number in its box as soon as the meter shows it. A swab that failed is written down as failed.'}
      </p>
      {notChecked && <p>{notChecked}</p>}
      <ol className="run-boxes">
        {study.runs.map((run) => (
          <li key={run.index}>
            <span className="run-number">{run.index + 1}</span>
            <span>{sayRun(run)}</span>
            <span className="run-box" />
          </li>
        ))}
      </ol>
    </article>
  );
}
