import { useQueryClient } from '@tanstack/react-query';
import { useState } from 'react';
import type { SessionView } from '../../../api/apiTypes.ts';
import type { ShelfTableView } from '../../../api/shelfTable.ts';
import { lookAtShelfTable, writeShelfTable } from '../../data/stockQueries.ts';
import { useSend } from '../../data/useSend.ts';
import { GiveTable } from '../../parts/GiveTable.tsx';
import { Key } from '../../parts/Key.tsx';
import { Link } from '../../parts/Link.tsx';
import { useLetter } from '../../parts/useLetter.ts';
import { TableItems, TableProblems } from './ShelfTableLines.tsx';
import { mayCorrectStock } from './StockScreen.tsx';
import { countWork, sayRead, sayWork } from './sayTable.ts';

const WRITE_KEY = 'w';

/** A table of items and lots, looked at before anything of it is written. */
export function ShelfTableScreen({ session }: { readonly session: SessionView }) {
  const work = useShelfTable();
  return (
    <>
      <h1>Read a table</h1>
      <p className="visit-links page-links">
        <Link to="/shelf">Shelf</Link>
        <a href="/api/shelf.csv" download>
          The shelf as a table (CSV)
        </a>
      </p>
      {mayCorrectStock(session) ? (
        <Reading work={work} />
      ) : (
        <p className="hint">A lead, a hygienist or a dentist reads a table into the shelf.</p>
      )}
    </>
  );
}

function Reading({ work }: { readonly work: ReturnType<typeof useShelfTable> }) {
  const { text, table, said, problem, isSending } = work;
  return (
    <>
      <p role="status" className={said === '' && !isSending ? undefined : 'opening'}>
        {isSending ? 'reading' : said}
      </p>
      {problem && (
        <p role="alert" className="problem">
          {problem}
        </p>
      )}
      {table && table.problems.length === 0 && <Ready work={work} table={table} />}
      {table && table.problems.length > 0 && <TableProblems problems={table.problems} />}
      {(!table || table.problems.length > 0) && (
        <GiveTable
          hint="One line for each item with its first lot; each further lot in a line of its own with only the id, the lot, its last day and the packs that are there. The table that the shelf gives out shows the columns. A column that is left out leaves what is there; an empty cell makes it not known. Nothing is written before you have seen it."
          label="Table"
          readWords="Look at the table"
          start={text}
          onRead={(typed) => void work.look(typed)}
        />
      )}
      {table && <TableItems items={table.items} problems={table.problems} />}
    </>
  );
}

function Ready({ work, table }: { readonly work: ReturnType<typeof useShelfTable>; readonly table: ShelfTableView }) {
  const nothing = countWork(table).all === 0;
  const isSingle = useLetter(WRITE_KEY, nothing || work.isSending ? undefined : work.write);
  return (
    <div className="actions">
      <button
        type="button"
        className="action primary"
        disabled={nothing || work.isSending}
        aria-keyshortcuts={isSingle ? WRITE_KEY : undefined}
        onClick={work.write}
        // biome-ignore lint/a11y/noAutofocus: the table was looked at; this is what comes next
        autoFocus
      >
        {isSingle && <Key>{WRITE_KEY}</Key>} {nothing ? 'Nothing to write' : `Write ${sayWork(table)}`}
      </button>
      <button type="button" className="action" onClick={work.mend}>
        Change the table
      </button>
    </div>
  );
}

/** A table between pasting and writing. It lives on this page alone. */
function useShelfTable() {
  const client = useQueryClient();
  const [text, setText] = useState('');
  const [table, setTable] = useState<ShelfTableView | null>(null);
  const [said, setSaid] = useState('');
  const { send, isSending, problem } = useSend();
  const look = (typed: string) =>
    send(async () => {
      setText(typed);
      setTable(null);
      const read = await lookAtShelfTable(typed);
      setTable(read);
      setSaid(sayRead(read));
    });
  const write = () => {
    if (!table || isSending) return;
    void send(async () => {
      const done = await writeShelfTable(text, table.seen);
      await Promise.all([['shelf'], ['stock']].map((queryKey) => client.invalidateQueries({ queryKey })));
      if (done.problems.length > 0) {
        setTable(done);
        setSaid(sayRead(done));
        return;
      }
      setTable(null);
      setText('');
      setSaid(`${sayWork(done)} written.`);
    });
  };
  const mend = () => {
    setTable(null);
    setSaid('');
  };
  return { text, table, said, problem, isSending, look, write, mend };
}
