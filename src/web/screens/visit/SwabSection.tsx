import { Key } from '../../parts/Key.tsx';
import { ReadingBlock } from './ReadingBlock.tsx';
import { ScopeLines, ScopeProblem } from './ScopeLines.tsx';
import { SectionHead } from './SectionHead.tsx';
import { sayHowTaken } from './swabLines.ts';
import { useVisit } from './visitContext.ts';

export function SwabSection() {
  const { input, assessment, lines, place, isClosed, isShownToPatient, command } = useVisit();
  const { visit, practice } = input;
  const reading = visit.reading ?? {};
  const meter = practice.meters.find((m) => m.id === visit.meterId) ?? (practice.meters.length === 1 ? practice.meters[0] : undefined);
  const hasNumber = reading.rlu !== undefined;
  const hasMissing = lines.swab.some((l) => l.wanted);
  const showLines =
    !isClosed &&
    !isShownToPatient &&
    (place.scope === 'swab' || hasMissing || (!hasNumber && reading.notTaken === undefined && assessment.mouth.swab?.site !== 'none'));
  return (
    <section data-scope="swab" aria-label="Swab">
      <SectionHead title="Swab" number={2} note={sayHowTaken(reading, meter?.name, practice.lots)} />
      {assessment.mouth.swab && <p className="small">{assessment.mouth.swab.says}</p>}
      {(hasNumber || reading.notTaken !== undefined || reading.failed === true) && (
        <ReadingBlock assessment={assessment.reading} reading={reading} meter={meter} isShownToPatient={isShownToPatient} />
      )}
      {showLines && (
        <>
          {hasNumber && hasMissing && (
            <button type="button" className="answer" aria-keyshortcuts="u" onClick={() => command('swab', 'u')}>
              <Key>u</Key>
              <span>as usual: before cleaning, lower front teeth, 60 minutes or more since eating, brushing and rinsing</span>
            </button>
          )}
          {!hasNumber && (
            <button type="button" className="answer" aria-keyshortcuts="t" onClick={() => command('swab', 't')}>
              <Key>t</Key>
              <span>take it step by step</span>
            </button>
          )}
          <ScopeLines scope="swab" />
        </>
      )}
      <ScopeProblem scope="swab" />
    </section>
  );
}
