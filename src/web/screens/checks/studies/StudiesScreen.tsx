import type { SessionView } from '../../../../api/apiTypes.ts';
import type { ChecksView } from '../../../../api/swabChecks.ts';
import { useChecks } from '../../../data/checkQueries.ts';
import { formatDate, plural } from '../../../format.ts';
import { Link } from '../../../parts/Link.tsx';
import { LoadState } from '../../../parts/LoadState.tsx';
import { nameOfKind, STATE_WORDS } from './studyWords.ts';

type Line = ChecksView['studies'][number];

const ORDER: readonly Line['state'][] = ['running', 'planned', 'reported', 'dropped'];

/** Every study, those that go on first. */
export function StudiesScreen({ session }: { readonly session: SessionView }) {
  const checks = useChecks();
  if (!checks.data) return <LoadState query={checks} what="the studies" />;
  const studies = [...checks.data.studies].sort((a, b) => ORDER.indexOf(a.state) - ORDER.indexOf(b.state));
  const going = studies.filter(({ state }) => state === 'running' || state === 'planned').length;
  const mayPlan = session.member.roles.some((role) => role !== 'assistant');
  return (
    <>
      <h1>Studies</h1>
      <p className="opening">
        {studies.length === 0
          ? 'No study yet: until one is reported, verdicts rest on noise that is assumed.'
          : `${plural(studies.length, 'study', 'studies')}, ${going === 0 ? 'none of them going on' : `${going} going on`}. What a reported study measured stands in every verdict on its meter.`}
      </p>
      {!mayPlan && <p className="hint">A lead, a hygienist or a dentist plans a study; everybody types its numbers.</p>}
      <p className="actions">
        {mayPlan && (
          <Link to="/checks/studies/new" className="action primary">
            Plan a study
          </Link>
        )}
        <Link to="/checks/studies/cutoff" className="action">
          Do readings go with new lesions here?
        </Link>
      </p>
      {studies.length > 0 && <StudiesTable studies={studies} checks={checks.data} />}
    </>
  );
}

function StudiesTable({ studies, checks }: { readonly studies: readonly Line[]; readonly checks: ChecksView }) {
  const meterName = (id: string) => checks.meters.find(({ meter }) => meter.id === id)?.meter.name ?? id;
  return (
    <table className="studies" aria-label="Studies">
      <thead>
        <tr>
          <th scope="col">Study</th>
          <th scope="col">State</th>
          <th scope="col">Planned</th>
          <th scope="col">What it says</th>
        </tr>
      </thead>
      <tbody>
        {studies.map((study) => (
          <tr key={study.id}>
            <th scope="row">
              <Link to={`/checks/studies/${study.id}`}>
                {nameOfKind(study.kind)}, {meterName(study.meterId)}
              </Link>
            </th>
            <td data-label="State">
              {STATE_WORDS[study.state]}
              {study.state === 'running' && `, ${study.taken} of ${plural(study.swabs, 'swab')} read`}
            </td>
            <td data-label="Planned">
              {formatDate(study.plannedAt)}, {study.plannedBy}
            </td>
            <td data-label="What it says">{study.report?.sentences[0] ?? study.dropped?.reason ?? ''}</td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}
