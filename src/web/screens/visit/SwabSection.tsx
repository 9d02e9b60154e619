import type { ReactNode } from 'react';

import { logSdOfCv } from '../../../core/reading/logSdOfCv.ts';
import { DECIDE_TODAY, sayPurpose } from '../../../core/reading/readingSentences.ts';
import type { ReadingAssessment } from '../../../core/reading/types.ts';
import { ReadingPicture } from '../../charts/ReadingPicture.tsx';
import { Key } from '../../parts/Key.tsx';
import { SourceList, Why } from '../../parts/Sources.tsx';
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
    !isClosed && !isShownToPatient && (place.scope === 'swab' || hasMissing || (!hasNumber && reading.notTaken === undefined));
  return (
    <section data-scope="swab" aria-label="Swab">
      <SectionHead title="Swab" number={2} note={sayHowTaken(reading, meter?.name, practice.lots)} />
      {assessment.mouth.swab && <p className="small">{assessment.mouth.swab.says}</p>}
      <ReadingBlock assessment={assessment.reading} isBlank={!hasNumber && reading.notTaken === undefined && reading.failed !== true}>
        {hasNumber && reading.rlu !== undefined && meter && (
          <ReadingPicture
            meter={meter}
            rlu={assessment.reading.rlu ?? reading.rlu}
            bound={assessment.reading.bound ?? 'exact'}
            sdLog={logSdOfCv(meter.cvAnalytical)}
            counted={assessment.reading.counted}
          />
        )}
      </ReadingBlock>
      {showLines && (
        <>
          {hasNumber && hasMissing && (
            <button type="button" className="answer" aria-keyshortcuts="u" onClick={() => command('swab', 'u')}>
              <Key>u</Key>
              <span>as usual: before cleaning, lower front teeth, 60 minutes or more since eating, brushing and rinsing</span>
            </button>
          )}
          <ScopeLines scope="swab" />
        </>
      )}
      <ScopeProblem scope="swab" />
    </section>
  );
}

interface ReadingBlockProps {
  readonly assessment: ReadingAssessment;
  /** Nothing noted at all: then nothing is said either, for a visit without a swab is complete. */
  readonly isBlank: boolean;
  readonly children: ReactNode;
}

/** The sentence, the picture, the small print, and why. */
function ReadingBlock({ assessment, isBlank, children }: ReadingBlockProps) {
  const { input, isShownToPatient } = useVisit();
  if (isBlank) return null;
  const { headline, sentences, conditions, sources } = assessment;
  const decide = sentences.indexOf(DECIDE_TODAY);
  const large = sentences.slice(0, decide + 1);
  // Chances and limits are for the professional; the patient's view keeps what the number is and is not.
  const small = isShownToPatient ? sayPurpose(input.visit.reading ?? {}).slice(0, 1) : sentences.slice(decide + 1);
  return (
    <div className="reading">
      {children && <div className="reading-left">{children}</div>}
      <div className="reading-words" aria-live="polite">
        <p className="opening">
          <strong>{headline}</strong> {large.join(' ')}
        </p>
        <div className="small">
          {small.join(' ')}{' '}
          {!isShownToPatient && (
            <Why about="this reading">
              <Conditions conditions={conditions} />
              <SourceList sources={sources} />
            </Why>
          )}
        </div>
      </div>
    </div>
  );
}

function Conditions({ conditions }: { readonly conditions: ReadingAssessment['conditions'] }) {
  return (
    <ul className="plain-list">
      {conditions.map((c) => (
        <li key={c.id} className={c.state === 'unknown' ? 'unknown' : undefined}>
          {c.state === 'failing' ? <strong>{c.says}</strong> : c.says}
        </li>
      ))}
    </ul>
  );
}
