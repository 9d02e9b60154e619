import { settledWithin, useSaveQueue } from '../data/saving.ts';
import { plural } from '../format.ts';
import { Key } from './Key.tsx';
import { useModal } from './useModal.ts';
import { WhoForm } from './WhoForm.tsx';

interface WhoIsHereProps {
  readonly here: string;
  readonly onBack: () => Promise<void>;
  readonly onHide: () => void;
  readonly onLeave: () => void;
}

const FLUSH_MS = 3_000;

/** Change of member without leaving the page. What is typed is saved first, under the member who typed it. */
export function WhoIsHere({ here, onBack, onHide, onLeave }: WhoIsHereProps) {
  const dialog = useModal();
  const queue = useSaveQueue();
  const findObstacle = async () => {
    if (await settledWithin(queue, FLUSH_MS)) return null;
    return `Not saved yet: ${plural(queue.state().unsaved, 'field')}. The member can be changed once what was typed is saved.`;
  };
  return (
    <dialog ref={dialog} className="who" aria-label="Who is here?" onCancel={onLeave} onClose={onLeave}>
      <h2>Who is here?</h2>
      <p className="hint">The page stays as it is. From then on answers, signatures and levels carry the new name.</p>
      <WhoForm lastHere={here} findObstacle={findObstacle} onBack={onBack}>
        <button type="button" className="action" aria-keyshortcuts="Control+." onClick={onHide}>
          <Key>Ctrl .</Key> Hide the screen
        </button>
        <button type="button" className="action" onClick={onLeave}>
          <Key>Esc</Key> Leave
        </button>
      </WhoForm>
    </dialog>
  );
}
