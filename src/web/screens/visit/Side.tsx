import { useState } from 'react';
import type { VisitAssessment } from '../../../core/visit/types.ts';
import { plural } from '../../format.ts';
import { AgreeSection } from './AgreeSection.tsx';
import { LevelSection } from './LevelSection.tsx';
import { PlanSection } from './PlanSection.tsx';
import { useVisit } from './visitContext.ts';

/** What the work means. Beside it where two columns fit; else before it, as one sentence that unfolds. */
export function Side({ isWide }: { readonly isWide: boolean }) {
  const { assessment, place } = useVisit();
  const isPlaceHere = place.scope === 'level' || place.scope === 'plan' || place.scope === 'agree';
  const [isOpen, setOpen] = useState(isPlaceHere);
  // A key that leads here unfolds it in the same turn, since nothing in a fold takes the focus; folding it by hand stays.
  const [focus, setFocus] = useState(place.focus);
  if (focus !== place.focus) {
    setFocus(place.focus);
    if (isPlaceHere) setOpen(true);
  }
  // One tree for both, so that turning a tablet loses nothing that was unfolded.
  return (
    <details
      className={isWide ? 'side' : 'side folds'}
      open={isWide || isOpen}
      onToggle={(event) => !isWide && setOpen(event.currentTarget.open)}
    >
      <summary hidden={isWide}>{summaryOf(assessment)}</summary>
      <LevelSection />
      <PlanSection />
      <AgreeSection />
    </details>
  );
}

/** The summary by ear: while there is no level only how much is missing, since the list of it would be read out after every answer. */
export function spokenSummaryOf(assessment: VisitAssessment): string {
  const missing = assessment.confirmed ? undefined : assessment.proposed?.notYet?.missing;
  return missing ? `No level yet: ${plural(missing.length, 'thing')} not known.` : summaryOf(assessment);
}

/** "Level high, confirmed. 3 items in the plan, 1 waiting for a signature." */
export function summaryOf({ confirmed, proposed, proposedSentence, mouth, plan }: VisitAssessment): string {
  const level = confirmed
    ? `Level ${confirmed.level}, confirmed.`
    : proposed?.level
      ? `Level ${proposed.level}, proposed.`
      : proposedSentence;
  const waiting = plan.lines.filter((l) => l.state === 'waiting-for-signature').length;
  const items =
    plan.lines.length === 0
      ? mouth.kind === 'level-does-not-apply'
        ? ''
        : 'No plan yet.'
      : `${plural(plan.lines.length, 'item')} in the plan${waiting > 0 ? `, ${waiting} waiting for a signature` : ''}.`;
  return `${level} ${items}`.trim();
}
