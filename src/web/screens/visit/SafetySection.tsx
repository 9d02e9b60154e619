import type { VisitBundle } from '../../../api/bundles.ts';
import { plural } from '../../format.ts';
import { Link } from '../../parts/Link.tsx';
import type { Line } from './line.ts';
import { Reconfirm, ScopeLines, ScopeProblem } from './ScopeLines.tsx';
import { SectionHead } from './SectionHead.tsx';
import { permissionSentence } from './speakerLines.ts';
import { useVisit } from './visitContext.ts';

/** Opens as lines while anything is unknown or being changed; else it reads as one sentence. */
export function SafetySection() {
  const { lines, place, isClosed, isShownToPatient, isPrivateHidden, bundle, goTo } = useVisit();
  const wanted = lines.safety.filter((l) => l.wanted).length;
  const isOpen = !isClosed && (place.scope === 'safety' || wanted > 0);
  return (
    <section data-scope="safety" aria-label="Safety check">
      <SectionHead title="Safety check" number={1} note={noteOf(lines.safety, wanted)} />
      {!isShownToPatient && <Permission profile={bundle.profile} patientId={bundle.patientId} />}
      {isPrivateHidden && !isShownToPatient && (
        <p className="small">
          Private matters were told by the patient alone. They are out of sight unless the patient alone speaks; what a parent may be told
          is decided by local law.
        </p>
      )}
      {isOpen ? (
        <>
          <ScopeLines scope="safety" />
          <Reconfirm scope="safety" />
          <ScopeProblem scope="safety" />
        </>
      ) : (
        <p className="sentence">
          {lines.safety.map((line) => (
            <span key={line.id}>
              {line.label}: <span className={line.tone === 'unknown' ? 'unknown' : undefined}>{line.text}</span>.{' '}
            </span>
          ))}
          {!isClosed && !isShownToPatient && (
            <button type="button" className="link" onClick={() => goTo('safety')}>
              change
            </button>
          )}
        </p>
      )}
    </section>
  );
}

/** Said where it is not given, never as a question that costs a key. */
function Permission({ profile, patientId }: { readonly profile: VisitBundle['profile']; readonly patientId: string }) {
  const sentence = permissionSentence(profile);
  if (sentence === undefined) return null;
  return (
    <p className="small">
      <span className="unknown">{sentence}</span> <Link to={`/people/${patientId}`}>on the page of the person</Link>
    </p>
  );
}

function noteOf(lines: readonly Line[], wanted: number): string {
  if (wanted > 0)
    return `${plural(wanted, 'answer')} to ask; until then nothing that depends on ${wanted === 1 ? 'it' : 'them'} is offered`;
  return lines.every((l) => l.tone === 'new' || l.tone === 'confirmed') ? 'asked today' : '';
}
