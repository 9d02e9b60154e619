import { useCallback, useMemo, useState } from 'react';
import type { VisitBundle } from '../../../api/bundles.ts';
import { mouthPresets } from '../../../content/plaque/presets.ts';
import { type DayLimits, dayLimits } from '../../../core/plaque/day/dayLimits.ts';
import type { AcidDay } from '../../../core/plaque/day/types.ts';
import type { DescribedDays } from '../../../core/visit/describedDays.ts';
import { type MayTry, mayShowChange, mayTry } from '../../../core/visit/mayTryChange.ts';
import { type MouthOfVisit, mouthOfVisit } from '../../../core/visit/mouthOfVisit.ts';
import { isToldAlone } from '../../../core/visit/privacy.ts';
import type { VisitInput } from '../../../core/visit/types.ts';
import { assess, content, questions } from '../../content.ts';
import { useShown } from '../../shown.ts';
import { fieldName } from '../visit/fieldWords.ts';
import { useVisitDraft } from '../visit/useVisitDraft.ts';
import type { DayQuestion } from './drawDay.ts';
import { inOrder } from './editDay.ts';
import type { StudyQuestion } from './studyDay.ts';
import { type StudyState, useDayStudy } from './useDayStudy.ts';
import { type DrawnState, useDrawnDay } from './useDrawnDay.ts';
import type { EventChange } from './useEventDrag.ts';

const DRAG_TOLERANCE_PH = 0.02;
const TOLERANCE_PH = 0.01;

/** Everything the parts of the page share. */
export interface DayWork {
  readonly bundle: VisitBundle;
  readonly input: VisitInput;
  readonly isClosed: boolean;
  /** The page is turned to the patient, or somebody else speaks after private words. */
  readonly isPrivateHidden: boolean;
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
  readonly show: ReturnType<typeof useVisitDraft>['show'];
}

export function useDayWork(bundle: VisitBundle): DayWork {
  const { input, put, show, takeStep } = useVisitDraft(bundle);
  const isClosed = bundle.state !== 'open';
  const { isOn } = useShown();
  const isPrivateHidden = isOn || isToldAlone(input.visit);
  const told = input.visit.acidDay;
  const [wantedAt, goToDay] = useState(0);
  const at = Math.min(wantedAt, (told?.days.length ?? 1) - 1);
  const day = told?.days[at];
  const changed = told?.changed?.of === at ? told.changed.day : undefined;
  const [live, setLive] = useState<AcidDay | null>(null);
  const [since, setSince] = useState(() => performance.now());
  const [said, setSaid] = useState('');
  const shown = live ?? changed ?? day;

  const { answers, onDate } = input.visit;
  const flow = answers.resting_flow;
  // biome-ignore lint/correctness/useExhaustiveDependencies: of the answers only that of the flow counts
  const mouth = useMemo(
    () => mouthOfVisit({ acidDay: told, answers, onDate }, mouthPresets, questions),
    [told?.mouth, told?.saliva, flow, onDate],
  );
  const limits = useLimits(bundle, input);
  const may = mayTry(limits);

  const questionOf = (asked: AcidDay, tolerancePh: number): DayQuestion => ({
    day: asked,
    mouth: mouth.mouth,
    measured: mouth.measured,
    tolerancePh,
  });
  const isFollowing = live !== null;
  // biome-ignore lint/correctness/useExhaustiveDependencies: asked anew when the day or the mouth is another one
  const question = useMemo(
    () => (shown ? questionOf(shown, isFollowing ? DRAG_TOLERANCE_PH : TOLERANCE_PH) : null),
    [shown, isFollowing, mouth],
  );
  // biome-ignore lint/correctness/useExhaustiveDependencies: as above
  const toldQuestion = useMemo(() => (day && changed ? questionOf(day, TOLERANCE_PH) : null), [day, changed !== undefined, mouth]);
  const studyQuestion = useMemo<StudyQuestion | null>(
    () => (day ? { told: day, changed: changed ?? null, mouth: mouth.mouth, measured: mouth.measured, limits } : null),
    [day, changed, mouth, limits],
  );
  const drawn = useDrawnDay('shown', question, since);
  const drawnTold = useDrawnDay('told', toldQuestion, since);
  const study = useDayStudy(studyQuestion, isFollowing);

  const save = useCallback((next: DescribedDays | null) => put('acidDay', next), [put]);
  const edit = (next: AcidDay) => {
    if (!told || !day) return;
    setSaid('');
    const ordered = inOrder(next);
    if (!changed) return save({ ...told, days: told.days.map((other, i) => (i === at ? ordered : other)) });
    if (mayShowChange(day, ordered, may)) save({ ...told, changed: { of: at, day: ordered } });
    else setSaid(sayNotTried(may));
  };
  const onEvent = ({ day: next, phase, since: moved }: EventChange) => {
    setSince(moved);
    setLive(phase === 'following' ? next : null);
    if (phase === 'done') edit(next);
  };
  const tryChange = (next: AcidDay) => {
    if (!told || !day) return;
    const ordered = inOrder(next);
    setSaid(mayShowChange(day, ordered, may) ? '' : sayNotTried(may));
    if (mayShowChange(day, ordered, may)) save({ ...told, changed: { of: at, day: ordered } });
  };
  const leaveChange = () => {
    if (!told?.changed) return;
    const { changed: _, ...rest } = told;
    save(rest);
  };
  const undo = () => {
    const step = takeStep();
    if (!step) return setSaid('Nothing to undo.');
    const isChanged = step.kind === 'fields' && step.changedSince !== undefined;
    setSaid(isChanged ? `Not undone: ${fieldName('acidDay').toLowerCase()} was changed elsewhere since.` : 'Undone.');
  };
  return {
    bundle,
    input,
    isClosed,
    isPrivateHidden,
    told,
    at,
    goToDay,
    day,
    changed,
    shown,
    isFollowing,
    drawn,
    drawnTold,
    study,
    mouth,
    limits,
    may,
    said,
    save,
    edit,
    onEvent,
    tryChange,
    leaveChange,
    undo,
    show,
  };
}

/** What may be suggested to this person, by the rules of the plan; of a closed visit, as it stood then. */
function useLimits({ stored }: VisitBundle, input: VisitInput): DayLimits {
  const { answers } = input.visit;
  // biome-ignore lint/correctness/useExhaustiveDependencies: the described day says nothing about safety
  return useMemo(
    () => dayLimits((stored ?? assess(input)).facts, content.regimen, input.practice.settings.jurisdiction),
    [stored, answers, input.practice],
  );
}

const sayNotTried = ({ food }: MayTry): string =>
  food ? 'Not tried: gum is not suggested to this person.' : 'Not tried: no change of food is suggested to this person.';
