import { noiseOfMeter } from '../../../core/reading/blendNoise.ts';
import { readingSdLog } from '../../../core/reading/noiseSums.ts';
import { DECIDE_TODAY, sayPurpose } from '../../../core/reading/readingSentences.ts';
import type { Meter, ReadingAssessment, SwabReading } from '../../../core/reading/types.ts';
import { ReadingPicture } from '../../charts/ReadingPicture.tsx';
import { content } from '../../content.ts';
import { SourceList, Why } from '../../parts/Sources.tsx';

interface ReadingBlockProps {
  readonly assessment: ReadingAssessment;
  readonly reading: SwabReading;
  readonly meter: Meter | undefined;
  readonly isShownToPatient: boolean;
}

/** The sentence, the picture, the small print, and why. */
export function ReadingBlock({ assessment, reading, meter, isShownToPatient }: ReadingBlockProps) {
  const { headline, sentences, conditions, sources } = assessment;
  const decide = sentences.indexOf(DECIDE_TODAY);
  const large = sentences.slice(0, decide + 1);
  // Chances and limits are for the professional; the patient's view keeps what the number is and is not.
  const small = isShownToPatient ? sayPurpose(reading).slice(0, 1) : sentences.slice(decide + 1);
  return (
    <div className="reading">
      {reading.rlu !== undefined && meter && (
        <div className="reading-left">
          <ReadingPicture
            meter={meter}
            rlu={assessment.rlu ?? reading.rlu}
            bound={assessment.bound ?? 'exact'}
            sdLog={readingSdLog(noiseOfMeter(content.readingNoise, meter))}
            counted={assessment.counted}
          />
        </div>
      )}
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
