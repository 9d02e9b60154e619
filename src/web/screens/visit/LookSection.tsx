import type { Finding } from '../../../core/visit/types.ts';
import { plural } from '../../format.ts';
import { Key } from '../../parts/Key.tsx';
import { isOldRestoration } from './findingChanges.ts';
import { findingId } from './findings.ts';
import { isAllConfirmed, Reconfirm, ScopeLines, ScopeProblem } from './ScopeLines.tsx';
import { SectionHead } from './SectionHead.tsx';
import { noteOf } from './TalkSection.tsx';
import { useVisit } from './visitContext.ts';

export function LookSection() {
  const { lines, input, place, isClosed, command, isShownToPatient } = useVisit();
  const { findings } = input.visit;
  const restored = findings.filter(isOldRestoration);
  const ids = new Set(findings.map((_, i) => findingId(i)));
  // Old restorations stand in one row; one of them has its own while it is looked at.
  const hidden = new Set(findings.flatMap((f, i) => (isOldRestoration(f) && place.line !== findingId(i) ? [findingId(i)] : [])));
  const teeth = new Set(restored.map((f) => f.tooth)).size;
  const seen = isAllConfirmed(lines.look) ? 'seen today, no change' : '';
  const carried = teeth > 0 ? `${plural(teeth, 'tooth', 'teeth')} with restorations carried; change what is new` : '';
  return (
    <section data-scope="look" aria-label="Look">
      <SectionHead title="Look" number={4} note={[carried, noteOf(lines.look), seen].filter(Boolean).join('; ')} />
      <ScopeLines scope="look" lines={lines.look.filter(({ id }) => ids.has(id) && !hidden.has(id))} />
      {restored.length > 0 && <RestorationsRow restored={restored} />}
      <ScopeLines scope="look" lines={lines.look.filter(({ id }) => !ids.has(id))} />
      {!isClosed && !isShownToPatient && (
        <p className="answer-keys">
          <button type="button" className="answer" aria-keyshortcuts="f +" onClick={() => command('look', 'f')}>
            <Key>f</Key>
            <span>new finding</span>
          </button>
          {findings.length > 0 && (
            <button type="button" className="answer" aria-keyshortcuts="c" onClick={() => command('look', 'c')}>
              <Key>c</Key>
              <span>change a finding, by its tooth</span>
            </button>
          )}
        </p>
      )}
      <Reconfirm scope="look" />
      <ScopeProblem scope="look" />
    </section>
  );
}

function RestorationsRow({ restored }: { readonly restored: readonly Finding[] }) {
  const teeth = [...new Set(restored.map((f) => f.tooth))].sort();
  return (
    <ul className="lines">
      <li className="line">
        <div className="line-row plain">
          <span />
          <span className="line-label">Restorations</span>
          <span className="line-text carried">{teeth.join(', ')}</span>
          <span className="line-note">carried</span>
        </div>
      </li>
    </ul>
  );
}
