import { plural } from '../../format.ts';
import { Key } from '../../parts/Key.tsx';
import { speakerPlace } from './buildLines.ts';
import { GivenToday } from './GivenToday.tsx';
import { ScopeLines, ScopeProblem } from './ScopeLines.tsx';
import { SectionHead } from './SectionHead.tsx';
import { consentSentence } from './speakerLines.ts';
import { useVisit } from './visitContext.ts';

export function AgreeSection() {
  const { lines, isClosed, correction, isShownToPatient, command, reconfirm, bundle, input, assessment } = useVisit();
  const consent = isClosed || isShownToPatient ? undefined : consentSentence(speakerPlace({ bundle, input, assessment }));
  const open = lines.agree.filter((l) => l.reconfirmable).length;
  return (
    <section data-scope="agree" aria-label="Agree">
      <SectionHead title="Agree" number={7} />
      {consent && <p className="small unknown">{consent}</p>}
      {!isClosed && open > 0 && (
        <button type="button" className="answer reconfirm" aria-keyshortcuts="=" onClick={() => reconfirm('agree')}>
          <Key>=</Key>
          <span>all agreed ({plural(open, 'line')})</span>
        </button>
      )}
      <ScopeLines scope="agree" />
      <ScopeProblem scope="agree" />
      {!isShownToPatient && bundle.state !== 'void' && <GivenToday />}
      {!isShownToPatient && (
        <p className="actions">
          {!isClosed && (
            <button type="button" className="action primary" aria-keyshortcuts="z" onClick={() => command('agree', 'z')}>
              <Key>z</Key> {correction ? 'Save the correction' : 'Close visit'}
            </button>
          )}
          <button type="button" className="action" aria-keyshortcuts="p" onClick={() => command('agree', 'p')}>
            <Key>p</Key> Print leaflet
          </button>
        </p>
      )}
    </section>
  );
}
