import type { Finding } from '../../../core/visit/types.ts';
import { plural } from '../../format.ts';
import { Key } from '../../parts/Key.tsx';
import { sayFinding, sayPlace } from './findings.ts';
import { isAllConfirmed, Reconfirm, ScopeLines, ScopeProblem } from './ScopeLines.tsx';
import { SectionHead } from './SectionHead.tsx';
import { noteOf } from './TalkSection.tsx';
import { useVisit } from './visitContext.ts';

export function LookSection() {
  const { lines, input, isClosed, command, isShownToPatient } = useVisit();
  const { findings } = input.visit;
  const restored = findings.filter((f) => f.kind === 'restoration' && !f.isNew);
  const others = findings.filter((f) => !restored.includes(f));
  const teeth = new Set(restored.map((f) => f.tooth)).size;
  const seen = isAllConfirmed(lines.look) ? 'seen today, no change' : '';
  const carried = teeth > 0 ? `${plural(teeth, 'tooth', 'teeth')} with restorations carried; change what is new` : '';
  return (
    <section data-scope="look" aria-label="Look">
      <SectionHead title="Look" number={4} note={[carried, noteOf(lines.look), seen].filter(Boolean).join('; ')} />
      {findings.length > 0 && (
        <ul className="lines findings">
          {others.map((finding) => (
            <FindingRow key={`${finding.tooth} ${finding.surface} ${finding.kind}`} finding={finding} />
          ))}
          {restored.length > 0 && <RestorationsRow restored={restored} />}
        </ul>
      )}
      <ScopeLines scope="look" />
      {!isClosed && !isShownToPatient && (
        <button type="button" className="answer" aria-keyshortcuts="+" onClick={() => command('look', '+')}>
          <Key>+</Key>
          <span>new finding</span>
        </button>
      )}
      <Reconfirm scope="look" />
      <ScopeProblem scope="look" />
    </section>
  );
}

function FindingRow({ finding }: { readonly finding: Finding }) {
  const { input, put, isClosed, isShownToPatient } = useVisit();
  const remove = () =>
    put(
      'findings',
      input.visit.findings.filter((f) => f !== finding),
    );
  return (
    <li className="line">
      <div className="line-row plain">
        <span />
        <span className="line-label">{sayPlace(finding)}</span>
        <span className={`line-text ${finding.isNew ? 'new' : 'carried'}`}>{sayFinding(finding)}</span>
        <span className="line-note">
          {finding.isNew ? 'new' : 'carried'}
          {!isClosed && !isShownToPatient && (
            <button type="button" className="link" aria-label={`remove ${sayPlace(finding)}, ${sayFinding(finding)}`} onClick={remove}>
              remove
            </button>
          )}
        </span>
      </div>
    </li>
  );
}

function RestorationsRow({ restored }: { readonly restored: readonly Finding[] }) {
  const teeth = [...new Set(restored.map((f) => f.tooth))].sort();
  return (
    <li className="line">
      <div className="line-row plain">
        <span />
        <span className="line-label">Restorations</span>
        <span className="line-text carried">{teeth.join(', ')}</span>
        <span className="line-note">carried</span>
      </div>
    </li>
  );
}
