import { type ChangeEvent, type ReactNode, useState } from 'react';
import { readFileText } from './readFileText.ts';

interface Props {
  readonly hint: ReactNode;
  readonly label: string;
  readonly readWords: string;
  readonly placeholder?: string;
  /** What was given before: it stays, to be mended. */
  readonly start?: string;
  readonly onRead: (text: string) => void;
}

/** A table that is pasted, or chosen as a file. */
export function GiveTable({ hint, label, readWords, placeholder, start = '', onRead }: Props) {
  const [text, setText] = useState(start);
  const [note, setNote] = useState<string | null>(null);
  const choose = async (event: ChangeEvent<HTMLInputElement>) => {
    const file = event.target.files?.[0];
    if (!file) return;
    const read = readFileText(new Uint8Array(await file.arrayBuffer()));
    setText(read.text);
    setNote(read.note);
    onRead(read.text);
  };
  return (
    <form
      className="give-list"
      onSubmit={(event) => {
        event.preventDefault();
        if (text.trim() !== '') onRead(text);
      }}
    >
      <p id="list-hint">{hint}</p>
      <label htmlFor="list-text">{label}</label>
      <textarea
        id="list-text"
        rows={10}
        dir="auto"
        spellCheck={false}
        aria-describedby="list-hint"
        placeholder={placeholder}
        // biome-ignore lint/a11y/noAutofocus: the page is this one field; what was copied goes in here
        autoFocus
        value={text}
        onChange={(event) => setText(event.target.value)}
      />
      <div className="actions">
        <button type="submit" className="action primary" disabled={text.trim() === ''}>
          {readWords}
        </button>
        <label className="action file-choice">
          Choose a file
          <input type="file" className="sr-only" accept=".csv,.tsv,.txt,text/csv,text/plain" onChange={(event) => void choose(event)} />
        </label>
      </div>
      {note && <p className="hint">{note}</p>}
    </form>
  );
}
