import { useEffect, useRef, useState } from 'react';
import type { DaySheet } from '../../../api/day.ts';
import { LANGUAGE_NAMES } from '../../../core/leaflet/languages.ts';
import { questions } from '../../content.ts';
import { useDaySheets } from '../../data/dayQueries.ts';
import { formatDate, formatDay, plural } from '../../format.ts';
import { Link } from '../../parts/Link.tsx';
import { LoadState } from '../../parts/LoadState.tsx';
import type { Entry } from '../visit/line.ts';
import { GROUP_TITLES } from '../visit/scopes.ts';
import { SHEET_GROUPS, type SheetLine, sheetLines } from './sheetLines.ts';

/** One page of paper for each person: what will be asked, to be ticked in the waiting room. */
export function SheetsScreen({ onDate }: { readonly onDate: string }) {
  const sheets = useDaySheets(onDate);
  const [only, setOnly] = useState('');
  const printButton = useRef<HTMLButtonElement>(null);
  const isThere = sheets.data !== undefined;
  useEffect(() => {
    if (isThere) printButton.current?.focus();
  }, [isThere]);
  if (!sheets.data) return <LoadState query={sheets} what="the sheets" />;
  const shown = sheets.data.filter(({ patientId }) => only === '' || patientId === only);
  return (
    <>
      <div className="sheets-head">
        <h1>Sheets for the waiting room, {formatDay(onDate)}</h1>
        <p className="side-note">
          {plural(sheets.data.length, 'person', 'people')} still expected. Each sheet asks only what is not known or out of date on the day.
          The letter beside a question is its key on the Visit page. Private questions are asked in the room and are never on paper. The
          questions are in English; no translation of them is there yet.
        </p>
        <div className="actions">
          <button ref={printButton} type="button" className="action primary" disabled={shown.length === 0} onClick={() => print()}>
            Print
          </button>
          <select aria-label="Whose sheets" value={only} onChange={(event) => setOnly(event.target.value)}>
            <option value="">everybody</option>
            {sheets.data.map(({ patientId, name, atTime }) => (
              <option key={patientId} value={patientId}>
                {atTime ? `${atTime} ` : ''}
                {name}
              </option>
            ))}
          </select>
          <Link to={`/day/${onDate}`} className="action">
            Back to the day
          </Link>
        </div>
      </div>
      {shown.map((sheet) => (
        <Sheet key={sheet.patientId} sheet={sheet} />
      ))}
    </>
  );
}

function Sheet({ sheet }: { readonly sheet: DaySheet }) {
  const { name, birthDate, ageYears, atTime, onDate } = sheet;
  const lines = sheetLines(sheet, questions);
  return (
    <article className={`wait-sheet ${sizeOf(lines.length)}`} aria-label={`Sheet of ${name}`}>
      <header>
        <h2>
          <bdi>{name}</bdi>
        </h2>
        <p>
          Born {formatDate(birthDate)}. {formatDay(onDate)}
          {atTime && `, ${atTime}`}
        </p>
        <p>
          Please tick or write what fits. Leave out what you do not want to answer.{' '}
          {ageYears < 18 && 'If you fill this in for a child, answer for the child. '}
          We go through it with you.
        </p>
        {sayLanguage(sheet) && <p className="side-note">{sayLanguage(sheet)}</p>}
      </header>
      {lines.length === 0 && <p>Nothing to ask on paper: everything is known and in date.</p>}
      <div className="wait-groups">
        {SHEET_GROUPS.map((group) => (
          <Group key={group} title={GROUP_TITLES[group]} lines={lines.filter((line) => line.group === group)} />
        ))}
      </div>
    </article>
  );
}

/** As large as one page of paper lets it be. */
function sizeOf(count: number): 'large' | 'medium' | 'small' {
  if (count <= 14) return 'large';
  return count <= 20 ? 'medium' : 'small';
}

function sayLanguage({ language, interpreter }: DaySheet): string {
  const parts = [
    language === null
      ? 'Language: not on record.'
      : language !== 'en' && `Language: ${LANGUAGE_NAMES[language]}. This sheet is not translated.`,
    interpreter && `Interpreter: ${interpreter}.`,
  ];
  return parts.filter(Boolean).join(' ');
}

function Group({ title, lines }: { readonly title: string; readonly lines: readonly SheetLine[] }) {
  if (lines.length === 0) return null;
  return (
    <section>
      <h3>{title}</h3>
      <ol className="wait-lines">
        {lines.map((line) => (
          <li key={line.id}>
            <span className="wait-letter">{line.letter}</span>
            <div>
              {line.ask === null ? (
                <p className="side-note">We ask or look at this in the room.</p>
              ) : (
                <>
                  <p>{line.ask}</p>
                  <Answers entry={line.entry} />
                  {line.lastTime && <p className="side-note">Last time: {line.lastTime}</p>}
                </>
              )}
            </div>
          </li>
        ))}
      </ol>
    </section>
  );
}

/** More than can be ticked is written. */
const MOST_BOXES = 8;

function Answers({ entry }: { readonly entry: Entry }) {
  const boxes = boxesOf(entry);
  const unit = 'unit' in entry ? entry.unit : undefined;
  return (
    <p className="wait-answers">
      {boxes === null ? (
        <>
          <span className="wait-rule" /> {unit}
        </>
      ) : (
        boxes.map((label) => <Box key={label} label={label} />)
      )}
      <Box label="I do not know" />
    </p>
  );
}

function boxesOf(entry: Entry): readonly string[] | null {
  if (entry.kind === 'yes-no') return ['yes', 'no'];
  if (entry.kind === 'choice' && entry.choices.length <= MOST_BOXES) return entry.choices.map((c) => c.label);
  if (entry.kind === 'list' && entry.choices.length <= MOST_BOXES) return [...entry.choices.map((c) => c.label), 'none'];
  return null;
}

function Box({ label }: { readonly label: string }) {
  return (
    <span className="wait-box">
      <span className="wait-tick" /> {label}
    </span>
  );
}
