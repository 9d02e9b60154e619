import { type RefObject, useLayoutEffect, useRef, useState } from 'react';
import type { SessionView } from '../../../api/apiTypes.ts';
import type { VisitBundle } from '../../../api/bundles.ts';
import { useVisitBundle } from '../../data/queries.ts';
import { useSaveQueue } from '../../data/saving.ts';
import { formatDate, plural } from '../../format.ts';
import { KeyHelp, type KeyMap } from '../../parts/KeyHelp.tsx';
import { LoadState } from '../../parts/LoadState.tsx';
import { goTo } from '../../routing.ts';
import { Conflicts } from '../visit/Conflicts.tsx';
import { listNoted } from '../visit/swabLines.ts';
import { StepPanel } from './StepPanel.tsx';
import { SwabCard } from './SwabCard.tsx';
import { findMeter, secondsLeft } from './swabFlow.ts';
import { sayCountDown } from './swabWords.ts';
import { useSwabKeys } from './useSwabKeys.ts';
import { type SwabWork, useSwabWork } from './useSwabWork.ts';

const SWAB_KEYS: KeyMap = [
  ['y n', 'yes, no'],
  ['1 to 0', 'the member, time or reason with this number'],
  ['letter', 'another pack or meter, where they are listed'],
  ['o', 'swabbed at another site'],
  ['s', 'start: the swab is activated and in the meter'],
  ['number, Enter', 'the reading; <40 and >60000 where the meter only gives a limit'],
  ['w', 'no swab today, then the number of the reason'],
  ['f', 'swab or meter failed'],
  ['z', 'undo the last key of this page'],
  ['v', 'back to the visit'],
  ['p', 'print how a swab is taken, for the wall'],
];

/** The assistant's page: one step at a time, in large words, each answered by one key. */
export function SwabScreen({ visitId, session }: { readonly visitId: string; readonly session: SessionView }) {
  const query = useVisitBundle(visitId, 'swab');
  if (!query.data) return <LoadState query={query} what="the visit" />;
  return <Swab key={`${visitId} ${query.data.state}`} bundle={query.data} session={session} />;
}

function Swab({ bundle, session }: { readonly bundle: VisitBundle; readonly session: SessionView }) {
  const work = useSwabWork(bundle, session);
  const { input, flow, setting, moment, step } = work;
  const [isHelpOpen, setHelpOpen] = useState(false);
  const { isLeaving, leave } = useLeave(`/visits/${bundle.visitId}`);
  const page = useRef<HTMLDivElement>(null);
  useSwabKeys({ work, openHelp: () => setHelpOpen(true), leave, printCard: () => print() });
  useFocusAtStep(page, step);
  const meter = findMeter(setting, flow.meterId);
  const countdownS = meter?.countdownS ?? 0;

  return (
    <div className="swab-page" ref={page}>
      <div className="swab-work">
        <SwabHead work={work} onHelp={() => setHelpOpen(true)} onLeave={leave} />
        <p className="side-note" role="status">
          {isLeaving && 'Goes to the visit as soon as this is saved.'}
        </p>
        <Conflicts visitId={bundle.visitId} input={input} show={work.show} isPrivateHidden />
        <StepPanel work={work} meter={meter} onLeave={leave} />
        <p className="sr-only" role="status" data-count-down>
          {sayCountDown(step, secondsLeft(countdownS, moment), countdownS)}
        </p>
        <SoFar work={work} />
      </div>
      <SwabCard practiceName={input.practice.name} meter={meter} conditions={setting.conditions} />
      {isHelpOpen && <KeyHelp keys={SWAB_KEYS} back="Back to the swab" onClose={() => setHelpOpen(false)} />}
    </div>
  );
}

interface HeadProps {
  readonly work: SwabWork;
  readonly onHelp: () => void;
  readonly onLeave: () => void;
}

function SwabHead({ work, onHelp, onLeave }: HeadProps) {
  const { input, assessment, isClosed } = work;
  const age = assessment.ageYears < 2 ? plural(assessment.ageMonths, 'month') : String(assessment.ageYears);
  return (
    <header className="visit-head">
      <h1>
        {input.person.name}, {age}
      </h1>
      <p className="side-note">{[`Swab, visit of ${formatDate(input.visit.onDate)}`, isClosed && 'closed'].filter(Boolean).join(' · ')}</p>
      <p className="visit-links">
        <button type="button" className="link" aria-keyshortcuts="v" onClick={onLeave}>
          Back to the visit
        </button>
        <button type="button" className="link" aria-keyshortcuts="p" onClick={() => print()}>
          Print for the wall
        </button>
        <button type="button" className="link" aria-keyshortcuts="?" onClick={onHelp}>
          Keys
        </button>
      </p>
    </header>
  );
}

/** What has been noted, in one line. */
function SoFar({ work: { flow, setting } }: { readonly work: SwabWork }) {
  const noted = listNoted(flow.reading, setting.lots);
  if (noted.length === 0) return null;
  return <p className="side-note swab-so-far">Noted: {noted.join(', ')}.</p>;
}

/** Leaves for the visit once everything is saved, so that the visit opens with it. */
function useLeave(path: string) {
  const queue = useSaveQueue();
  const [isLeaving, setLeaving] = useState(false);
  const leave = () => {
    setLeaving(true);
    void queue.settled().then(() => goTo(path));
  };
  return { isLeaving, leave };
}

/** Each new step takes the focus: its box where something is typed, else its words. */
function useFocusAtStep(page: RefObject<HTMLDivElement | null>, step: string): void {
  // biome-ignore lint/correctness/useExhaustiveDependencies: moves when the step changes, at no other time
  useLayoutEffect(() => {
    const target = page.current?.querySelector<HTMLElement>('[data-entry]') ?? page.current?.querySelector<HTMLElement>('[data-step]');
    target?.focus();
  }, [step]);
}
