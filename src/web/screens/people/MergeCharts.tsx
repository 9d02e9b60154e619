import { type FormEvent, useRef, useState } from 'react';
import type { SessionView } from '../../../api/apiTypes.ts';
import type { MergedChart, PersonPage } from '../../../api/bundles.ts';
import { mergeCharts, unmergeChart, usePersonPage } from '../../data/personQueries.ts';
import { useSend } from '../../data/useSend.ts';
import { formatDate, plural } from '../../format.ts';
import { ChoiceLine, TextLine } from '../../parts/fields.tsx';
import { focusFirstProblem } from '../../parts/focusFirstProblem.ts';
import { LoadState } from '../../parts/LoadState.tsx';
import { OpenForm } from '../../parts/OpenForm.tsx';
import { SaveBar } from '../../parts/SaveBar.tsx';
import { goTo } from '../../routing.ts';
import { ChartSearch } from './ChartSearch.tsx';
import { sayPerson } from './sayPerson.ts';

interface MergeProps {
  readonly person: PersonPage;
  readonly session: SessionView;
  readonly reread: () => Promise<void>;
}

/** Two charts of one person: read as one from now on, and again as two when that was wrong. */
export function MergeCharts({ person, session, reread }: MergeProps) {
  const { mergedCharts } = person;
  const mayMerge = session.member.roles.some((role) => role !== 'assistant');
  if (!mayMerge && mergedCharts.length === 0) return null;
  return (
    <section aria-label="Charts" className={mergedCharts.length === 0 ? 'only-buttons' : undefined}>
      <h2>Charts</h2>
      {mergedCharts.length > 0 && <p>Read as one with this chart. Nothing was moved; each can be taken apart again.</p>}
      <ul className="plain-list">
        {mergedCharts.map((chart) => (
          <li key={chart.id}>
            <MergedLine chart={chart} />{' '}
            {mayMerge && (
              <OpenForm label="undo" about={chart.name} form={(close) => <UnmergeForm chart={chart} reread={reread} close={close} />} />
            )}
          </li>
        ))}
      </ul>
      {mayMerge && (
        <div className="actions">
          <OpenForm
            label="Merge with another chart"
            isAction
            form={(close) => <MergeForm person={person} reread={reread} close={close} />}
          />
        </div>
      )}
    </section>
  );
}

function MergedLine({ chart: { name, birthDate, chartNumber, visits, merged } }: { readonly chart: MergedChart }) {
  return (
    <>
      <bdi>{name}</bdi>, born {formatDate(birthDate)}
      {chartNumber && (
        <>
          , chart <bdi>{chartNumber}</bdi>
        </>
      )}
      , {plural(visits, 'visit')}
      {merged && (
        <span className="aside">
          {' '}
          merged {formatDate(merged.at)}
          {merged.by && (
            <>
              {' '}
              by <bdi>{merged.by}</bdi>
            </>
          )}
          {merged.reason && (
            <>
              , because <bdi>{merged.reason}</bdi>
            </>
          )}
        </span>
      )}
    </>
  );
}

interface FormProps {
  readonly reread: () => Promise<void>;
  readonly close: (said?: string) => void;
}

function UnmergeForm({ chart, reread, close }: FormProps & { readonly chart: MergedChart }) {
  const form = useRef<HTMLFormElement>(null);
  const [reason, setReason] = useState('');
  const [isTried, setTried] = useState(false);
  const saving = useSend();
  const problem = isTried && reason.trim() === '' ? 'A reason is needed; it stays on the record.' : undefined;
  const submit = (event: FormEvent) => {
    event.preventDefault();
    setTried(true);
    if (reason.trim() === '') return focusFirstProblem(form.current);
    void saving.send(async () => {
      await unmergeChart(chart, reason.trim());
      await reread();
      close();
    });
  };
  return (
    <form ref={form} noValidate onSubmit={submit} aria-label="Undo the merge">
      <p>
        Both charts are again what they were. What was written since the merge stays with this chart; a visit that was open stays with the
        chart it was opened in.
      </p>
      <TextLine label="Why" value={reason} problem={problem} onChange={setReason} />
      <SaveBar saving={saving} problemCount={problem ? 1 : 0} saveWords="Undo the merge" onLeave={() => close()} />
    </form>
  );
}

