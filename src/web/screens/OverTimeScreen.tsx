import type { PersonRecord, StoredVisit } from '../../api/bundles.ts';
import { sayLastChange } from '../charts/noiseBand.ts';
import { ReadingsChart } from '../charts/ReadingsChart.tsx';
import { findProtocol, protocolName } from '../content.ts';
import { usePeople, usePerson } from '../data/queries.ts';
import { formatDate, plural } from '../format.ts';
import { LevelLine } from '../parts/LevelLine.tsx';
import { Link } from '../parts/Link.tsx';
import { LoadState } from '../parts/LoadState.tsx';
import { usePrintFoot } from '../printFoot.ts';
import { sayFinding, sayPlace } from './visit/findings.ts';

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
              <Link to={`/over-time/${person.id}`}>{person.name}</Link>, {person.ageYears}
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
  usePrintFoot({ name: person.data?.name ?? '' });
  if (!person.data) return <LoadState query={person} what="the record" />;
  const { name, ageYears, visits, readings, courses, nextOn } = person.data;
  const open = visits.find((v) => v.state === 'open');
  const closed = visits.filter((v) => v.state === 'closed');
  return (
    <>
      <header className="visit-head">
        <h1>
          {name}, {ageYears}
        </h1>
        <p className="side-note">
          {[plural(closed.length, 'closed visit'), nextOn && `${nextOn > today ? 'next visit' : 'recall due since'} ${formatDate(nextOn)}`]
            .filter(Boolean)
            .join(' · ')}
        </p>
        {open && (
          <p className="visit-links">
            <Link to={`/visits/${open.id}`}>Visit of {formatDate(open.onDate)}</Link>
          </p>
        )}
      </header>
      <section aria-label="Readings">
        <h2>Readings</h2>
        <p className="opening">{sayLastChange(readings)}</p>
        <ReadingsChart readings={readings} />
      </section>
      <Levels visits={closed} />
      <Findings visits={closed} />
      <Courses courses={courses} />
      <Leaflets visits={closed} />
    </>
  );
}

function Levels({ visits }: { readonly visits: readonly StoredVisit[] }) {
  const confirmed = visits.flatMap(({ id, onDate, confirmed: level }) => (level ? [{ id, onDate, level }] : []));
  return (
    <section aria-label="Levels">
      <h2>Levels, confirmed</h2>
      {confirmed.length === 0 && <p>None confirmed yet.</p>}
      <ul className="levels-over-time">
        {confirmed.map(({ id, onDate, level }) => (
          <li key={id}>
            <span>{formatDate(onDate)}</span>
            <LevelLine
              levels={findProtocol(level.protocol)?.levels ?? [level.level]}
              level={level.level}
              note={`confirmed ${formatDate(onDate)}`}
            />
            <span className="side-note">
              {protocolName(level.protocol)}, by {level.by}
              {level.changedFrom && `; changed from ${level.changedFrom}`}
              {level.reason && `, because ${level.reason}`}
            </span>
          </li>
        ))}
      </ul>
    </section>
  );
}

function Findings({ visits }: { readonly visits: readonly StoredVisit[] }) {
  const withFindings = visits.filter((v) => v.findings.length > 0);
  return (
    <section aria-label="Findings">
      <h2>Findings</h2>
      {withFindings.length === 0 ? (
        <p>None recorded. That is not the same as sound: it depends on what was examined.</p>
      ) : (
        <table className="over-time">
          <thead>
            <tr>
              <th scope="col">Visit</th>
              <th scope="col">New</th>
              <th scope="col">Carried</th>
            </tr>
          </thead>
          <tbody>
            {withFindings.map((visit) => (
              <tr key={visit.id}>
                <th scope="row">{formatDate(visit.onDate)}</th>
                <td>
                  {visit.findings
                    .filter((f) => f.isNew)
                    .map((f) => `${sayPlace(f)}: ${sayFinding(f)}`)
                    .join('; ') || 'none'}
                </td>
                <td>{visit.findings.filter((f) => !f.isNew).length}</td>
              </tr>
            ))}
          </tbody>
        </table>
      )}
    </section>
  );
}

type Course = PersonRecord['courses'][number];

/** One row for each item, with every time it was offered, signed, used or stopped. */
function Courses({ courses }: Pick<PersonRecord, 'courses'>) {
  const items = [...new Set(courses.map((c) => c.shelfItemId))].map((id) => courses.filter((c) => c.shelfItemId === id));
  return (
    <section aria-label="Home care">
      <h2>What was used, and what stopped</h2>
      {items.length === 0 ? (
        <p>Nothing recorded yet.</p>
      ) : (
        <table className="over-time home-care">
          <thead>
            <tr>
              <th scope="col">Item</th>
              <th scope="col">Each time, oldest first</th>
            </tr>
          </thead>
          <tbody>
            {items.map((times) => (
              <tr key={times[0]?.shelfItemId}>
                <th scope="row">{times[0]?.name}</th>
                <td>
                  <ul className="plain-list">
                    {times.map((course) => (
                      <li key={`${course.from} ${course.state}`} className={course.state === 'waiting' ? 'unknown' : undefined}>
                        {sayCourse(course)}
                      </li>
                    ))}
                  </ul>
                </td>
              </tr>
            ))}
          </tbody>
        </table>
      )}
    </section>
  );
}

/** "9 May 2026 to 1 July 2026: signed by Dr. Ahlgren, taste" */
function sayCourse({ state, signedBy, from, to, reason }: Course): string {
  const who = signedBy ? `signed by ${signedBy}` : state === 'waiting' ? 'waiting for a signature' : state.replaceAll('-', ' ');
  const when = [from && formatDate(from), to && `to ${formatDate(to)}`].filter(Boolean).join(' ');
  return `${when ? `${when}: ` : ''}${[who, reason].filter(Boolean).join(', ')}`;
}

function Leaflets({ visits }: { readonly visits: readonly StoredVisit[] }) {
  const withLeaflet = visits.filter((v) => v.leaflet);
  return (
    <section aria-label="Leaflets">
      <h2>Leaflets</h2>
      {withLeaflet.length === 0 && <p>None printed yet.</p>}
      <ul className="plain-list">
        {withLeaflet.map((visit) => (
          <li key={visit.id}>
            <Link to={`/visits/${visit.id}/leaflet`}>{formatDate(visit.onDate)}</Link>
            <span className="aside">
              {' '}
              {visit.leaflet?.keep} {visit.leaflet?.tryThis}
            </span>
          </li>
        ))}
      </ul>
    </section>
  );
}
