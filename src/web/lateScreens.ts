import { lateScreen } from './parts/lateScreen.tsx';

/** Everything but signing in and Today, which are the first picture. */
export const VisitScreen = lateScreen('visit', async () => (await import('./screens/visit/VisitScreen.tsx')).VisitScreen);
export const SwabScreen = lateScreen('swab', async () => (await import('./screens/swab/SwabScreen.tsx')).SwabScreen);
export const LeafletScreen = lateScreen('leaflet', async () => (await import('./screens/leaflet/LeafletScreen.tsx')).LeafletScreen);
export const AcidDayScreen = lateScreen('acid-day', async () => (await import('./screens/acidDay/AcidDayScreen.tsx')).AcidDayScreen);
export const FluidsScreen = lateScreen('fluids', async () => (await import('./screens/fluids/FluidsScreen.tsx')).FluidsScreen);
export const DiaryScreen = lateScreen('diary', async () => (await import('./screens/acidDay/DiaryScreen.tsx')).DiaryScreen);
export const PrescriptionScreen = lateScreen(
  'prescriptions',
  async () => (await import('./screens/prescription/PrescriptionScreen.tsx')).PrescriptionScreen,
);
export const PeopleScreen = lateScreen('people', async () => (await import('./screens/PeopleScreen.tsx')).PeopleScreen);
export const PersonScreen = lateScreen('person', async () => (await import('./screens/people/PersonScreen.tsx')).PersonScreen);
export const OverTimeScreen = lateScreen('over-time', async () => (await import('./screens/OverTimeScreen.tsx')).OverTimeScreen);
export const FillDayScreen = lateScreen('fill-day', async () => (await import('./screens/today/FillDayScreen.tsx')).FillDayScreen);
export const SheetsScreen = lateScreen('day-sheets', async () => (await import('./screens/today/SheetsScreen.tsx')).SheetsScreen);
export const ChecksScreen = lateScreen('checks', async () => (await import('./screens/checks/ChecksScreen.tsx')).ChecksScreen);
export const StudyPages = lateScreen('studies', async () => (await import('./screens/checks/studies/StudyPages.tsx')).StudyPages);
export const ShelfScreen = lateScreen('shelf', async () => (await import('./screens/ShelfScreen.tsx')).ShelfScreen);
export const ShelfItemScreen = lateScreen('shelf-item', async () => (await import('./screens/shelf/ShelfItemScreen.tsx')).ShelfItemScreen);
export const StockScreen = lateScreen('stock', async () => (await import('./screens/shelf/StockScreen.tsx')).StockScreen);
export const ReorderScreen = lateScreen('reorder', async () => (await import('./screens/shelf/ReorderScreen.tsx')).ReorderScreen);
export const ShelfTableScreen = lateScreen(
  'shelf-table',
  async () => (await import('./screens/shelf/ShelfTableScreen.tsx')).ShelfTableScreen,
);
export const PracticeScreen = lateScreen('practice', async () => (await import('./screens/practice/PracticeScreen.tsx')).PracticeScreen);
export const RulesScreen = lateScreen('rules', async () => (await import('./screens/RulesScreen.tsx')).RulesScreen);

/** The order in which a day is likely to need them. */
const SCREENS = [
  VisitScreen,
  SwabScreen,
  LeafletScreen,
  PeopleScreen,
  PersonScreen,
  OverTimeScreen,
  AcidDayScreen,
  DiaryScreen,
  PrescriptionScreen,
  FillDayScreen,
  SheetsScreen,
  ChecksScreen,
  StudyPages,
  ShelfScreen,
  ShelfItemScreen,
  StockScreen,
  ReorderScreen,
  ShelfTableScreen,
  PracticeScreen,
  RulesScreen,
  FluidsScreen,
];

/** Fetches the code of every screen, one after another, so that none has to wait for it later, and none needs the server for it. */
export async function warmScreens(): Promise<void> {
  for (const screen of SCREENS) await screen.warm();
}
