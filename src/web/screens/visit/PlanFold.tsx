import type { ReactNode } from 'react';
import { Key } from '../../parts/Key.tsx';
import { useVisit } from './visitContext.ts';

interface PlanFoldProps {
  /** Id of the line of the plan that opens it. */
  readonly id: string;
  /** What stands there while it is folded; absent = the label of the line. */
  readonly says?: string;
  /** Open whatever the keys say: paper unfolds nothing. */
  readonly isAlwaysOpen?: boolean;
  readonly children: ReactNode;
}

/** Part of the plan that one key opens and closes. */
export function PlanFold({ id, says, isAlwaysOpen = false, children }: PlanFoldProps) {
  const { lines, place, goTo } = useVisit();
  const line = lines.plan.find((one) => one.id === id);
  if (!line) return null;
  const isOpen = place.scope === 'plan' && place.line === id;
  return (
    <div data-line={id}>
      <button
        type="button"
        className="plan-row"
        data-row
        aria-expanded={isOpen}
        aria-keyshortcuts={line.letter}
        onClick={() => goTo('plan', isOpen ? null : id)}
      >
        <Key>{line.letter}</Key>
        <span>{says ?? line.label}</span>
      </button>
      {(isOpen || isAlwaysOpen) && children}
    </div>
  );
}
