import type { PersonRecord, StoredVisit } from '../../../api/bundles.ts';
import { sayCovers, sayLeft } from '../../../core/regimen/signatureCover.ts';
import { isTurnedDown } from '../../../core/visit/turnedDown.ts';
import { CareChart } from '../../charts/CareChart.tsx';
import { FindingsChart } from '../../charts/FindingsChart.tsx';
import { findProtocol, protocolName } from '../../content.ts';
import { formatDate, joinWords, plural } from '../../format.ts';
import { LevelLine } from '../../parts/LevelLine.tsx';
import { Link } from '../../parts/Link.tsx';
import { sayFinding, sayPlace } from '../visit/findings.ts';

export function Levels({ visits }: { readonly visits: readonly StoredVisit[] }) {
  const confirmed = visits.flatMap(({ id, onDate, confirmed: level }) => (level ? [{ id, onDate, level }] : []));
  const last = confirmed.at(-1);
  return (
    <section aria-label="Levels">
      <h2>Levels, confirmed</h2>
      <p className="opening">
        {last
          ? `Last ${last.level.level}, ${formatDate(last.onDate)}; confirmed at ${confirmed.length} of ${plural(visits.length, 'closed visit')}.`
          : 'None confirmed yet.'}
      </p>
      <ul className="levels-over-time">
        {confirmed.map(({ id, onDate, level }) => (
          <li key={id}>
            <span>{formatDate(onDate)}</span>
            <LevelLine
              levels={findProtocol(level.protocol)?.levels ?? [level.level]}
              level={level.level}
              note={`confirmed ${formatDate(onDate)}`}
            />
            <span className="side-note">{sayDecision(level)}</span>
          </li>
        ))}
      </ul>
      {confirmed.length > 0 && (
        <details>
          <summary>Show as table</summary>
          <table>
            <thead>
              <tr>
                <th scope="col">Visit</th>
                <th scope="col">Level</th>
                <th scope="col">By which list, by whom</th>
              </tr>
            </thead>
            <tbody>
              {confirmed.map(({ id, onDate, level }) => (
                <tr key={id}>
                  <th scope="row">{formatDate(onDate)}</th>
                  <td>{level.level}</td>
                  <td>{sayDecision(level)}</td>
                </tr>
              ))}
            </tbody>
          </table>
        </details>
      )}
    </section>
  );
}

function sayDecision({ protocol, by, changedFrom, reason }: NonNullable<StoredVisit['confirmed']>): string {
  const changed = changedFrom ? `; changed from ${changedFrom}` : '';
  return `${protocolName(protocol)}, by ${by}${changed}${reason ? `, because ${reason}` : ''}`;
}

export function Findings({ visits }: { readonly visits: readonly StoredVisit[] }) {
  const told = visits.filter((v) => v.findings.length + v.voided.length > 0);
  const last = visits.at(-1);
  const list = (findings: readonly StoredVisit['findings'][number][]) => findings.map((f) => `${sayPlace(f)}: ${sayFinding(f)}`).join('; ');
  return (
    <section aria-label="Findings">
      <h2>Findings</h2>
      <p className="opening">
        {told.length === 0 || !last
          ? 'None recorded. That is not the same as sound: it depends on what was examined.'
          : `At the visit of ${formatDate(last.onDate)}: ${last.findings.filter((f) => f.isNew).length} new, ${last.findings.filter((f) => !f.isNew).length} from before.`}
      </p>
      {told.length > 0 && (
        <>
          <FindingsChart visits={visits} />
          <details>
            <summary>Show as table</summary>
            <table className="over-time">
              <thead>
                <tr>
                  <th scope="col">Visit</th>
                  <th scope="col">New</th>
                  <th scope="col">From before</th>
                  <th scope="col">Noted by mistake</th>
                </tr>
              </thead>
              <tbody>
                {told.map((visit) => (
                  <tr key={visit.id}>
                    <th scope="row">{formatDate(visit.onDate)}</th>
                    <td>{list(visit.findings.filter((f) => f.isNew)) || 'none'}</td>
                    <td>{list(visit.findings.filter((f) => !f.isNew)) || 'none'}</td>
                    <td>
                      {visit.voided.map(({ finding, reason }) => `${sayPlace(finding)}: ${sayFinding(finding)} (${reason})`).join('; ')}
                    </td>
                  </tr>
                ))}
              </tbody>
            </table>
          </details>
        </>
      )}
    </section>
  );
}

type Course = PersonRecord['courses'][number];

