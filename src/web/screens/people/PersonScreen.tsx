import { useQueryClient } from '@tanstack/react-query';
import type { SessionView } from '../../../api/apiTypes.ts';
import type { PersonPage } from '../../../api/bundles.ts';
import { usePersonPage } from '../../data/personQueries.ts';
import { formatDate, plural } from '../../format.ts';
import { Link } from '../../parts/Link.tsx';
import { LoadState } from '../../parts/LoadState.tsx';
import { OpenForm } from '../../parts/OpenForm.tsx';
import { usePrintFoot } from '../../printFoot.ts';
import { MergeCharts } from './MergeCharts.tsx';
import { PersonForm } from './PersonForm.tsx';
import { PersonHistory } from './PersonHistory.tsx';
import { NOT_ASKED, PERMISSIONS, sayConsent, sayInterpreter, sayLanguage, sayLargePrint, sayPermission } from './sayPerson.ts';

/** Who a person is to the practice: how to write and speak to them, who decides with them, and what they have allowed. */
export function PersonScreen({ patientId, session }: { readonly patientId: string; readonly session: SessionView }) {
  const query = usePersonPage(patientId);
  const client = useQueryClient();
  usePrintFoot({ name: query.data?.details.name ?? '' });
  if (!query.data) return <LoadState query={query} what="the person" />;
  const person = query.data;
  const reread = async () => {
    await client.invalidateQueries({ queryKey: ['person-page'] });
    void client.invalidateQueries({ queryKey: ['people'] });
    void client.invalidateQueries({ queryKey: ['person'] });
  };
  return (
    <>
      <Head person={person} askedId={patientId} />
      <div className="person-details">
        <OpenForm
          label="Change"
          about={person.details.name}
          isAction
          form={(close) => <PersonForm person={person} today={session.today} reread={reread} close={close} />}
        >
          <Details person={person} />
        </OpenForm>
      </div>
      <MergeCharts person={person} session={session} reread={reread} />
      <PersonHistory history={person.history} />
    </>
  );
}

function Head({ person, askedId }: { readonly person: PersonPage; readonly askedId: string }) {
  const { details, ageYears, visits, openVisitId, dayVisitId, id, mergedCharts } = person;
  const asked = mergedCharts.find((chart) => chart.id === askedId);
  return (
    <header className="visit-head">
      <h1>
        <bdi>{details.name}</bdi>, {ageYears}
      </h1>
      <p className="side-note">{[`born ${formatDate(details.birthDate)}`, plural(visits, 'visit')].join(' · ')}</p>
      <p className="visit-links">
        {openVisitId && <Link to={`/visits/${openVisitId}`}>Visit</Link>}
        {dayVisitId && <Link to={`/visits/${dayVisitId}/day`}>Acid day</Link>}
        <Link to={`/over-time/${id}`}>Over time</Link>
      </p>
      {asked && (
        <p role="status">
          The chart of <bdi>{asked.name}</bdi> is read as a part of this one.
        </p>
      )}
    </header>
  );
}

function Details({ person: { details } }: { readonly person: PersonPage }) {
  const { chartNumber, language, largePrint, interpreter, guardians = [], homes = [], permissions = {} } = details;
  return (
    <>
      <section aria-label="Person">
        <h2>Person</h2>
        <dl className="facts">
          <Fact name="Chart number" value={chartNumber ?? NOT_ASKED} />
          <Fact name="Language of the leaflet" value={sayLanguage(language)} />
          <Fact name="Large print of the leaflet" value={sayLargePrint(largePrint)} />
          <Fact name="Interpreter" value={sayInterpreter(interpreter)} />
        </dl>
      </section>
      <section aria-label="Guardians">
        <h2>Guardians</h2>
        {guardians.length === 0 && <p>None recorded.</p>}
        <ul className="plain-list">
          {guardians.map((guardian) => (
            <li key={guardian.name}>
              <bdi>{guardian.name}</bdi>, {guardian.relation ?? <span className="unknown">relation not asked</span>},{' '}
              {guardian.phone ?? <span className="unknown">phone not asked</span>},{' '}
              <span className={guardian.mayConsent === undefined ? 'unknown' : undefined}>{sayConsent(guardian.mayConsent)}</span>
            </li>
          ))}
        </ul>
      </section>
      <section aria-label="Homes">
        <h2>Homes</h2>
        {homes.length === 0 ? <p>One leaflet; no home is named.</p> : <p>Each home gets a leaflet of its own, in its language.</p>}
        <ul className="plain-list">
          {homes.map((home) => (
            <li key={home.name}>
              <bdi>{home.name}</bdi>, {sayLanguage(home.language)}
            </li>
          ))}
        </ul>
      </section>
      <section aria-label="Permissions">
        <h2>Permissions</h2>
        <dl className="facts">
          {PERMISSIONS.map(({ id, label }) => (
            <Fact key={id} name={label} value={sayPermission(permissions[id])} />
          ))}
        </dl>
      </section>
    </>
  );
}

function Fact({ name, value }: { readonly name: string; readonly value: string }) {
  return (
    <div>
      <dt>{name}</dt>
      <dd className={value === NOT_ASKED ? 'unknown' : undefined}>
        <span dir="ltr">{value}</span>
      </dd>
    </div>
  );
}
