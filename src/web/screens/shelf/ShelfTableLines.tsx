import type { LineProblem, TableItem } from '../../../core/shelf/table/types.ts';
import { plural } from '../../format.ts';
import { countWork, sayItemWork, sayLotWork } from './sayTable.ts';

/** What is wrong, or has to be asked, by line and field. */
export function TableProblems({ problems }: { readonly problems: readonly LineProblem[] }) {
  return (
    <section aria-label="To put right">
      <h2>To put right</h2>
      <table className="row-table">
        <thead>
          <tr>
            <th scope="col">Line</th>
            <th scope="col">Field</th>
            <th scope="col">What is asked</th>
          </tr>
        </thead>
        <tbody>
          {problems.map(({ line, field, says }) => (
            <tr key={`${line} ${field} ${says}`}>
              <td data-label="Line">{line === 0 ? 'all' : line}</td>
              <th scope="row">{field}</th>
              <td data-label="What is asked" className="problem">
                {says}
              </td>
            </tr>
          ))}
        </tbody>
      </table>
    </section>
  );
}

interface Props {
  readonly items: readonly TableItem[];
  readonly problems: readonly LineProblem[];
}

/** What each line would do; those that do nothing are counted. */
export function TableItems({ items: all, problems }: Props) {
  const items = all.filter(({ line }) => problems.every((problem) => problem.line !== line));
  const doing = items.filter((item) => countWork({ items: [item] }).all > 0);
  const still = items.length - doing.length;
  if (items.length === 0) return null;
  return (
    <section aria-label="What it does">
      <h2>{problems.length === 0 ? 'What it does' : 'What the rest would do'}</h2>
      {doing.length > 0 && (
        <table className="row-table">
          <thead>
            <tr>
              <th scope="col">Line</th>
              <th scope="col">Item</th>
              <th scope="col">What it does</th>
              <th scope="col">Not known</th>
            </tr>
          </thead>
          <tbody>
            {doing.map((entry) => (
              <Row key={entry.line} entry={entry} />
            ))}
          </tbody>
        </table>
      )}
      {still > 0 && (
        <p className="hint">
          {plural(still, 'item')} of the table {still === 1 ? 'changes' : 'change'} nothing.
        </p>
      )}
    </section>
  );
}

function Row({ entry }: { readonly entry: TableItem }) {
  const { line, item, lots, open } = entry;
  return (
    <tr>
      <td data-label="Line">{line}</td>
      <th scope="row">
        <bdi>{item.name}</bdi>
      </th>
      <td data-label="What it does">
        {[...sayItemWork(entry), ...lots.map(sayLotWork)].map((says) => (
          <span key={says} className="block">
            {says}
          </span>
        ))}
      </td>
      <td data-label="Not known">
        {open.map((says) => (
          <span key={says} className="block unknown">
            {says}
          </span>
        ))}
      </td>
    </tr>
  );
}