function MergeForm({ person, reread, close }: FormProps & { readonly person: PersonPage }) {
  const [otherId, setOtherId] = useState<string | null>(null);
  if (otherId !== null) return <Compare person={person} otherId={otherId} reread={reread} close={close} />;
  return (
    <ChartSearch
      title="Choose the other chart"
      label="The other chart"
      except={person.id}
      leaveWords="Leave without merging"
      onChoose={({ id }) => setOtherId(id)}
      onLeave={() => close()}
    />
  );
}

/** Both side by side; which one is kept decides whose name and details hold. */
function Compare({ person, otherId, reread, close }: FormProps & { readonly person: PersonPage; readonly otherId: string }) {
  const form = useRef<HTMLFormElement>(null);
  const other = usePersonPage(otherId);
  const [keep, setKeep] = useState<'this' | 'other' | 'none'>('none');
  const [reason, setReason] = useState('');
  const [isTried, setTried] = useState(false);
  const saving = useSend();
  if (!other.data) return <LoadState query={other} what="the other chart" />;
  const problems = {
    keep: isTried && keep === 'none' ? 'Choose the chart whose name and details hold.' : undefined,
    reason: isTried && reason.trim() === '' ? 'A reason is needed; it stays on the record.' : undefined,
  };
  const [kept, merged] = keep === 'other' ? [other.data, person] : [person, other.data];
  const submit = (event: FormEvent) => {
    event.preventDefault();
    setTried(true);
    if (keep === 'none' || reason.trim() === '') return focusFirstProblem(form.current);
    void saving.send(async () => {
      await mergeCharts(kept, { id: merged.id, version: merged.version }, reason.trim());
      await reread();
      close('Merged.');
      goTo(`/people/${kept.id}`);
    });
  };
  return (
    <form ref={form} noValidate onSubmit={submit} aria-label="Merge two charts">
      <SideBySide left={person} right={other.data} />
      <ChoiceLine
        label="Keep"
        value={keep}
        problem={problems.keep}
        onChange={setKeep}
        options={[
          { id: 'this', label: `this chart, ${person.details.name}` },
          { id: 'other', label: `the other, ${other.data.details.name}` },
        ]}
      />
      <TextLine
        label="Why they are one person"
        value={reason}
        problem={problems.reason}
        hint="Kept on the record. The merge can be undone on this page."
        onChange={setReason}
      />
      <SaveBar saving={saving} problemCount={Object.values(problems).filter(Boolean).length} saveWords="Merge" onLeave={() => close()} />
    </form>
  );
}

function SideBySide({ left, right }: { readonly left: PersonPage; readonly right: PersonPage }) {
  const said = [left, right].map(({ details, visits }) => new Map([...sayPerson(details), ['Visits', String(visits)] as const]));
  const names = [...new Set(said.flatMap((lines) => [...lines.keys()]))];
  return (
    <table className="practice-table" aria-label="Both charts">
      <thead>
        <tr>
          <th scope="col">Line</th>
          <th scope="col">This chart</th>
          <th scope="col">The other</th>
        </tr>
      </thead>
      <tbody>
        {names.map((name) => (
          <tr key={name}>
            <th scope="row">{name}</th>
            {said.map((lines, i) => (
              <td key={i === 0 ? 'this' : 'other'} data-label={i === 0 ? 'This chart' : 'The other'}>
                <span dir="ltr">{lines.get(name) ?? 'not there'}</span>
              </td>
            ))}
          </tr>
        ))}
      </tbody>
    </table>
  );
}
