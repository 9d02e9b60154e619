import { useState } from 'react';
import { TextLine } from './fields.tsx';
import { SmallForm } from './SmallForm.tsx';

interface ReasonFormProps {
  /** Words for a screen reader: what the reason is for. */
  readonly about: string;
  readonly label?: string;
  readonly hint?: string;
  readonly saveWords: string;
  readonly problem?: string | null;
  readonly onGive: (reason: string) => void;
  readonly onLeave: () => void;
}

/** One line for a reason, which stays on the record. */
export function ReasonForm({
  about,
  label = 'Because',
  hint = 'kept on the record',
  saveWords,
  problem,
  onGive,
  onLeave,
}: ReasonFormProps) {
  const [reason, setReason] = useState('');
  const [isTried, setTried] = useState(false);
  const given = reason.trim();
  const attempt = () => {
    setTried(true);
    if (given !== '') onGive(given);
    return given !== '';
  };
  return (
    <SmallForm about={about} saveWords={saveWords} problem={problem} onTry={attempt} onLeave={onLeave}>
      <TextLine
        label={label}
        value={reason}
        hint={hint}
        problem={isTried && given === '' ? 'A reason is needed.' : undefined}
        onChange={setReason}
      />
    </SmallForm>
  );
}
