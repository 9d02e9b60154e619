import type { VisitBundle } from '../../../api/bundles.ts';
import type { DayLimits } from '../../../core/plaque/day/dayLimits.ts';
import type { AcidDay } from '../../../core/plaque/day/types.ts';
import type { DaysRecord } from '../../../core/visit/dayRecord.ts';
import type { DescribedDays } from '../../../core/visit/describedDays.ts';
import type { MayTry } from '../../../core/visit/mayTryChange.ts';
import type { MouthOfVisit } from '../../../core/visit/mouthOfVisit.ts';
import type { VisitInput } from '../../../core/visit/types.ts';
import type { VisitDraft } from '../visit/useVisitDraft.ts';
import type { DayCorrection } from './useDayCorrection.ts';
import type { StudyState } from './useDayStudy.ts';
import type { DrawnState } from './useDrawnDay.ts';
import type { EventChange } from './useEventDrag.ts';

/** Everything the parts of the page share. */
export interface DayWork {
  readonly bundle: VisitBundle;
  readonly input: VisitInput;
  /** Nothing here can be changed: the visit is closed and not being corrected. */
  readonly isClosed: boolean;
  readonly correction: DayCorrection;
  /** What was said of the days when the visit closed; null while the day can be changed. */
  readonly record: DaysRecord | null;
  /** The page is turned to the patient or goes on paper, or somebody else speaks after private words. */
  readonly isPrivateHidden: boolean;
  /** A day as it may be read now; the model is asked about the day itself. */
  readonly seen: (day: AcidDay) => AcidDay;
  /** Undefined: nothing was told yet. */
  readonly told: DescribedDays | undefined;
  /** Which of the days is on the page, from 0. */
  readonly at: number;
  readonly goToDay: (at: number) => void;
  /** As it was told. */
  readonly day: AcidDay | undefined;
  /** With the change that is tried on it; absent = none is. */
  readonly changed: AcidDay | undefined;
  /** The day whose events stand in the picture, as the hand has it now. */
  readonly shown: AcidDay | undefined;
  readonly isFollowing: boolean;
  readonly drawn: DrawnState;
  readonly drawnTold: DrawnState;
  readonly study: StudyState;
  /** Over all days told, while they can be changed; null of a single one and until each is worked out. */
  readonly saidDays: string | null;
  readonly mouth: MouthOfVisit;
  readonly limits: DayLimits;
  readonly may: MayTry;
  /** What was not done, or what the last step back did. */
  readonly said: string;
  /** The whole field; null takes it out. */
  readonly save: (next: DescribedDays | null) => void;
  /** The day that is worked on: the changed one where a change is tried, else the one that was told. */
  readonly edit: (day: AcidDay) => void;
  readonly onEvent: (change: EventChange) => void;
  /** Begins to try a change; with nothing given, from the day as told. */
  readonly tryChange: (changed: AcidDay) => void;
  readonly leaveChange: () => void;
  readonly undo: () => void;
  readonly show: VisitDraft['show'];
}
