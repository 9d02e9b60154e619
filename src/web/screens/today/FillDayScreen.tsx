import type { ColumnUse } from '../../../api/day.ts';
import { formatDate, formatDay, plural } from '../../format.ts';
import { ChoiceLine, SelectLine } from '../../parts/fields.tsx';
import { GiveTable } from '../../parts/GiveTable.tsx';
import { Link } from '../../parts/Link.tsx';
import { MendRows, NothingRows, RightRows, RowsToAnswer } from './FillRows.tsx';
import { type Filling, sortRows, useFillDay } from './useFillDay.ts';

/** A list pasted or chosen, looked at before anything of it is written. */
export function FillDayScreen({ onDate }: { readonly onDate: string }) {
  const work = useFillDay(onDate);
  const { filling, said, problem, isBusy } = work;
  return (
    <>
      <h1>Fill {formatDay(onDate)}</h1>
      <p className="fill-back">
        <Link to={`/day/${onDate}`}>Back to the day</Link>
      </p>
      <p role="status" className="hint">
        {isBusy ? 'reading' : said}
      </p>
      {problem && (
        <p role="alert" className="problem">
          {problem}
        </p>
      )}
      {filling === null || filling.rows.length === 0 ? (
        <GiveTable
          hint="One person in each row: time, chart number, name and birthday, in any order, with or without a header. Commas, semicolons or tabs between them, as a spreadsheet gives them. Nothing is written before you have seen what each row will do."
          label="Rows"
          readWords="Look at the rows"
          placeholder="9:40; 1042; Odile Brandt; 1980-03-04"
          onRead={(text) => void work.read(text)}
        />
      ) : (
        <Preview work={work} filling={filling} />
      )}
    </>
  );
}

function Preview({ work, filling }: { readonly work: ReturnType<typeof useFillDay>; readonly filling: Filling }) {
  const { wrong, ask, right, nothing } = sortRows(filling);
  const count = right.length;
  return (
    <>
      <p className="opening">{sayPreview(filling)}</p>
      <HowRead work={work} filling={filling} />
      <div className="actions">
        <button type="button" className="action primary" disabled={count === 0 || work.isBusy} onClick={() => void work.take()}>
          Put {plural(count, 'person', 'people')} down
        </button>
        <button type="button" className="action" onClick={work.forget}>
          Throw this list away
        </button>
      </div>
      <MendRows rows={wrong} onChange={(row) => void work.change(row)} />
      <RowsToAnswer rows={ask} onChange={(row) => void work.change(row)} />
      <RightRows rows={right} onChange={(row) => void work.change(row)} />
      <NothingRows rows={nothing} onChange={(row) => void work.change(row)} />
    </>
  );
}

function sayPreview(filling: Filling): string {
  const { wrong, ask, right, nothing } = sortRows(filling);
  const parts = [
    `${right.length} of ${plural(filling.rows.length, 'row')} can be taken`,
    wrong.length > 0 && `${wrong.length} to mend`,
    ask.length > 0 && `${ask.length} to answer`,
    nothing.length > 0 && `${nothing.length} with nothing to do`,
  ];
  return `${parts.filter(Boolean).join(', ')}.`;
}

const SEPARATOR_WORDS = { comma: 'commas', semicolon: 'semicolons', tab: 'tabs' } as const;
const ORDERS = [
  { id: 'day-first', label: 'Day first' },
  { id: 'month-first', label: 'Month first' },
] as const;

/** How the list was taken apart, and where somebody must or may say otherwise. */
function HowRead({ work, filling }: { readonly work: ReturnType<typeof useFillDay>; readonly filling: Filling }) {
  const { dates, dateOrder, separator, hasHeader } = filling;
  const isOpen = dates.isNeeded && dateOrder === null;
  return (
    <>
      {dates.isNeeded && (
        <ChoiceLine
          label="Dates of birth"
          value={filling.chosenOrder ?? dateOrder ?? ''}
          onChange={(order) => order !== '' && void work.chooseOrder(order)}
          options={ORDERS.map(({ id, label }) => ({
            id,
            label,
            hint: dates.examples
              .slice(0, 2)
              .map((e) => `${e.text} is ${formatDate(id === 'day-first' ? e.dayFirst : e.monthFirst)}`)
              .join('; '),
          }))}
          problem={isOpen ? 'These dates can be read in two ways. Which number is the day?' : undefined}
          hint={
            !isOpen && filling.chosenOrder === undefined && dates.because ? `Read so because of ${dates.because} in this list.` : undefined
          }
        />
      )}
      <details>
        <summary>
          Read with {SEPARATOR_WORDS[separator]} between the columns, {hasHeader ? 'the first row as a header' : 'without a header'}
        </summary>
        <Columns filling={filling} onChange={(columns) => void work.read(filling.text, columns)} />
      </details>
    </>
  );
}

const USES: readonly { readonly id: ColumnUse; readonly label: string }[] = [
  { id: 'time', label: 'time' },
  { id: 'chartNumber', label: 'chart number' },
  { id: 'name', label: 'name' },
  { id: 'birthday', label: 'birthday' },
  { id: 'not-used', label: 'not used' },
];

function Columns({ filling, onChange }: { readonly filling: Filling; readonly onChange: (columns: readonly ColumnUse[]) => void }) {
  const { columns, examples } = filling;
  return (
    <>
      <p className="side-note">Another choice reads the list anew; what was mended here is then gone.</p>
      {columns.map((use, index) => (
        <SelectLine
          // biome-ignore lint/suspicious/noArrayIndexKey: a column is its place
          key={index}
          label={`Column ${index + 1}, “${examples[index] ?? ''}”`}
          value={use}
          options={USES}
          onChange={(next) =>
            onChange(columns.map((old, at) => (at === index ? next : old === next && next !== 'not-used' ? 'not-used' : old)))
          }
        />
      ))}
    </>
  );
}
