import { applyField } from '../../../core/visit/applyField.ts';
import type { VisitInput } from '../../../core/visit/types.ts';
import type { Conflict } from '../../data/saveQueue.ts';
import { useSaveQueue, useSaveState } from '../../data/saving.ts';
import { useShown } from '../../shown.ts';
import { fieldName, isPrivateField, sayFieldValue } from './fieldWords.ts';
import type { VisitDraft } from './useVisitDraft.ts';

interface ConflictsProps {
  readonly visitId: string;
  readonly input: VisitInput;
  readonly show: VisitDraft['show'];
  /** Private answers are out of sight. */
  readonly isPrivateHidden?: boolean;
}

/** Two people answered the same thing. Both values stand here until one is chosen. */
export function Conflicts({ visitId, input: context, show, isPrivateHidden = false }: ConflictsProps) {
  const queue = useSaveQueue();
  const { conflicts, refused } = useSaveState();
  const { isOn: isShownToPatient } = useShown();
  const ofVisit = conflicts.filter((c) => c.visitId === visitId);
  // Turned to the patient nothing is decided, and what was typed may be private.
  const here = isShownToPatient ? [] : ofVisit.filter((c) => !isPrivateHidden || !isPrivateField(c.path));
  const keep = (conflict: Conflict, whose: 'yours' | 'theirs') => {
    if (whose === 'theirs') show((input) => applyField(input, conflict.path, conflict.theirs));
    queue.resolve(conflict, whose);
  };
  return (
    <>
      {here.length < ofVisit.length && (
        <p className="conflict" role="alert">
          Something was saved elsewhere while you worked. Both are kept, and wait until you are back at work.
        </p>
      )}
      {here.map((conflict) => (
        <div key={conflict.path} className="conflict" role="alert">
          <p>
            <strong>{fieldName(conflict.path)}</strong> was saved elsewhere while you worked. Yours:{' '}
            <strong>{sayFieldValue(conflict.path, conflict.value, context)}</strong>. Theirs:{' '}
            <strong>{sayFieldValue(conflict.path, conflict.theirs, context)}</strong>.
          </p>
          <p className="actions">
            <button type="button" className="action" onClick={() => keep(conflict, 'yours')}>
              Keep yours
            </button>
            <button type="button" className="action" onClick={() => keep(conflict, 'theirs')}>
              Keep theirs
            </button>
          </p>
        </div>
      ))}
      {refused
        .filter((r) => r.visitId === visitId && !isShownToPatient)
        .map((r) => (
          <p key={r.path} className="conflict" role="alert">
            <strong>{fieldName(r.path)}</strong> is not saved: {r.message}
          </p>
        ))}
    </>
  );
}
