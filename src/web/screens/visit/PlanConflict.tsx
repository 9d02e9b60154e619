import type { Plan, RegimenConflict } from '../../../core/regimen/types.ts';
import { joinWords } from '../../format.ts';
import { sayConflict } from './sayConflict.ts';
import { useVisit } from './visitContext.ts';

/** Why not everything that is needed goes together, and what would resolve it. */
export function PlanConflict({ conflict }: { readonly conflict: RegimenConflict }) {
  const { isPrivateHidden } = useVisit();
  const { headline, because, resolvedBy } = sayConflict(conflict, isPrivateHidden);
  return (
    <div className="small">
      <p>{headline}, because:</p>
      <ul>
        {because.map(({ id, says }) => (
          <li key={id}>{says}</li>
        ))}
      </ul>
      <p>
        {resolvedBy.length === 0
          ? 'Nothing that this practice can change at the chair would resolve it.'
          : `It would fit with any one of these: ${resolvedBy.join('; ')}.`}
      </p>
    </div>
  );
}

/** What was dropped before stands behind the rest; with the reason, as it was told. */
export function PlanHistory({ plan: { droppedBefore = [] } }: { readonly plan: Plan }) {
  if (droppedBefore.length === 0) return null;
  const said = droppedBefore.map(({ name, why }) => (why ? `${name} (${why})` : name));
  return <p className="small">Dropped or turned down before, so chosen last: {joinWords(said)}.</p>;
}
