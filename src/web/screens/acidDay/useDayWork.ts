import { useCallback, useMemo, useState } from 'react';
import type { SessionView } from '../../../api/apiTypes.ts';
import type { VisitBundle } from '../../../api/bundles.ts';
import { foodsById } from '../../../content/foods.ts';
import { mouthPresets } from '../../../content/plaque/presets.ts';
import { type DayLimits, dayLimits } from '../../../core/plaque/day/dayLimits.ts';
import type { AcidDay } from '../../../core/plaque/day/types.ts';
import type { DescribedDays } from '../../../core/visit/describedDays.ts';
import { hideAlcohol } from '../../../core/visit/hideAlcohol.ts';
import { type MayTry, mayShowChange, mayTry } from '../../../core/visit/mayTryChange.ts';
import { mouthOfVisit } from '../../../core/visit/mouthOfVisit.ts';
import { isToldAlone } from '../../../core/visit/privacy.ts';
import type { VisitInput } from '../../../core/visit/types.ts';
import { assess, content, questions } from '../../content.ts';
import { useIsPrinting } from '../../parts/useIsPrinting.ts';
import { useShown } from '../../shown.ts';
import { fieldName } from '../visit/fieldWords.ts';
import type { DayWork } from './dayWork.ts';
import type { DayQuestion } from './drawDay.ts';
import { inOrder } from './editDay.ts';
import type { StudyQuestion } from './studyDay.ts';
import { useDayCorrection } from './useDayCorrection.ts';
import { useDayStudy } from './useDayStudy.ts';
import { useDrawnDay } from './useDrawnDay.ts';
import type { EventChange } from './useEventDrag.ts';
import { useLiveDay } from './useLiveDay.ts';
import { useSaidDays } from './useSaidDays.ts';

export function useDayWork(bundle: VisitBundle, session: SessionView, onServerChange: () => void): DayWork {
  const correction = useDayCorrection(bundle, session, onServerChange);
  const { input, put, show, takeStep } = correction.draft;
  const isClosed = bundle.state !== 'open' && correction.correction === null;
  const { isPrivateHidden, seen } = usePrivacy(input);
  const told = input.visit.acidDay;
  const [wantedAt, goToDay] = useState(0);
  const at = Math.min(wantedAt, (told?.days.length ?? 1) - 1);
  const day = told?.days[at];
  const changed = told?.changed?.of === at ? told.changed.day : undefined;
  const { live, show: showLive, follow, rest } = useLiveDay('shown');
  const [since, setSince] = useState(() => performance.now());
  const [said, setSaid] = useState('');
  const resting = changed ?? day;
  const shown = live?.day ?? resting;

  const { answers, onDate } = input.visit;
  const flow = answers.resting_flow;
  // biome-ignore lint/correctness/useExhaustiveDependencies: of the answers only that of the flow counts
  const mouth = useMemo(
    () => mouthOfVisit({ acidDay: told, answers, onDate }, mouthPresets, questions),
    [told?.mouth, told?.saliva, flow, onDate],
  );
  const limits = useLimits(isClosed ? bundle.stored : null, input);
  const may = mayTry(limits);

  const questionOf = (asked: AcidDay, isLive: boolean): DayQuestion => ({
    day: asked,
    mouth: mouth.mouth,
    measured: mouth.measured,
    isLive,
  });
  const isFollowing = live !== null;
  // biome-ignore lint/correctness/useExhaustiveDependencies: asked anew when the day or the mouth is another one
  const question = useMemo(() => (resting ? questionOf(resting, false) : null), [resting, mouth]);
  // biome-ignore lint/correctness/useExhaustiveDependencies: as above
  const toldQuestion = useMemo(() => (day && changed ? questionOf(day, false) : null), [day, changed !== undefined, mouth]);
  const studyQuestion = useMemo<StudyQuestion | null>(
    () =>
      day ? { told: day, changed: changed ?? null, mouth: mouth.mouth, measured: mouth.measured, limits: isClosed ? null : limits } : null,
    [day, changed, mouth, limits, isClosed],
  );
  const drawn = useDrawnDay('shown', { question: live ?? question, since, isSent: isFollowing, onAnswer: showLive });
  const drawnTold = useDrawnDay('told', { question: toldQuestion, since });
  const study = useDayStudy(studyQuestion, isFollowing);
  const saidDays = useSaidDays({ days: isClosed ? [] : (told?.days ?? []), mouth, study, seen, isPaused: isFollowing });

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
    if (phase === 'following') return follow(questionOf(next, true), moved);
    setSince(moved);
    rest();
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
    correction,
    record: isClosed ? bundle.dayRecord : null,
    isPrivateHidden,
    seen,
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
    saidDays,
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

function usePrivacy(input: VisitInput): Pick<DayWork, 'isPrivateHidden' | 'seen'> {
  const { isOn } = useShown();
  const isPrinting = useIsPrinting();
  const isPrivateHidden = isOn || isPrinting || isToldAlone(input.visit);
  const seen = useCallback((day: AcidDay) => (isPrivateHidden ? hideAlcohol(day, { foods: foodsById }) : day), [isPrivateHidden]);
  return { isPrivateHidden, seen };
}

/** What may be suggested to this person, by the rules of the plan; of a closed visit, as it stood then. */
function useLimits(stored: VisitBundle['stored'], input: VisitInput): DayLimits {
  const { answers } = input.visit;
  // biome-ignore lint/correctness/useExhaustiveDependencies: the described day says nothing about safety
  return useMemo(
    () => dayLimits((stored ?? assess(input)).facts, content.regimen, input.practice.settings.jurisdiction),
    [stored, answers, input.practice],
  );
}

const sayNotTried = ({ food }: MayTry): string =>
  food ? 'Not tried: gum is not suggested to this person.' : 'Not tried: no change of food is suggested to this person.';
