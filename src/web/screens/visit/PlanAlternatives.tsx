import { Key } from '../../parts/Key.tsx';
import { digitOfChoice } from './line.ts';
import { sayDropped } from './sinceLines.ts';
import { useVisit } from './visitContext.ts';

/** Other packs that could stand in the place of an open line, each with its key; two at most. */
export function PlanAlternatives({ shelfItemId }: { readonly shelfItemId: string }) {
  const { lines, isClosed, isShownToPatient, reply } = useVisit();
  const entry = lines.plan.find((line) => line.id === shelfItemId)?.entry;
  if (entry?.kind !== 'choice' || isClosed || isShownToPatient) return null;
  return (
    <div className="answers">
      <p className="small">Instead:</p>
      <div className="answer-keys">
        {entry.choices.map((choice, i) => (
          <button
            key={choice.id}
            type="button"
            className="answer"
            aria-keyshortcuts={digitOfChoice(i)}
            onClick={() => reply('plan', shelfItemId, { how: 'asked', value: choice.id })}
          >
            <Key>{digitOfChoice(i)}</Key>
            <span>{choice.label}</span>
          </button>
        ))}
      </div>
    </div>
  );
}

/** "stopped in May 2026: taste": so that it is not offered again without saying so. */
export function PlanPast({ shelfItemId }: { readonly shelfItemId: string }) {
  const { input } = useVisit();
  const dropped = sayDropped(shelfItemId, input.visit);
  return dropped ? <span className="unknown block">{dropped}</span> : null;
}
