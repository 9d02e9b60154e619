import { useQueryClient } from '@tanstack/react-query';
import { type FormEvent, useState } from 'react';
import type { PracticeView } from '../../../api/bundles.ts';
import { hideAfterMinutes } from '../../../content/practiceDefaults.ts';
import { saveHideAfter } from '../../data/practiceQueries.ts';
import { useSend } from '../../data/useSend.ts';
import { plural } from '../../format.ts';
import { TextLine } from '../../parts/fields.tsx';
import { OpenForm } from '../../parts/OpenForm.tsx';
import { SaveBar } from '../../parts/SaveBar.tsx';
import { SourceList, Why } from '../../parts/Sources.tsx';

/** One machine, one screen, and when it hides. */
export function ThisMachine({ hideAfter, isLead }: { readonly hideAfter: PracticeView['hideAfter']; readonly isLead: boolean }) {
  return (
    <section id="machine" tabIndex={-1} aria-label="This machine">
      <h2>This machine</h2>
      <p>
        This edition is for one machine: the server and the data stand on it, and one screen at a time is how it is tested. Other computers
        of the practice are not served, because the server listens to this machine alone.
      </p>
      <p>
        The screen hides {plural(hideAfter.minutes, 'minute')} after the last key
        {hideAfter.isProposal ? ', as proposed' : ', as this practice set it'}, with Ctrl and the full stop pressed twice, and when a laptop
        wakes after a longer sleep. What was on the screen before it slept may be seen for a moment as the lid opens: lock the computer too.{' '}
        <Why about="hiding the screen">
          <SourceList sources={[hideAfterMinutes.source]} />
        </Why>
      </p>
      {isLead && (
        <p>
          <OpenForm label="Change the minutes" form={(close) => <HideAfterForm hideAfter={hideAfter} close={close} />} />
        </p>
      )}
    </section>
  );
}

interface HideAfterFormProps {
  readonly hideAfter: PracticeView['hideAfter'];
  readonly close: (said?: string) => void;
}

function HideAfterForm({ hideAfter, close }: HideAfterFormProps) {
  const client = useQueryClient();
  const { least, most } = hideAfterMinutes;
  const [typed, setTyped] = useState(String(hideAfter.minutes));
  const [isTried, setTried] = useState(false);
  const sending = useSend();
  const minutes = /^\d{1,2}$/.test(typed.trim()) ? Number(typed) : Number.NaN;
  const isFine = minutes >= least && minutes <= most;
  const submit = (event: FormEvent) => {
    event.preventDefault();
    setTried(true);
    if (!isFine) return;
    void sending.send(async () => {
      await saveHideAfter(minutes, hideAfter.version);
      await Promise.all(['practice', 'session', 'rules'].map((key) => client.invalidateQueries({ queryKey: [key] })));
      close('Saved.');
    });
  };
  return (
    <form noValidate onSubmit={submit} aria-label="Minutes until the screen hides">
      <TextLine
        label="Hide after"
        kind="number"
        unit="minutes without a key"
        value={typed}
        problem={isTried && !isFine ? `A whole number from ${least} to ${most}.` : undefined}
        onChange={setTyped}
      />
      <SaveBar saving={sending} problemCount={isTried && !isFine ? 1 : 0} onLeave={() => close()} />
    </form>
  );
}
