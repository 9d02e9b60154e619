import { useEffect, useRef } from 'react';
import type { HiddenView, SessionView } from '../api/apiTypes.ts';
import { useSession } from './data/queries.ts';
import {
  AcidDayScreen,
  ChecksScreen,
  DiaryScreen,
  FillDayScreen,
  FluidsScreen,
  LeafletScreen,
  OverTimeScreen,
  PeopleScreen,
  PersonScreen,
  PracticeScreen,
  PrescriptionScreen,
  ReorderScreen,
  RulesScreen,
  SheetsScreen,
  ShelfItemScreen,
  ShelfScreen,
  ShelfTableScreen,
  StockScreen,
  StudyPages,
  SwabScreen,
  VisitScreen,
  warmScreens,
} from './lateScreens.ts';
import { HiddenGate } from './parts/HiddenGate.tsx';
import { LoadState } from './parts/LoadState.tsx';
import { NotShown } from './parts/Shown.tsx';
import { parsePath, type Route, usePath } from './routing.ts';
import { Shell } from './Shell.tsx';
import { SignInScreen } from './screens/SignInScreen.tsx';
import { TodayScreen } from './screens/today/TodayScreen.tsx';
import { useShown } from './shown.ts';

export function App() {
  const session = useSession();
  const path = usePath();
  const route = parsePath(path);
  useTitle(route, isView(session.data) ? session.data : null);
  const mayComeBack = useMayComeBack(session.data);
  // Once it was read, an answer that fails later takes nothing away that is being typed.
  if (session.data === undefined) {
    return (
      <main className="page">
        <LoadState query={session} what="Ebbline" />
      </main>
    );
  }
  if (session.data === null && !mayComeBack) return <SignInScreen />;
  return <HiddenGate answer={session.data}>{(view) => <Page route={route} session={view} />}</HiddenGate>;
}

const isView = (answer: SessionView | HiddenView | null | undefined): answer is SessionView => answer != null && !('hidden' in answer);

/** A sign-in that runs out leaves the page as it is, for somebody who can give a password; signing out does not. */
function useMayComeBack(answer: SessionView | HiddenView | null | undefined): boolean {
  const may = useRef(false);
  if (answer === undefined) may.current = false;
  else if (isView(answer)) may.current = answer.member.hasPassword;
  return may.current;
}

/** Once the first picture stands. */
function useWarmScreens(): void {
  useEffect(() => {
    const wait = setTimeout(() => void warmScreens(), 300);
    return () => clearTimeout(wait);
  }, []);
}

function Page({ route, session }: { readonly route: Route; readonly session: SessionView }) {
  useWarmScreens();
  if (route.screen === 'leaflet') return <LeafletScreen visitId={route.visitId} />;
  if (route.screen === 'diary') return <DiaryScreen visitId={route.visitId} />;
  if (route.screen === 'prescriptions') return <PrescriptionScreen visitId={route.visitId} />;
  return (
    <Shell route={route} session={session}>
      <Screen route={route} session={session} />
    </Shell>
  );
}

/** What may be turned to the patient: pages of that one person. A new screen is not among them unless somebody says so. */
const mayBeShown = (route: Route): boolean =>
  route.screen === 'visit' ||
  route.screen === 'acid-day' ||
  route.screen === 'leaflet' ||
  (route.screen === 'over-time' && route.patientId !== null);

function Screen({ route, session }: { readonly route: Route; readonly session: SessionView }) {
  const { isOn } = useShown();
  if (isOn && !mayBeShown(route)) return <NotShown />;
  switch (route.screen) {
    case 'today':
      return <TodayScreen key={route.onDate} onDate={route.onDate} />;
    case 'fill-day':
      return <FillDayScreen key={route.onDate} onDate={route.onDate} />;
    case 'day-sheets':
      return <SheetsScreen key={route.onDate} onDate={route.onDate} />;
    case 'people':
      return <PeopleScreen />;
    case 'visit':
      return <VisitScreen visitId={route.visitId} session={session} />;
    case 'swab':
      return <SwabScreen visitId={route.visitId} session={session} />;
    case 'acid-day':
      return <AcidDayScreen visitId={route.visitId} session={session} />;
    case 'person':
      return <PersonScreen key={route.patientId} patientId={route.patientId} session={session} />;
    case 'over-time':
      return <OverTimeScreen patientId={route.patientId} today={session.today} />;
    case 'checks':
      return <ChecksScreen session={session} />;
    case 'shelf':
      return <ShelfScreen session={session} />;
    case 'shelf-item':
      return <ShelfItemScreen key={route.itemId} itemId={route.itemId} />;
    case 'stock':
      return <StockScreen key={route.itemId} itemId={route.itemId} session={session} />;
    case 'reorder':
      return <ReorderScreen session={session} />;
    case 'shelf-table':
      return <ShelfTableScreen session={session} />;
    case 'studies':
    case 'study-plan':
    case 'cutoff-study':
    case 'study':
    case 'study-sheet':
      return <StudyPages route={route} session={session} />;
    case 'practice':
      return <PracticeScreen session={session} />;
    case 'fluids':
      return <FluidsScreen key={route.visitId} visitId={route.visitId} session={session} />;
    case 'rules':
      return <RulesScreen session={session} />;
    default:
      return <h1>There is no page at this address.</h1>;
  }
}

const TITLES: Readonly<Record<Route['screen'], string>> = {
  today: 'Today',
  'fill-day': 'Fill the day',
  'day-sheets': 'Sheets for the waiting room',
  people: 'People',
  person: 'Person',
  visit: 'Visit',
  swab: 'Swab',
  leaflet: 'Leaflet',
  'acid-day': 'Acid day',
  fluids: 'Fluids',
  diary: 'Diary',
  prescriptions: 'Text for the prescription',
  'over-time': 'Over time',
  checks: 'Swab checks',
  shelf: 'Shelf',
  'shelf-item': 'Shelf',
  stock: 'Stock',
  reorder: 'What to order',
  'shelf-table': 'Read a table',
  studies: 'Studies',
  'study-plan': 'Plan a study',
  'cutoff-study': 'Readings and new lesions',
  study: 'Study',
  'study-sheet': 'Run sheet',
  practice: 'Practice',
  rules: 'Rules',
  unknown: 'Ebbline',
};

/** Names no person: titles end up in the history of the browser. */
function useTitle(route: Route, session: SessionView | null): void {
  useEffect(() => {
    document.title = session && route.screen !== 'unknown' ? `${TITLES[route.screen]} - Ebbline` : 'Ebbline';
  }, [route.screen, session]);
}
