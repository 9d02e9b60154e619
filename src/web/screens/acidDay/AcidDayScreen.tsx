import { memo, useCallback, useEffect, useMemo, useRef, useState } from 'react';
import type { SessionView } from '../../../api/apiTypes.ts';
import type { VisitBundle } from '../../../api/bundles.ts';
import { useVisitBundle } from '../../data/queries.ts';
import { formatDate } from '../../format.ts';
import { KeyHelp } from '../../parts/KeyHelp.tsx';
import { Link } from '../../parts/Link.tsx';
import { LoadState } from '../../parts/LoadState.tsx';
import { PageOf, ShowPatientButton } from '../../parts/Shown.tsx';
import { useOpenForPrint } from '../../parts/useOpenForPrint.ts';
import { usePrintFoot } from '../../printFoot.ts';
import { useShown } from '../../shown.ts';
import { Conflicts } from '../visit/Conflicts.tsx';
import { CorrectButton, CorrectionBar, Corrections } from '../visit/CorrectionParts.tsx';
import { BeginDay } from './BeginDay.tsx';
import { ChangeList } from './ChangeList.tsx';
import { ChooseMouth } from './ChooseMouth.tsx';
import { DayHead } from './DayHead.tsx';
import { DayPicture } from './DayPicture.tsx';
import { DayTable } from './DayTable.tsx';
import { dayClient } from './dayClient.ts';
import type { DayWork } from './dayWork.ts';
import { HowComputed } from './HowComputed.tsx';
import { OnLeaflet } from './OnLeaflet.tsx';
import { TellDay } from './TellDay.tsx';
import { ACID_DAY_KEYS, useAcidDayKeys } from './useAcidDayKeys.ts';
import { useDayWork } from './useDayWork.ts';

export function AcidDayScreen({ visitId, session }: { readonly visitId: string; readonly session: SessionView }) {
  const query = useVisitBundle(visitId, 'acid-day');
  // Leaving a correction begins the page anew from the record.
  const [attempt, setAttempt] = useState(0);
  // The worker is there before anything can be dragged.
  useEffect(() => void dayClient(), []);
  if (!query.data) return <LoadState query={query} what="the acid day" />;
  const { patientId, state, visitVersion } = query.data;
  return (
    <PageOf patientId={patientId}>
      <AcidDay
        key={`${visitId} ${state} ${visitVersion} ${attempt}`}
        bundle={query.data}
        session={session}
        onServerChange={() => void query.refetch()}
        onLeaveCorrection={() => setAttempt(attempt + 1)}
      />
    </PageOf>
  );
}

interface AcidDayProps {
  readonly bundle: VisitBundle;
  readonly session: SessionView;
  readonly onServerChange: () => void;
  readonly onLeaveCorrection: () => void;
}

function AcidDay({ bundle, session, onServerChange, onLeaveCorrection }: AcidDayProps) {
  const work = useDayWork(bundle, session, onServerChange);
  const [isHelpOpen, setHelpOpen] = useState(false);
  useAcidDayKeys(work, () => setHelpOpen(true));
  useOpenForPrint();
  const { person } = work.input;
  usePrintFoot({ name: person.name });
  const openHelp = useCallback(() => setHelpOpen(true), []);
  const settled = useSettled(work);
  return (
    <div className="acid-day">
      <Above work={settled} onHelp={openHelp} onLeaveCorrection={onLeaveCorrection} />
      {work.told ? (
        <>
          <DayHead work={settled} isFollowing={work.isFollowing} />
          <LivePicture work={work} />
          <Rest work={settled} />
        </>
      ) : (
        <BeginDay work={work} />
      )}
      {isHelpOpen && <KeyHelp keys={ACID_DAY_KEYS} back="Back to the day" onClose={() => setHelpOpen(false)} />}
    </div>
  );
}

interface AboveProps {
  readonly work: DayWork;
  readonly onHelp: () => void;
  readonly onLeaveCorrection: () => void;
}

const Above = memo(function Above({ work, onHelp, onLeaveCorrection }: AboveProps) {
  const { bundle, input, correction, said, show, isPrivateHidden } = work;
  return (
    <>
      <DayTitle work={work} onHelp={onHelp} />
      <p className="said" role="status">
        {said}
      </p>
      {!isPrivateHidden && <CorrectionBar work={correction} isAsked={correction.isReasonAsked} onLeave={onLeaveCorrection} />}
      <Corrections work={work} of="acidDay" />
      <Conflicts visitId={bundle.visitId} input={input} show={show} isPrivateHidden={isPrivateHidden} />
    </>
  );
});

function DayTitle({ work, onHelp }: { readonly work: DayWork; readonly onHelp: () => void }) {
  const { bundle, input, isClosed, isPrivateHidden, correction, told, undo } = work;
  const { visitId, patientId } = bundle;
  const { isOn } = useShown();
  return (
    <header className="visit-head">
      <h1>
        <bdi>{input.person.name}</bdi>, acid day
      </h1>
      <p className="side-note">
        {told ? `from the day told on ${formatDate(input.visit.onDate)}` : `visit of ${formatDate(input.visit.onDate)}`}
        {bundle.state !== 'open' && ', closed'}
      </p>
      <p className="visit-links">
        <Link to={`/visits/${visitId}`} keys="v">
          Visit
        </Link>
        <Link to={`/over-time/${patientId}`}>Over time</Link>
        {!isOn && <Link to={`/visits/${visitId}/fluids`}>Fluids</Link>}
        {!isClosed && (
          <button type="button" className="link" aria-keyshortcuts="Backspace Control+Z" onClick={undo}>
            Undo
          </button>
        )}
        {bundle.state === 'closed' && !correction.correction && !isPrivateHidden && <CorrectButton onPress={correction.askReason} />}
        <button type="button" className="link" aria-keyshortcuts="?" onClick={onHelp}>
          Keys
        </button>
        <ShowPatientButton patientId={patientId} />
      </p>
    </header>
  );
}

function LivePicture({ work }: { readonly work: DayWork }) {
  const { shown, day, changed, drawn, drawnTold, study, isClosed, isFollowing, may, onEvent } = work;
  const { picture } = drawn;
  const isOfThisDay = study.of?.told === day && study.of?.changed === (changed ?? null) && !isFollowing;
  const dayBand = isOfThisDay ? (changed ? study.study.bandChanged : study.study.bandTold) : undefined;
  const band = useMemo(() => (dayBand ? { low: dayBand.lowPh, high: dayBand.highPh } : null), [dayBand]);
  if (!shown || !picture) return null;
  return (
    <DayPicture
      day={shown}
      seen={work.seen(shown)}
      drawn={picture.drawn}
      band={band}
      told={changed && day && drawnTold.picture ? { day, drawn: drawnTold.picture.drawn } : null}
      onChange={isClosed ? null : onEvent}
      isFixed={(event) => changed !== undefined && event.kind === 'eating' && (!may.food || event.keep === true)}
      since={picture.since}
    />
  );
}

/** While something is dragged only the picture follows; everything else waits for the hand to let go. */
function useSettled(work: DayWork): DayWork {
  const settled = useRef(work);
  if (!work.isFollowing) settled.current = work;
  return settled.current;
}

const Rest = memo(function Rest({ work }: { readonly work: DayWork }) {
  return (
    <>
      <DayTable work={work} />
      <HowComputed work={work} />
      <div className="day-columns">
        <div>
          <TellDay work={work} />
        </div>
        <div>
          <ChangeList work={work} />
          <OnLeaflet work={work} />
          <ChooseMouth work={work} />
        </div>
      </div>
    </>
  );
});
