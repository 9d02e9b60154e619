import { useSignOut } from '../data/queries.ts';
import { useSaveState } from '../data/saving.ts';
import { plural } from '../format.ts';
import { useModal } from './useModal.ts';
import { WhoForm } from './WhoForm.tsx';

interface HiddenScreenProps {
  /** The sign-in has run out: then only the password leads back. */
  readonly isSignedOut: boolean;
  readonly lastHere: string;
  readonly onBack: () => Promise<void>;
}

/** All that is drawn while the screen is hidden: no person, no practice, only who comes back. */
export function HiddenScreen({ isSignedOut, lastHere, onBack }: HiddenScreenProps) {
  const dialog = useModal();
  const { unsaved } = useSaveState();
  const signOut = useSignOut();
  return (
    <dialog
      ref={dialog}
      className="hidden-screen"
      aria-label="The screen is hidden"
      onKeyDown={(event) => event.key === 'Escape' && event.preventDefault()}
      onCancel={(event) => event.preventDefault()}
      // A browser may close a dialog all the same, by its own button or gesture.
      onClose={(event) => {
        event.currentTarget.showModal();
        event.currentTarget.querySelector<HTMLElement>('input[type="password"]')?.focus();
      }}
    >
      <main className="page sign-in">
        <h1>The screen is hidden</h1>
        <p className="opening">Who is here?</p>
        <p role="status" className={unsaved > 0 ? 'unknown' : 'hint'}>
          {unsaved > 0
            ? `Not saved yet: screen hidden, ${plural(unsaved, 'field')}. They wait for the member who typed them.`
            : 'Everything that was entered is saved. The page behind stays as it was.'}
        </p>
        {isSignedOut && <p className="hint">The sign-in has run out, so the password is needed.</p>}
        <WhoForm
          key={isSignedOut ? 'signed-out' : 'here'}
          isSignedOut={isSignedOut}
          lastHere={lastHere}
          findObstacle={async () => null}
          onBack={onBack}
        >
          <button type="button" className="action" onClick={() => signOut.mutate()}>
            Sign out
          </button>
        </WhoForm>
      </main>
    </dialog>
  );
}
