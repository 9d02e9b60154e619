import { useEffect, useRef } from 'react';
import { setPreference, useSingleKeys } from '../preferences.ts';

/** Each key, or group of keys, with what it does. */
export type KeyMap = readonly (readonly [key: string, meaning: string])[];

/** What works on every page. */
const EVERYWHERE: KeyMap = [
  ['Ctrl .', 'who is here: change of member; twice: hide the screen'],
  ['Tab', 'to the next thing that can be pressed; Shift Tab back'],
  ['?', 'this page'],
];

interface KeyHelpProps {
  readonly keys: KeyMap;
  /** Words of the button that closes it. */
  readonly back: string;
  readonly onClose: () => void;
}

export function KeyHelp({ keys, back, onClose }: KeyHelpProps) {
  const dialog = useRef<HTMLDialogElement>(null);
  const singleKeys = useSingleKeys();
  useEffect(() => {
    const { activeElement } = document;
    dialog.current?.showModal();
    return () => (activeElement instanceof HTMLElement ? activeElement.focus() : undefined);
  }, []);
  return (
    <dialog ref={dialog} className="key-help" aria-label="Keys" onClose={onClose}>
      <h2>Keys</h2>
      <dl>
        {[...keys, ...EVERYWHERE].map(([key, meaning]) => (
          <div key={key}>
            <dt>
              <kbd className="key">{key}</kbd>
            </dt>
            <dd>{meaning}</dd>
          </div>
        ))}
      </dl>
      <label className="check">
        <input type="checkbox" checked={singleKeys} onChange={(event) => setPreference({ singleKeys: event.target.checked })} />
        Single keys act at once. Turn this off when you speak to the computer or touch keys by accident.
      </label>
      <form method="dialog">
        <button type="submit" className="action primary">
          {back}
        </button>
      </form>
    </dialog>
  );
}
