import type { SessionView } from '../../../../api/apiTypes.ts';
import type { Route } from '../../../routing.ts';
import { CutoffScreen } from './CutoffScreen.tsx';
import { PlanStudyScreen } from './PlanStudyScreen.tsx';
import { RunSheetScreen } from './RunSheetScreen.tsx';
import { StudiesScreen } from './StudiesScreen.tsx';
import { StudyScreen } from './StudyScreen.tsx';

export type StudyRoute = Extract<Route, { screen: 'studies' | 'study-plan' | 'cutoff-study' | 'study' | 'study-sheet' }>;

/** The pages of swab studies; they are fetched together. */
export function StudyPages({ route, session }: { readonly route: StudyRoute; readonly session: SessionView }) {
  switch (route.screen) {
    case 'studies':
      return <StudiesScreen session={session} />;
    case 'study-plan':
      return <PlanStudyScreen />;
    case 'cutoff-study':
      return <CutoffScreen />;
    case 'study':
      return <StudyScreen key={route.studyId} studyId={route.studyId} session={session} />;
    case 'study-sheet':
      return <RunSheetScreen key={route.studyId} studyId={route.studyId} />;
  }
}
