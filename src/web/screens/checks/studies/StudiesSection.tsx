import type { ChecksView, StudyLine } from '../../../../api/swabChecks.ts';
import { formatDate } from '../../../format.ts';
import { Link } from '../../../parts/Link.tsx';
import { SectionHead } from '../../visit/SectionHead.tsx';
import { nameOfKind } from './studyWords.ts';

/** Each study with what it found, or how far it has come. */
export function StudiesSection({ view }: { readonly view: ChecksView }) {
  return (
    <section aria-label="Studies">
      <SectionHead title="Studies" number={6} />
      {view.studies.length === 0 ? (
        <p>No swab study yet. Until then the noise of readings is assumed.</p>
      ) : (
        <ul className="control-list">
          {view.studies.map((study) => (
            <li key={study.id}>
              <Link to={`/checks/studies/${study.id}`}>{nameOfKind(study.kind)}</Link>, {sayState(study)}
              {study.report?.sentences.map((sentence) => (
                <span key={sentence}> {sentence}</span>
              ))}
            </li>
          ))}
        </ul>
      )}
      <p className="actions">
        <Link to="/checks/studies/new" className="action">
          Plan a study
        </Link>
        <Link to="/checks/studies" className="action">
          All studies
        </Link>
      </p>
    </section>
  );
}

function sayState({ state, report, dropped, swabs, taken, plannedBy, plannedAt }: StudyLine): string {
  if (report) return `reported on ${formatDate(report.onDate)} by ${report.by}.`;
  if (dropped) return `given up: ${dropped.reason}.`;
  const planned = `planned on ${formatDate(plannedAt)} by ${plannedBy}`;
  return state === 'planned' ? `${planned}, not begun.` : `${planned}, ${taken} of ${swabs} swabs taken.`;
}
