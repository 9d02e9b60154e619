import { useQueryClient } from '@tanstack/react-query';
import { type RefObject, useLayoutEffect, useRef, useState } from 'react';
import type { SessionView } from '../../../api/apiTypes.ts';
import type { VisitBundle } from '../../../api/bundles.ts';
import { useVisitBundle } from '../../data/queries.ts';
import { formatDate, plural } from '../../format.ts';
import { KeyHelp } from '../../parts/KeyHelp.tsx';
import { Link } from '../../parts/Link.tsx';
import { LoadState } from '../../parts/LoadState.tsx';
import { PageOf, ShowPatientButton } from '../../parts/Shown.tsx';
import { useIsWide } from '../../parts/useIsWide.ts';
import { usePrintFoot } from '../../printFoot.ts';
import { Conflicts } from './Conflicts.tsx';
import { CorrectButton, CorrectionBar, Corrections } from './CorrectionParts.tsx';
import { HistoryDialog } from './HistoryDialog.tsx';
import { LookSection } from './LookSection.tsx';
import { NoteDialog } from './NoteDialog.tsx';
import { SafetySection } from './SafetySection.tsx';
import { Side } from './Side.tsx';
import { SwabSection } from './SwabSection.tsx';
import type { Scope } from './scopes.ts';
import { spokenSummaryOf } from './summaryOf.ts';
import { TalkSection } from './TalkSection.tsx';
import { useVisitKeys } from './useVisitKeys.ts';
import { useVisitWork } from './useVisitWork.ts';
import { useVisit, VisitContext } from './visitContext.ts';
import { VISIT_KEYS } from './visitKeyMap.ts';

export function VisitScreen({ visitId, session }: { readonly visitId: string; readonly session: SessionView }) {
  const query = useVisitBundle(visitId);
  const client = useQueryClient();
  // Leaving a correction begins the page anew from the record.
  const [attempt, setAttempt] = useState(0);
  if (!query.data) return <LoadState query={query} what="the visit" />;
  const onServerChange = () => {
    void client.invalidateQueries({ queryKey: ['people'] });
    void query.refetch();
  };
  return (
    <PageOf patientId={query.data.patientId}>
      <Visit
        key={`${visitId} ${query.data.state} ${query.data.visitVersion} ${attempt}`}
        bundle={query.data}
        session={session}
        onServerChange={onServerChange}
        onLeaveCorrection={() => setAttempt(attempt + 1)}
      />
    </PageOf>
  );
}

interface VisitProps {
  readonly bundle: VisitBundle;
  readonly session: SessionView;
  readonly onServerChange: () => void;
  readonly onLeaveCorrection: () => void;
}

function Visit({ bundle, session, onServerChange, onLeaveCorrection }: VisitProps) {
  const work = useVisitWork(bundle, session, onServerChange);
  const [isHelpOpen, setHelpOpen] = useState(false);
  const page = useRef<HTMLDivElement>(null);
  const isWide = useIsWide();
  useVisitKeys(work, () => setHelpOpen(true));
  useFocusAtPlace(page, work.place);
  usePrintFoot({ name: bundle.input.person.name });

  const main = (
    <div className="work" key="work">
      <SafetySection />
      <SwabSection />
      <TalkSection />
      <LookSection />
    </div>
  );
  const side = <Side key="side" isWide={isWide} />;
  return (
    <VisitContext value={work}>
      {/* biome-ignore lint/a11y/noStaticElementInteractions: only notices where the focus went */}
      <div
        className={work.isShownToPatient ? 'visit shown' : 'visit'}
        ref={page}
        onClickCapture={work.settlePlan}
        onFocus={(event) => {
          const scope = event.target.closest<HTMLElement>('[data-scope]')?.dataset.scope as Scope | undefined;
          const line = event.target.closest<HTMLElement>('[data-line]')?.dataset.line;
          if (scope && (line === undefined || event.target.closest('.answers'))) work.goTo(scope, line ?? null, false);
        }}
      >
        <p role="status" className="sr-only">
          {spokenSummaryOf(work.assessment, work.input.visit.agreed)}
        </p>
        <VisitHead onHelp={() => setHelpOpen(true)} />
        <p className="said" role="status">
          {!work.isPrivateHidden && work.said}
        </p>
        <CorrectionBar work={work} isAsked={work.panels.isReasonAsked} onLeave={onLeaveCorrection} />
        <Corrections work={work} />
        <Conflicts visitId={bundle.visitId} input={work.input} show={work.show} isPrivateHidden={work.isPrivateHidden} />
        <div className="columns">{isWide ? [main, side] : [side, main]}</div>
        {work.panels.historyOf && !work.isShownToPatient && <HistoryDialog of={work.panels.historyOf} onClose={work.panels.closeHistory} />}
        {work.panels.note !== null && !work.isShownToPatient && <NoteDialog text={work.panels.note} onClose={work.panels.closeNote} />}
        {isHelpOpen && <KeyHelp keys={VISIT_KEYS} back="Back to the visit" onClose={() => setHelpOpen(false)} />}
      </div>
    </VisitContext>
  );
}

