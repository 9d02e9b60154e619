import type { Condition, ProtocolTable } from '../../../core/risk/protocol.ts';
import type { SourceRef } from '../../../core/visit/answer.ts';
import { content, itemLabel } from '../../content.ts';
import { formatMonths, plural, uncapitalise } from '../../format.ts';
import { SourceLine, STATUS_WORDS } from '../../parts/Sources.tsx';
import { type RuleRow, RuleTable } from './RuleTable.tsx';

export function Methods() {
  return (
    <section id="methods" aria-label="Methods">
      <h2>Methods</h2>
      <p>
        Published lists in our own words, under neutral names; the status of each line says whether it was read or is from memory. Lists
        differ and none is the truth. One list for each age is the practice's method; the others stand under "compare".
      </p>
      {content.protocols.map((table) => (
        <details key={table.id}>
          <summary>
            {table.screenName}{' '}
            <span className="aside">
              {agesOf(table)}; {plural(rowsOf(table).length, 'line')}
            </span>
          </summary>
          <Method table={table} />
        </details>
      ))}
    </section>
  );
}

function Method({ table }: { readonly table: ProtocolTable }) {
  return (
    <div className="method">
      <p>
        Owner: {table.owner}. Edition {table.edition}. {table.citation}
      </p>
      <p>
        Ages: <SourceLine source={table.applies.source} />
      </p>
      <h3>The rule, step by step</h3>
      <ol>
        {table.steps.map((step) => (
          <li key={step.text}>
            {step.text} <Status source={step.source} />
          </li>
        ))}
      </ol>
      {table.notes.length > 0 && (
        <ul>
          {table.notes.map((note) => (
            <li key={note.text}>
              {note.text} <Status source={note.source} />
            </li>
          ))}
        </ul>
      )}
      <h3>Lines</h3>
      <RuleTable label={`Lines of ${table.screenName}`} heads={['Item', 'When', 'Counts as']} rows={rowsOf(table)} />
      {table.recall.length > 0 && (
        <>
          <h3>Intervals that this list gives</h3>
          <RuleTable
            label={`Intervals of ${table.screenName}`}
            heads={['Level', 'Next visit', 'Radiographs']}
            rows={table.recall.map((r) => ({
              id: r.level,
              cells: [r.level, formatMonths(...r.recallMonths), formatMonths(...r.radiographMonths)],
              source: r.source,
            }))}
          />
        </>
      )}
    </div>
  );
}

/** The source itself stands at the head of the list. */
function Status({ source: { status, note } }: { readonly source: SourceRef }) {
  return (
    <span className={status === 'memory' ? 'unknown' : 'status'}>
      ({STATUS_WORDS[status]}
      {note && `: ${note}`})
    </span>
  );
}

function agesOf({ applies: { fromAgeYears, belowAgeYears } }: ProtocolTable): string {
  return belowAgeYears === null ? `age ${fromAgeYears} and over` : `age ${fromAgeYears} to under ${belowAgeYears}`;
}

/** Each kind of list in the same three columns. */
function rowsOf(table: ProtocolTable): readonly RuleRow[] {
  switch (table.kind) {
    case 'balance':
      return table.rows.map((r) => ({
        id: `${r.role} ${r.item}`,
        cells: [itemLabel(r.item), sayAnyOf(r.item, r.anyOf), r.role],
        source: r.source,
      }));
    case 'columns':
      return table.rows.map((r) => ({
        id: `${r.column} ${r.item}`,
        cells: [
          itemLabel(r.item),
          sayAnyOf(r.item, r.anyOf),
          `${r.column}${r.decisive ? ', decides alone' : ''}${r.countsAsTick ? '' : ', later edition'}`,
        ],
        source: r.source,
      }));
    case 'score':
      return table.lines.map((line, i) => ({
        id: `${i} ${line.item}`,
        cells: [
          itemLabel(line.item),
          line.cases.map((c) => `${sayCondition(c.when)}${sayAges(c)}`).join('; '),
          line.cases.map((c) => plural(c.points, 'point')).join('; '),
        ],
        source: line.source,
      }));
  }
}

/** The conditions of one row; other items than its own by name. */
function sayAnyOf(item: string, anyOf: readonly Condition[]): string {
  return anyOf.map((c) => (c.item === item ? sayCondition(c) : `${uncapitalise(itemLabel(c.item))}: ${sayCondition(c)}`)).join('; or ');
}

function sayCondition(condition: Condition): string {
  if ('is' in condition) return condition.is ? 'yes' : 'no';
  if (condition.to === null) return `${condition.from} or more`;
  return condition.from === condition.to ? String(condition.from) : `${condition.from} to ${condition.to}`;
}

function sayAges({
  fromAgeYears,
  belowAgeYears,
}: {
  readonly fromAgeYears?: number | undefined;
  readonly belowAgeYears?: number | undefined;
}): string {
  if (fromAgeYears !== undefined && belowAgeYears !== undefined) return `, age ${fromAgeYears} to under ${belowAgeYears}`;
  if (fromAgeYears !== undefined) return `, from age ${fromAgeYears}`;
  return belowAgeYears === undefined ? '' : `, under ${belowAgeYears}`;
}
