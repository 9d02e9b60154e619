import { useEffect, useRef } from 'react';
import type { SaveConflict } from '../data/useVersionedSave.ts';
import { listDifferences, type SaidLines } from './differences.ts';

interface SaveBarProps<T> {
  readonly saving: { readonly isSending: boolean; readonly problem: string | null; readonly conflict: SaveConflict<T> | null };
  /** Words of something saved, to set theirs beside mine. */
  readonly say?: (value: T) => SaidLines;
  /** How many fields of the form need a look. */
  readonly problemCount?: number;
  readonly saveWords?: string;
  readonly onLeave: () => void;
}

/** The end of every form: what is in the way, what somebody else saved in between, and the two ways out. */
export function SaveBar<T>({ saving, say, problemCount = 0, saveWords = 'Save', onLeave }: SaveBarProps<T>) {
  const { isSending, problem, conflict } = saving;
  const bar = useRef<HTMLDivElement>(null);
  useEffect(() => {
    if (conflict) bar.current?.scrollIntoView({ block: 'nearest' });
  }, [conflict]);
  return (
    <div className="save-bar" ref={bar}>
      {conflict && say && <Conflict conflict={conflict} say={say} />}
      <p className="problem" role="alert">
        {problem ??
          (problemCount > 0 ? `Not saved yet: ${problemCount === 1 ? 'one line needs' : `${problemCount} lines need`} a look.` : '')}
      </p>
      <div className="actions">
        <button type="submit" className="action primary" disabled={isSending}>
          {conflict ? 'Save mine in its place' : saveWords}
        </button>
        <button type="button" className="action" onClick={onLeave}>
          {conflict ? 'Keep theirs' : 'Leave without saving'}
        </button>
      </div>
    </div>
  );
}

function Conflict<T>({ conflict: { theirs, mine }, say }: { readonly conflict: SaveConflict<T>; readonly say: (value: T) => SaidLines }) {
  if (theirs === undefined) return null;
  const lines = listDifferences(say(theirs), say(mine));
  return (
    <div role="alert" className="conflict">
      <p>
        <strong>Somebody else saved this while you typed.</strong>{' '}
        {lines.length === 0 ? 'What they saved is the same as yours.' : 'Both are here; nothing is lost. Save yours, or keep theirs.'}
      </p>
      {lines.length > 0 && (
        <table aria-label="Theirs and yours">
          <thead>
            <tr>
              <th scope="col">Line</th>
              <th scope="col">Saved now, by somebody else</th>
              <th scope="col">Typed here, not saved</th>
            </tr>
          </thead>
          <tbody>
            {lines.map((line) => (
              <tr key={line.name}>
                <th scope="row">{line.name}</th>
                <td data-label="Saved now">{line.theirs}</td>
                <td data-label="Typed here">{line.mine}</td>
              </tr>
            ))}
          </tbody>
        </table>
      )}
    </div>
  );
}
