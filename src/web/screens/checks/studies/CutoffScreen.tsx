import { useQuery } from '@tanstack/react-query';
import { useState } from 'react';
import type { LocalCutoffResult, LocalCutoffStudy } from '../../../../core/meter/localCutoffStudy.ts';
import type { Meter } from '../../../../core/reading/types.ts';
import { RocChart } from '../../../charts/RocChart.tsx';
import { callApi } from '../../../data/api.ts';
import { useChecks } from '../../../data/checkQueries.ts';
import { formatNumber, plural } from '../../../format.ts';
import { ChoiceLine } from '../../../parts/fields.tsx';
import { Link } from '../../../parts/Link.tsx';
import { LoadState } from '../../../parts/LoadState.tsx';
import { SourceList, Why } from '../../../parts/Sources.tsx';
import { useOpenForPrint } from '../../../parts/useOpenForPrint.ts';
import { sayCutoff, sayGroups, sayWhoCounts } from './sayCutoff.ts';

const MONTHS = ['6', '12', '18', '24'] as const;
type Months = (typeof MONTHS)[number];

/** Do this practice's readings go with new lesions? Computed anew from the record each time; nobody is named. */
export function CutoffScreen() {
  const checks = useChecks();
  useOpenForPrint();
  if (!checks.data) return <LoadState query={checks} what="the meters" />;
  return <Cutoff meters={checks.data.meters.map(({ meter }) => meter)} />;
}

function Cutoff({ meters }: { readonly meters: readonly Meter[] }) {
  const [meterId, setMeterId] = useState(meters[0]?.id ?? '');
  const [months, setMonths] = useState<Months>('12');
  const study = useQuery({
    queryKey: ['checks', 'cutoff', meterId, months],
    queryFn: () => callApi<LocalCutoffStudy>('GET', `/api/cutoff-study?meterId=${encodeURIComponent(meterId)}&withinMonths=${months}`),
    enabled: meterId !== '',
  });
  return (
    <>
      <h1>Readings and new lesions</h1>
      <p className="opening">
        Of the people of this practice, did those with high readings have more new lesions afterwards? Each person counts once, with the
        earliest reading whose outcome is on record.
      </p>
      <ul className="study-links">
        <li>
          <Link to="/checks/studies">All studies</Link>
        </li>
      </ul>
      {meterId === '' && (
        <p>
          There is no meter yet, so there is no reading to look at. <Link to="/practice">Add the meter under Practice.</Link>
        </p>
      )}
      {meters.length > 1 && (
        <ChoiceLine label="Meter" value={meterId} options={meters.map(({ id, name }) => ({ id, label: name }))} onChange={setMeterId} />
      )}
      <ChoiceLine
        label="A new lesion within"
        value={months}
        options={MONTHS.map((id) => ({ id, label: `${id} months` }))}
        onChange={setMonths}
      />
      {study.data ? (
        <CutoffResult study={study.data} months={Number(months)} />
      ) : (
        meterId !== '' && <LoadState query={study} what="the record" />
      )}
    </>
  );
}

function CutoffResult({ study, months }: { readonly study: LocalCutoffStudy; readonly months: number }) {
  const { result, caution, sources } = study;
  return (
    <section className="cutoff-study" aria-label="What the record says" aria-live="polite">
      <p className="opening">{sayGroups(study)}</p>
      {!result && <p>{sayWhoCounts(months)}</p>}
      <p>
        <strong>{caution}</strong>
      </p>
      {result && (
        <>
          {sayCutoff(result).map((says) => (
            <p key={says}>{says}</p>
          ))}
          <figure className="study-figure">
            <figcaption>
              From left to right the share with a high reading among people without a new lesion, upwards among people with one, as "high"
              begins lower and lower. Dashed: chance alone.
            </figcaption>
            <RocChart result={result} />
          </figure>
          <details>
            <summary>Show as table</summary>
            <CurveTable result={result} />
          </details>
        </>
      )}
      <p className="hint">
        {plural(study.leftOut.notFollowed, 'person', 'people')} not counted, since nobody looked at all their teeth when the time was over.{' '}
        {plural(study.leftOut.furtherReadings, 'further reading')} of people who count already.
      </p>
      <p>
        <Why about="readings and new lesions" label="sources">
          <SourceList sources={sources} />
        </Why>
      </p>
    </section>
  );
}

function CurveTable({ result }: { readonly result: LocalCutoffResult }) {
  const percent = (share: number) => `${Math.round(100 * share)} %`;
  return (
    <table aria-label="Every limit">
      <thead>
        <tr>
          <th scope="col">High from</th>
          <th scope="col">With a new lesion, high</th>
          <th scope="col">Without, low</th>
        </tr>
      </thead>
      <tbody>
        {result.curve.map(({ cutoff, sensitivity, specificity }) => (
          <tr key={cutoff ?? 'none'}>
            <th scope="row">{cutoff === null ? 'above all' : `${formatNumber(cutoff)} RLU`}</th>
            <td data-label="With a new lesion, high">{percent(sensitivity)}</td>
            <td data-label="Without, low">{percent(specificity)}</td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}
