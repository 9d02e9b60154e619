import { wantedLines } from '../../../core/visit/turnedDown.ts';
import type { VisitAssessment, VisitInput } from '../../../core/visit/types.ts';
import { plural } from '../../format.ts';

type Agreed = VisitInput['visit']['agreed'];
type Summarised = Pick<VisitAssessment, 'confirmed' | 'proposed' | 'proposedSentence' | 'mouth' | 'plan'>;

/** The summary by ear: while there is no level only how much is missing, since the list of it would be read out after every answer. */
export function spokenSummaryOf(assessment: Summarised, agreed: Agreed): string {
  const missing = assessment.confirmed ? undefined : assessment.proposed?.notYet?.missing;
  return missing ? `No level yet: ${plural(missing.length, 'thing')} not known.` : summaryOf(assessment, agreed);
}

/** "Level high, confirmed. 3 items in the plan, 1 waiting for a signature." What was turned down waits for nothing. */
export function summaryOf({ confirmed, proposed, proposedSentence, mouth, plan }: Summarised, agreed: Agreed): string {
  const level = confirmed
    ? `Level ${confirmed.level}, confirmed.`
    : proposed?.level
      ? `Level ${proposed.level}, proposed.`
      : proposedSentence;
  return `${level} ${sayItems(plan, agreed) ?? (mouth.kind === 'level-does-not-apply' ? '' : 'No plan yet.')}`.trim();
}

function sayItems({ lines }: Summarised['plan'], agreed: Agreed): string | undefined {
  if (lines.length === 0) return undefined;
  const kept = wantedLines(lines, agreed);
  const waiting = kept.filter(({ state }) => state === 'waiting-for-signature').length;
  const turnedDown = lines.length - kept.length;
  const parts = [
    `${plural(lines.length, 'item')} in the plan`,
    turnedDown > 0 && `${turnedDown} of them turned down`,
    waiting > 0 && `${waiting} waiting for a signature`,
  ];
  return `${parts.filter(Boolean).join(', ')}.`;
}
