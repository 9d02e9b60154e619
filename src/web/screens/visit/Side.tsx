import { useState } from 'react';
import { AgreeSection } from './AgreeSection.tsx';
import { LevelSection } from './LevelSection.tsx';
import { PlanSection } from './PlanSection.tsx';
import { summaryOf } from './summaryOf.ts';
import { useVisit } from './visitContext.ts';

/** What the work means. Beside it where two columns fit; else before it, as one sentence that unfolds. */
export function Side({ isWide }: { readonly isWide: boolean }) {
  const { assessment, input, place } = useVisit();
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
      <summary hidden={isWide}>{summaryOf(assessment, input.visit.agreed)}</summary>
      <LevelSection />
      <PlanSection />
      <AgreeSection />
    </details>
  );
}
