import { type ReactNode, useEffect, useState } from 'react';
import packageJson from '../../package.json' with { type: 'json' };
import type { SessionView } from '../api/apiTypes.ts';
import { sayClockIsRight, useClockBehind } from './data/clock.ts';
import { useHiding } from './data/hiding.ts';
import { useSignOut } from './data/queries.ts';
import { useSaveState, useUnsavedCorrections } from './data/saving.ts';
import { formatClock, formatDate, formatShortClock, plural } from './format.ts';
import { PageKeys } from './PageKeys.tsx';
import { Link } from './parts/Link.tsx';
import { ShownStrip } from './parts/Shown.tsx';
import { type Preferences, setPreference, usePreferences } from './preferences.ts';
import { usePrintFoot } from './printFoot.ts';
import type { Route } from './routing.ts';
import { useShown } from './shown.ts';

interface ShellProps {
  readonly route: Route;
  readonly session: SessionView;
  readonly children: ReactNode;
}

/** The strip, the navigation, who is signed in and what is saved; and at the end how the page looks. */
export function Shell({ route, session, children }: ShellProps) {
  const shown = useShown();
  const visitId = useLastVisit(route);
  usePrintFoot({ page: `${session.practice.name} · ${formatDate(session.today)} · Ebbline ${packageJson.version}` });
  return (
    <>
      <a className="skip" href="#main">
        Skip to the page
      </a>
      <header className="shell-head">
        {session.practice.invented && (
          <p className="strip">{session.practice.name} is an invented practice. Every person here is invented.</p>
        )}
        <ClockStrip />
        <ShownStrip />
        <nav aria-label="Screens">
          {shown.isOn ? (
            <ShownNav visitId={visitId} patientId={shown.patientId} route={route} />
          ) : (
            <WorkNav visitId={visitId} route={route} />
          )}
          <p className="who">
            <WhoButtons /> <SavedState /> <UnsavedCorrection memberId={session.member.id} />
          </p>
        </nav>
      </header>
      <main className="page" id="main" tabIndex={-1}>
        {children}
      </main>
      {!shown.isOn && <Foot screen={route.screen} />}
    </>
  );
}

/** A visit under a wrong date would stand in the wrong place for ever, so this is said on every page. */
function ClockStrip() {
  const clock = useClockBehind();
  if (!clock) return null;
  const { now, newestAt } = clock;
  return (
    <div className="strip unknown" role="alert">
      The clock of this computer says {formatDate(now)}, {formatShortClock(now)}, but the newest entry on record is from{' '}
      {newestAt && `${formatDate(newestAt)}, ${formatShortClock(newestAt)}`}. Set the clock before you open a visit. What you enter now is
      kept, under the time this clock says.{' '}
      <button type="button" className="link" onClick={sayClockIsRight}>
        The clock is right, go on
      </button>
    </div>
  );
}
const CHECKS_SCREENS: ReadonlySet<Route['screen']> = new Set(['checks', 'studies', 'study-plan', 'cutoff-study', 'study', 'study-sheet']);
/** The fluids of a visit belong to that visit. */
const isUnderRules = (route: Route): boolean =>
  route.screen === 'rules' || route.screen === 'practice' || (route.screen === 'fluids' && route.visitId === null);
const TODAY_SCREENS: ReadonlySet<Route['screen']> = new Set(['today', 'fill-day', 'day-sheets', 'people']);

function WorkNav({ visitId, route }: { readonly visitId: string | null; readonly route: Route }) {
  return (
    <ul>
      <li className="wordmark">
        <Link to="/">Ebbline</Link>
      </li>
      <NavItem to="/" name="Today" isCurrent={TODAY_SCREENS.has(route.screen)} />
      {visitId && <NavItem to={`/visits/${visitId}`} name="Visit" isCurrent={route.screen === 'visit'} />}
      {visitId && <NavItem to={`/visits/${visitId}/swab`} name="Swab" isCurrent={route.screen === 'swab'} />}
      <NavItem to="/over-time" name="Over time" isCurrent={route.screen === 'over-time'} />
      <NavItem to="/checks" name="Swab checks" isCurrent={CHECKS_SCREENS.has(route.screen)} />
      <NavItem to="/shelf" name="Shelf" isCurrent={['shelf', 'shelf-item', 'stock', 'reorder'].includes(route.screen)} />
      <NavItem to="/rules" name="Rules" isCurrent={isUnderRules(route)} />
    </ul>
  );
}