function VisitHead({ onHelp }: { readonly onHelp: () => void }) {
  const { input, assessment, bundle, isClosed, isShownToPatient } = useVisit();
  const { person, visit } = input;
  const age = assessment.ageYears < 2 ? plural(assessment.ageMonths, 'month') : String(assessment.ageYears);
  const lastSeen = bundle.lastVisitOn ? `last seen ${formatDate(bundle.lastVisitOn)}` : person.newPatient ? 'first visit' : null;
  return (
    <header className="visit-head">
      <h1>
        <bdi>{person.name}</bdi>, {age}
      </h1>
      <p className="side-note">{[`Visit of ${formatDate(visit.onDate)}`, lastSeen, isClosed && 'closed'].filter(Boolean).join(' · ')}</p>
      <p className="visit-links">
        {!isShownToPatient && (
          <Link to={`/people/${bundle.patientId}`} keys=";">
            Person
          </Link>
        )}
        <Link to={`/over-time/${bundle.patientId}`}>Over time</Link>
        {!isShownToPatient && <VisitTools />}
        <button type="button" className="link" onClick={onHelp} aria-keyshortcuts="?">
          Keys
        </button>
        <ShowPatientButton patientId={bundle.patientId} />
      </p>
    </header>
  );
}

/** What can be done from anywhere in the visit: take back, look back, copy the note, put right. */
function VisitTools() {
  const { bundle, isClosed, correction, panels, undo, openHistory, openNote } = useVisit();
  return (
    <>
      {!isClosed && (
        <button type="button" className="link" aria-keyshortcuts="Backspace Control+Z" onClick={undo}>
          Undo
        </button>
      )}
      {!isClosed && (
        <button type="button" className="link" aria-keyshortcuts="," onClick={openHistory}>
          History
        </button>
      )}
      <button type="button" className="link" aria-keyshortcuts="." onClick={openNote}>
        Copy note
      </button>
      {bundle.state === 'closed' && !correction && <CorrectButton onPress={() => panels.askReason(true)} />}
    </>
  );
}

/** Moves the focus to where a key led: the entry of an open line, else the line, else the heading of the scope. */
function useFocusAtPlace(
  page: RefObject<HTMLDivElement | null>,
  place: { readonly scope: Scope; readonly line: string | null; readonly focus: number },
): void {
  // biome-ignore lint/correctness/useExhaustiveDependencies: moves only when a key set the place, not when the focus itself did
  useLayoutEffect(() => {
    const scope = page.current?.querySelector<HTMLElement>(`[data-scope="${place.scope}"]`);
    const line = place.line === null ? null : scope?.querySelector<HTMLElement>(`[data-line="${CSS.escape(place.line)}"]`);
    const target =
      line?.querySelector<HTMLElement>('[data-entry]') ??
      line?.querySelector<HTMLElement>('[data-row]') ??
      scope?.querySelector<HTMLElement>('[data-head]');
    target?.focus({ preventScroll: true });
    (line ?? scope?.querySelector('[data-head]'))?.scrollIntoView({ block: 'nearest' });
  }, [place.focus]);
}
