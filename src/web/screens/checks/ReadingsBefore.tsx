import { useQueryClient } from '@tanstack/react-query';
import type { ReadingsBeforeStop } from '../../../api/swabChecks.ts';
import type { ReadingsDecision, StopReadings } from '../../../core/checks/control.ts';
import { sayRlu } from '../../../core/reading/sayRlu.ts';
import { questionReadings, useReadingsBeforeStop } from '../../data/checkQueries.ts';
import { useSend } from '../../data/useSend.ts';
import { formatDate, formatShortClock, plural } from '../../format.ts';
import { Link } from '../../parts/Link.tsx';
import { LoadState } from '../../parts/LoadState.tsx';
import { OpenForm } from '../../parts/OpenForm.tsx';
import { ReasonForm } from '../../parts/ReasonForm.tsx';

interface ReadingsBeforeProps {
  /** The control that began the stop. */
  readonly outId: string;
  readonly mayDecide: boolean;
}

/** Readings between the last control in line and the one that was out: counted until somebody says otherwise, with a reason. */
export function ReadingsBefore({ outId, mayDecide }: ReadingsBeforeProps) {
  const query = useReadingsBeforeStop(outId);
  if (!query.data) return <LoadState query={query} what="the readings before the stop" />;
  return <Readings before={query.data} mayDecide={mayDecide} />;
}

function Readings({ before, mayDecide }: { readonly before: ReadingsBeforeStop; readonly mayDecide: boolean }) {
  const { question, readings } = before;
  if (readings.length === 0) return <p data-before>{sayNone(question)}</p>;
  const last = question.decisions.at(-1);
  return (
    <div data-before>
      <p>
        <strong>{sayCount(question, readings.length)}</strong> {sayStanding(last)}
      </p>
      <details>
        <summary>Show {readings.length === 1 ? 'it' : 'them'}</summary>
        <ReadingsTable readings={readings} />
      </details>
      <Decide before={before} mayDecide={mayDecide} />
    </div>
  );
}

const sayNone = ({ from }: StopReadings): string =>
  from === null ? 'No reading was taken with this lot before it.' : 'No reading was taken since the last control in line.';

function sayCount({ from }: StopReadings, count: number): string {
  const readings = plural(count, 'reading');
  if (from === null) return `${readings} with this lot, and no control in line before.`;
  return `${readings} since the last control in line, ${formatDate(from)}, ${formatShortClock(from)}.`;
}

export function sayStanding(last: ReadingsDecision | undefined): string {
  if (!last) return 'Whatever was off may have begun before it was seen. They count as they did, until somebody says otherwise.';
  const who = `${last.by}, ${formatDate(last.at)}: ${last.reason}`;
  return last.decision === 'under-question' ? `Under question, and in no decision: ${who}.` : `Left as they are: ${who}.`;
}

function ReadingsTable({ readings }: Pick<ReadingsBeforeStop, 'readings'>) {
  return (
    <table className="stacks">
      <thead>
        <tr>
          <th scope="col">Taken</th>
          <th scope="col">Patient</th>
          <th scope="col">Reading</th>
          <th scope="col">Now</th>
        </tr>
      </thead>
      <tbody>
        {readings.map(({ id, visitId, name, takenAt, rlu, bound, state }) => (
          <tr key={id}>
            <th scope="row">
              {formatDate(takenAt)}, {formatShortClock(takenAt)}
            </th>
            <td data-label="Patient">{visitId === null ? name : <Link to={`/visits/${visitId}`}>{name}</Link>}</td>
            <td data-label="Reading">{sayRlu(rlu, bound)}</td>
            <td data-label="Now">{state === 'void' ? 'not counted' : state === 'flagged' ? 'counts, with caution' : 'counts'}</td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}

const WORDS = {
  'under-question': {
    label: 'Put them all under question',
    hint: 'kept on each of them; they then count for no decision, and what was told at a closed visit stays beside it',
    save: 'Put them under question',
  },
  left: { label: 'Leave them as they are', hint: 'kept with the stop', save: 'Leave them' },
} as const;

function Decide({ before, mayDecide }: { readonly before: ReadingsBeforeStop; readonly mayDecide: boolean }) {
  const last = before.question.decisions.at(-1)?.decision;
  if (!mayDecide) return last ? null : <p className="form-note">A hygienist or dentist says whether they go on counting.</p>;
  const open = (['under-question', 'left'] as const).filter((decision) => decision !== last);
  return (
    <div className="actions">
      {open.map((decision) => (
        <DecisionForm key={decision} before={before} decision={decision} />
      ))}
    </div>
  );
}

interface DecisionFormProps {
  readonly before: ReadingsBeforeStop;
  readonly decision: ReadingsDecision['decision'];
}

function DecisionForm({ before: { question, version }, decision }: DecisionFormProps) {
  const client = useQueryClient();
  const { send, problem } = useSend();
  const { label, hint, save } = WORDS[decision];
  return (
    <OpenForm
      label={label}
      form={(close) => (
        <ReasonForm
          about={label}
          hint={hint}
          saveWords={save}
          problem={problem}
          onGive={(reason) =>
            void send(async () => {
              await questionReadings(question.outId, { decision, reason, version });
              close();
              await client.invalidateQueries({ queryKey: ['before-stop', question.outId] });
              await client.invalidateQueries({ queryKey: ['checks'] });
            })
          }
          onLeave={() => close()}
        />
      )}
    />
  );
}