/** Turned to the patient: only the pages of this person. */
function ShownNav({
  visitId,
  patientId,
  route,
}: {
  readonly visitId: string | null;
  readonly patientId: string | null;
  readonly route: Route;
}) {
  return (
    <ul>
      {visitId && <NavItem to={`/visits/${visitId}`} name="Visit" isCurrent={route.screen === 'visit'} />}
      {patientId && <NavItem to={`/over-time/${patientId}`} name="Over time" isCurrent={route.screen === 'over-time'} />}
    </ul>
  );
}

function NavItem({ to, name, isCurrent }: { readonly to: string; readonly name: string; readonly isCurrent: boolean }) {
  return (
    <li>
      <Link to={to} isCurrent={isCurrent}>
        {name}
      </Link>
    </li>
  );
}

/** The visit that was open last on this page, so that the way back is one press. */
function useLastVisit(route: Route): string | null {
  const [last, setLast] = useState<string | null>(null);
  const here =
    route.screen === 'visit' || route.screen === 'swab' || route.screen === 'acid-day' || route.screen === 'fluids' ? route.visitId : null;
  useEffect(() => {
    if (here) setLast(here);
  }, [here]);
  return here ?? last;
}

/** Who is here, and the two ways to change it. */
function WhoButtons() {
  const { session, askWho, hide } = useHiding();
  return (
    <>
      <button type="button" className="link" aria-keyshortcuts="Control+." title="Ctrl ." onClick={askWho}>
        {session.member.name}
        <span className="sr-only"> (change of member)</span>
      </button>{' '}
      ·{' '}
      <button type="button" className="link" title="Ctrl . twice" onClick={hide}>
        hide the screen
      </button>
    </>
  );
}

/** Never says saved before the server has said so. */
function SavedState() {
  const { unsaved, held, trying, because, signedOut, lastSavedAt, conflicts, refused } = useSaveState();
  const said = (() => {
    if (held.length > 0 && unsaved === held.length)
      return { isBad: true, text: `not saved yet: ${plural(held.length, 'field')} typed by another member, who has to be here` };
    if (signedOut) return { isBad: true, text: 'not saved yet: signed out' };
    if (trying) return { isBad: true, text: because === null ? 'not saved yet, trying' : `not saved yet, trying: ${because}` };
    if (unsaved > 0) return { isBad: false, text: 'sending' };
    if (conflicts.length + refused.length > 0) return { isBad: true, text: 'not saved yet: needs a look' };
    return { isBad: false, text: lastSavedAt ? `saved ${formatClock(lastSavedAt)}` : '' };
  })();
  const [wasBad, setWasBad] = useState(false);
  if (said.isBad && !wasBad) setWasBad(true);
  return (
    <>
      <span className={said.isBad ? 'unknown' : undefined} data-saved>
        {said.text}
        {signedOut && (
          <>
            {' '}
            <a href="/" target="_blank" rel="noreferrer">
              sign in in a new tab
            </a>
          </>
        )}
      </span>
      {/* By ear only what is not saved, and that it is again: every answer is followed by a "saved" that would talk over the next. */}
      <span role="status" className="sr-only">
        {said.isBad ? said.text : wasBad && unsaved === 0 ? 'everything is saved again' : ''}
      </span>
    </>
  );
}

/** A correction is saved as a whole, so until then it is said on every page, with the way back to it. */
function UnsavedCorrection({ memberId }: { readonly memberId: string }) {
  const [place] = useUnsavedCorrections(memberId);
  const { isOn } = useShown();
  if (!place || isOn) return null;
  return (
    <span className="unknown">
      not saved yet: <Link to={`/visits/${place.visitId}`}>a correction</Link>
    </span>
  );
}

const THEMES: readonly { readonly id: Preferences['theme']; readonly name: string }[] = [
  { id: 'system', name: 'as the computer' },
  { id: 'light', name: 'light' },
  { id: 'dark', name: 'dark' },
];

function Foot({ screen }: { readonly screen: Route['screen'] }) {
  const { theme } = usePreferences();
  const signOut = useSignOut();
  return (
    <footer className="foot">
      <p>Not a diagnosis and not a device. It shows its basis; the professional decides.</p>
      <div className="foot-links">
        <fieldset>
          <legend className="sr-only">Look of the page</legend>
          {THEMES.map(({ id, name }) => (
            <button key={id} type="button" className="link" aria-pressed={theme === id} onClick={() => setPreference({ theme: id })}>
              {name}
            </button>
          ))}
        </fieldset>
        <PageKeys screen={screen} />
        <button type="button" className="link" onClick={() => signOut.mutate()}>
          Sign out
        </button>
      </div>
    </footer>
  );
}
