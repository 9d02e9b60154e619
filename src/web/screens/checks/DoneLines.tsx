import { SelectLine, TextLine } from '../../parts/fields.tsx';
import { type DoneDraft, STOP_OPTIONS } from './stopWords.ts';

interface DoneLinesProps {
  readonly draft: DoneDraft;
  readonly hint?: string;
  readonly problem?: string | undefined;
  readonly onChange: (draft: DoneDraft) => void;
}

/** What was done about a stop: one of a list, and a few words. */
export function DoneLines({ draft, hint, problem, onChange }: DoneLinesProps) {
  return (
    <>
      <SelectLine
        label="What was done"
        value={draft.answer}
        hint={hint}
        problem={problem}
        options={[{ id: 'not-said', label: 'not said yet' }, ...STOP_OPTIONS]}
        onChange={(answer) => onChange({ ...draft, answer })}
      />
      <TextLine label="In a few words" value={draft.note} onChange={(note) => onChange({ ...draft, note })} />
    </>
  );
}
