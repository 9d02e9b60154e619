import { ReadingsChart } from '../charts/ReadingsChart.tsx';
import { sayLastChange } from '../charts/sayLastChange.ts';
import { usePeople, usePerson } from '../data/queries.ts';
import { formatDate, plural } from '../format.ts';
import { Link } from '../parts/Link.tsx';
import { LoadState } from '../parts/LoadState.tsx';
import { PageOf, ShowPatientButton } from '../parts/Shown.tsx';
import { useOpenForPrint } from '../parts/useOpenForPrint.ts';
import { usePrintFoot } from '../printFoot.ts';
import { useShown } from '../shown.ts';
import { Findings, HomeCare, Levels, NotTaken, VisitsTable } from './overtime/OverTimeParts.tsx';
import { Recomputed } from './overtime/Recomputed.tsx';
import { Together } from './overtime/Together.tsx';
import { withoutOwnWords } from './overtime/withoutOwnWords.ts';

export function OverTimeScreen({ patientId, today }: { readonly patientId: string | null; readonly today: string }) {
  return patientId === null ? <ChoosePerson /> : <OnePerson patientId={patientId} today={today} />;
}

function ChoosePerson() {
  const people = usePeople();
  return (
    <>
      <h1>Over time</h1>
      <p className="opening">Whose?</p>
      {people.data ? (
        <ul className="plain-list columns-list">
          {people.data.map((person) => (
            <li key={person.id}>
              <Link to={`/over-time/${person.id}`}>
                <bdi>{person.name}</bdi>
              </Link>
              , {person.ageYears}
            </li>
          ))}
        </ul>
      ) : (
        <LoadState query={people} what="the people" />
      )}
    </>
  );
}

function OnePerson({ patientId, today }: { readonly patientId: string; readonly today: string }) {
  const person = usePerson(patientId);
  const { isOn } = useShown();
  useOpenForPrint();
  usePrintFoot({ name: person.data?.name ?? '' });
  if (!person.data) return <LoadState query={person} what="the record" />;
  const record = isOn ? withoutOwnWords(person.data) : person.data;
  const { id, name, ageYears, visits, readings, notTaken, firstReadings, courses, nextOn } = record;
  // A picture for each meter: one scale is never laid over another.
  const meters = [...new Set(readings.map((r) => r.meterId))];
  const open = visits.find((v) => v.state === 'open');
  // Of an open visit the day is still told: it is the newest whether it has one or not.
  const withDay = open ?? visits.findLast((v) => v.hasDay);
  const closed = visits.filter((v) => v.state === 'closed');
  const [told, ...because] = sayLastChange(readings, firstReadings);
  return (
    <PageOf patientId={id}>
      <header className="visit-head">
        <h1>
          <bdi>{name}</bdi>, {ageYears}
        </h1>
        <p className="side-note">
          {[plural(closed.length, 'closed visit'), nextOn && `${nextOn > today ? 'next visit' : 'recall due since'} ${formatDate(nextOn)}`]
            .filter(Boolean)
            .join(' · ')}
        </p>
        <p className="visit-links">
          {open && <Link to={`/visits/${open.id}`}>Visit of {formatDate(open.onDate)}</Link>}
          {withDay && <Link to={`/visits/${withDay.id}/day`}>Acid day of {formatDate(withDay.onDate)}</Link>}
          {!isOn && <Link to={`/people/${id}`}>Person</Link>}
          <ShowPatientButton patientId={id} />
        </p>
      </header>
      <section aria-label="Readings">
        <h2>Readings</h2>
        <p className="opening">{told}</p>
        {because.length > 0 && <p className="small">{because.join(' ')}</p>}
        {meters.map((meterId) => {
          const ofMeter = readings.filter((r) => r.meterId === meterId);
          return (
            <div key={meterId}>
              <ReadingsChart readings={ofMeter} />
              {!isOn && <Together readings={ofMeter} />}
            </div>
          );
        })}
        {!isOn && <Recomputed readings={readings} />}
        <NotTaken notTaken={notTaken} />
      </section>
      <Levels visits={closed} />
      <Findings visits={closed} />
      <HomeCare courses={courses} today={today} />
      <VisitsTable visits={closed} />
    </PageOf>
  );
}
