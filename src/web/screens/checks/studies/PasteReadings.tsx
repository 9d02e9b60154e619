import { useQueryClient } from '@tanstack/react-query';
import { type ChangeEvent, type FormEvent, useState } from 'react';
import { type TableTaken, takeStudyTable } from '../../../data/studyQueries.ts';
import { useSend } from '../../../data/useSend.ts';
import { plural } from '../../../format.ts';
import { readFileText } from '../../../parts/readFileText.ts';

/** Numbers of many swabs at once. All of them are taken, or none. */
export function PasteReadings({ studyId }: { readonly studyId: string }) {
  const client = useQueryClient();
  const sending = useSend();
  const [text, setText] = useState('');
  const [answer, setAnswer] = useState<TableTaken | null>(null);
  const take = (given: string) =>
    void sending.send(async () => {
      setAnswer(null);
      const taken = await takeStudyTable(studyId, given);
      setAnswer(taken);
      if (taken.taken > 0) {
        setText('');
        await client.invalidateQueries({ queryKey: ['study', studyId] });
      }
    });
  const choose = async (event: ChangeEvent<HTMLInputElement>) => {
    const file = event.target.files?.[0];
    if (!file) return;
    const read = readFileText(new Uint8Array(await file.arrayBuffer()));
    // The same file chosen again, once it is mended, is read again.
    event.target.value = '';
    setText(read.text);
    take(read.text);
  };
  const submit = (event: FormEvent) => {
    event.preventDefault();
    if (text.trim() !== '') take(text);
  };
  return (
    <details className="paste-readings">
      <summary>Paste a table, or choose a file</summary>
      <form className="give-list" onSubmit={submit} aria-label="Table of numbers">
        <p id="paste-hint">
          The first row names the columns: run (the number on the sheet) and rlu; where wanted operator, lot and taken at. Commas,
          semicolons or tabs between them. All rows are taken, or none.
        </p>
        <label htmlFor="paste-text">Rows</label>
        <textarea
          id="paste-text"
          rows={6}
          spellCheck={false}
          aria-describedby="paste-hint"
          placeholder={'run;rlu\n1;5150\n2;<40'}
          value={text}
          onChange={(event) => setText(event.target.value)}
        />
        <div className="actions">
          <button type="submit" className="action primary" disabled={text.trim() === '' || sending.isSending}>
            Take these numbers
          </button>
          <label className="action file-choice">
            Choose a file
            <input type="file" className="sr-only" accept=".csv,.tsv,.txt,text/csv,text/plain" onChange={(event) => void choose(event)} />
          </label>
        </div>
        <p className="problem" role="alert">
          {sending.problem}
        </p>
        <div role="status">{answer && <Answer answer={answer} />}</div>
      </form>
    </details>
  );
}

function Answer({ answer: { taken, problems, notCounted } }: { readonly answer: TableTaken }) {
  const sayLine = ({ line, message }: TableTaken['problems'][number]) => `${line > 0 ? `Row ${line}: ` : ''}${message}.`;
  return (
    <>
      <p>{problems.length > 0 ? 'None of these numbers is taken yet. Mend the rows named here.' : `${plural(taken, 'number')} taken.`}</p>
      <ul className="plain-list">
        {problems.map((problem) => (
          <li key={`${problem.line} ${problem.message}`} className="problem">
            {sayLine(problem)}
          </li>
        ))}
        {notCounted.map((line) => (
          <li key={`${line.line} ${line.message}`}>Kept and not counted. {sayLine(line)}</li>
        ))}
      </ul>
    </>
  );
}