/** One row for each item, with every time it was offered, agreed, declined, signed, used or stopped. */
export function HomeCare({ courses, today }: Pick<PersonRecord, 'courses'> & { readonly today: string }) {
  const items = [...new Set(courses.map((c) => c.shelfItemId))].map((id) => courses.filter((c) => c.shelfItemId === id));
  return (
    <section aria-label="Home care">
      <h2>What was used, and what stopped</h2>
      <p className="opening">{sayCare(items)}</p>
      {items.length > 0 && (
        <>
          <CareChart items={items} today={today} />
          <p className="small">Bars: agreed, until it stopped or today. Hollow: only offered, not begun, or turned down.</p>
          <details>
            <summary>Show as table</summary>
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
                          <li key={`${course.from} ${course.state}`} className={course.release === 'waiting' ? 'unknown' : undefined}>
                            {sayCourse(course)}
                          </li>
                        ))}
                      </ul>
                    </td>
                  </tr>
                ))}
              </tbody>
            </table>
          </details>
        </>
      )}
    </section>
  );
}

function sayCare(items: readonly (readonly Course[])[]): string {
  const newest = items.flatMap((times) => times.at(-1) ?? []);
  const names = (list: readonly Course[]) =>
    joinWords(list.map((course) => (course.reason ? `${course.name} (${course.reason})` : course.name)));
  const inUse = newest.filter((c) => c.state === 'agreed' && c.to === null);
  const stopped = newest.filter((c) => c.state === 'agreed' && c.to !== null);
  const turnedDown = newest.filter((c) => isTurnedDown(c.state));
  const said = [
    inUse.length > 0 && `Agreed and not ended: ${joinWords(inUse.map((c) => c.name))}.`,
    stopped.length > 0 && `Ended: ${names(stopped)}.`,
    turnedDown.length > 0 && `Turned down: ${names(turnedDown)}.`,
  ].filter(Boolean);
  return said.join(' ') || (newest.length > 0 ? 'Offered, and no word of the person noted.' : 'Nothing recorded yet.');
}

/** "9 May 2026 to 1 July 2026: agreed, signed by Dr. Ahlgren, stopped, taste" */
export function sayCourse({ state, release, signedBy, covers, from, to, adherence, reason }: Course): string {
  const word = state === 'offered' ? 'offered' : state.replaceAll('-', ' ');
  const signature = signedBy
    ? `signed by ${signedBy}${covers ? ` for ${sayCovers(covers, formatDate)}, ${sayLeft(covers.left)}` : ''}`
    : release === 'waiting'
      ? 'waiting for a signature'
      : release === 'refused'
        ? 'signature refused'
        : '';
  const when = [from && formatDate(from), to && `to ${formatDate(to)}`].filter(Boolean).join(' ');
  const used = adherence ? `used: ${adherence.replaceAll('-', ' ')}` : '';
  return `${when ? `${when}: ` : ''}${[word, signature, used, reason].filter(Boolean).join(', ')}`;
}

/** Which page was handed over when, who spoke, what the person wanted, and what was corrected since. */
export function VisitsTable({ visits }: { readonly visits: readonly StoredVisit[] }) {
  return (
    <section aria-label="Visits">
      <h2>Visits, leaflets and who spoke</h2>
      {visits.length === 0 ? (
        <p>None closed yet.</p>
      ) : (
        <table className="over-time">
          <thead>
            <tr>
              <th scope="col">Visit</th>
              <th scope="col">Leaflet</th>
              <th scope="col">Spoke</th>
              <th scope="col">Wanted</th>
              <th scope="col">Corrected</th>
            </tr>
          </thead>
          <tbody>
            {visits.map((visit) => (
              <tr key={visit.id}>
                <th scope="row">
                  <Link to={`/visits/${visit.id}`}>{formatDate(visit.onDate)}</Link>
                </th>
                <td>
                  {visit.leaflet ? (
                    <>
                      <Link to={`/visits/${visit.id}/leaflet`}>leaflet</Link>
                      <span className="aside">
                        {' '}
                        {visit.leaflet.keep} {visit.leaflet.tryThis}
                      </span>
                    </>
                  ) : (
                    'none'
                  )}
                </td>
                <td className={visit.speaker ? undefined : 'unknown'}>{saySpeaker(visit)}</td>
                <td>{visit.goals.join('; ')}</td>
                <td>{visit.corrections.map(({ on, by, reason }) => `${formatDate(on)} by ${by}: ${reason}`).join('; ')}</td>
              </tr>
            ))}
          </tbody>
        </table>
      )}
    </section>
  );
}

function saySpeaker({ speaker }: StoredVisit): string {
  if (!speaker) return 'not noted';
  const { who, name, interpreter } = speaker;
  return [name ? `${who} ${name}` : who, interpreter && interpreter !== 'not-needed' && `interpreter ${interpreter.replaceAll('-', ' ')}`]
    .filter(Boolean)
    .join(', ');
}

/** A visit without a number is complete; why there is none stands here. */
export function NotTaken({ notTaken }: Pick<PersonRecord, 'notTaken'>) {
  if (notTaken.length === 0) return null;
  return (
    <details>
      <summary>Without a reading: {plural(notTaken.length, 'visit')}</summary>
      <ul className="plain-list">
        {notTaken.map(({ onDate, reason }) => (
          <li key={`${onDate} ${reason}`}>
            {formatDate(onDate)}: {reason}
          </li>
        ))}
      </ul>
    </details>
  );
}
