import { memo, useEffect, useRef, useState } from 'react';
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
  return (
    <div className="acid-day">
      <DayTitle work={work} onHelp={() => setHelpOpen(true)} />
      <p className="said" role="status">
        {work.said}
      </p>
      {!work.isPrivateHidden && (
        <CorrectionBar work={work.correction} isAsked={work.correction.isReasonAsked} onLeave={onLeaveCorrection} />
      )}
      <Corrections work={work} of="acidDay" />
      <Conflicts visitId={bundle.visitId} input={work.input} show={work.show} isPrivateHidden={work.isPrivateHidden} />
      {work.told ? <Described work={work} /> : <BeginDay work={work} />}
      {isHelpOpen && <KeyHelp keys={ACID_DAY_KEYS} back="Back to the day" onClose={() => setHelpOpen(false)} />}
    </div>
  );
}

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

/** The sentence, then the picture, then the figures. */
function Described({ work }: { readonly work: DayWork }) {
  const { shown, day, changed, drawn, drawnTold, study, isClosed, isFollowing, may, onEvent } = work;
  const { picture } = drawn;
  const isOfThisDay = study.of?.told === day && study.of?.changed === (changed ?? null) && !isFollowing;
  const band = isOfThisDay ? (changed ? study.study.bandChanged : study.study.bandTold) : undefined;
  return (
    <>
      <DayHead work={work} />
      {shown && picture && (
        <DayPicture
          day={shown}
          seen={work.seen(shown)}
          drawn={picture.drawn}
          band={band ? { low: band.lowPh, high: band.highPh } : null}
          told={changed && day && drawnTold.picture ? { day, drawn: drawnTold.picture.drawn } : null}
          onChange={isClosed ? null : onEvent}
          isFixed={(event) => changed !== undefined && event.kind === 'eating' && (!may.food || event.keep === true)}
          since={picture.since}
        />
      )}
      <Rest work={useSettled(work)} />
    </>
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
