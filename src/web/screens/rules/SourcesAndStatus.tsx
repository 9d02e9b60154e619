import type { SourceStatus } from '../../../core/visit/answer.ts';
import { sourceIndex } from '../../content.ts';
import { STATUS_WORDS } from '../../parts/Sources.tsx';

const STATUS_MEANING: Readonly<Record<SourceStatus, string>> = {
  read: 'the number or rule was read in the source named',
  memory: 'recalled and not checked yet; shown to professionals, never printed for a patient as a figure or a claim',
  mixed: 'some of it was read, some recalled',
  'common-practice': 'what practices do, without one source to name',
  derived: 'computed or concluded from sources named',
  proposal: 'our own number or wording, for the practice to change or to refuse',
};

export function SourcesAndStatus() {
  return (
    <section id="sources" aria-label="Sources">
      <h2>Sources</h2>
      <dl className="status-words">
        {(Object.keys(STATUS_MEANING) as SourceStatus[]).map((status) => (
          <div key={status}>
            <dt>{STATUS_WORDS[status]}</dt>
            <dd>{STATUS_MEANING[status]}</dd>
          </div>
        ))}
      </dl>
      <details>
        <summary>
          All sources <span className="aside">{Object.keys(sourceIndex).length}, with what was read of each</span>
        </summary>
        <table className="rules" aria-label="All sources">
          <thead>
            <tr>
              <th scope="col">Key</th>
              <th scope="col">Source</th>
              <th scope="col">Read</th>
            </tr>
          </thead>
          <tbody>
            {Object.entries(sourceIndex).map(([key, { cite, read }]) => (
              <tr key={key}>
                <th scope="row">{key}</th>
                <td>{cite}</td>
                <td data-label="Read">{read}</td>
              </tr>
            ))}
          </tbody>
        </table>
      </details>
    </section>
  );
}
