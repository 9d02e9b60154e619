import type { ChecksView, StudyLine } from '../../../../api/swabChecks.ts';
import { formatDate } from '../../../format.ts';
import { SectionHead } from '../../visit/SectionHead.tsx';

const KINDS: Readonly<Record<StudyLine['kind'], string>> = {
  hands: 'Hands',
  lots: 'Lots',
  'paired-days': 'Two days of each person',
  meters: 'Two meters',
  'new-lot': 'A new lot',
  cutoff: 'Local cut-off',
};

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
              <strong>{KINDS[study.kind]}</strong>, {sayState(study)}
              {study.report?.sentences.map((sentence) => (
                <span key={sentence}> {sentence}</span>
              ))}
            </li>
          ))}
        </ul>
      )}
    </section>
  );
}

function sayState({ state, report, dropped, swabs, taken, plannedBy, plannedAt }: StudyLine): string {
  if (report) return `reported on ${formatDate(report.onDate)} by ${report.by}.`;
  if (dropped) return `given up: ${dropped.reason}.`;
  const planned = `planned on ${formatDate(plannedAt)} by ${plannedBy}`;
  return state === 'planned' ? `${planned}, not begun.` : `${planned}, ${taken} of ${swabs} swabs taken.`;
}
