import { useEffect, useMemo, useRef, useState } from 'react';
import type { SessionView } from '../../../api/apiTypes.ts';
import type { VisitBundle } from '../../../api/bundles.ts';
import type { SwabReading } from '../../../core/reading/types.ts';
import type { VisitAssessment, VisitInput } from '../../../core/visit/types.ts';
import { assess, content } from '../../content.ts';
import { ApiError } from '../../data/api.ts';
import { sendUncompared } from '../../data/checkQueries.ts';
import { sayRefusal } from '../../data/useVersionedSave.ts';
import { useVisitDraft, type VisitDraft } from '../visit/useVisitDraft.ts';
import { withLot } from '../visit/withLot.ts';
import { afterEvent } from './afterEvent.ts';
import { findStep } from './findStep.ts';
import { listChoices, type SwabChoice } from './listChoices.ts';
import { findUncomparedLot } from './listOpenConditions.ts';
import { beginFlow, type SwabEvent, type SwabFlow, type SwabMoment, type SwabSetting, type SwabStep } from './swabFlow.ts';

export interface SwabWork {
  readonly input: VisitInput;
  readonly assessment: VisitAssessment;
  readonly flow: SwabFlow;
  readonly setting: SwabSetting;
  readonly moment: SwabMoment;
  readonly step: SwabStep;
  readonly choices: readonly SwabChoice[];
  readonly isClosed: boolean;
  readonly send: (event: SwabEvent) => void;
  readonly show: VisitDraft['show'];
}

/** One swab: the reading is the visit's own draft field, saved with every key; the rest is where the page stands. */
export function useSwabWork(bundle: VisitBundle, session: SessionView): SwabWork {
  const { input, put, show } = useVisitDraft(bundle);
  const { reading = {}, meterId } = input.visit;
  const [page, setPage] = useState(() => beginFlow(reading, meterId));
  const assessment = useMemo(() => bundle.stored ?? assess(input), [bundle.stored, input]);
  const mouth = assessment.mouth.swab;
  const { lots } = input.practice;
  const setting = useMemo(() => ({ ...settingOf(bundle, session, mouth), lots }), [bundle, session, mouth, lots]);
  const flow: SwabFlow = { ...page, reading, meterId };
  const readMoment = useClock(reading.activatedAt, reading.rlu === undefined && reading.failed !== true);
  const isClosed = bundle.state !== 'open';
  const moment = readMoment();
  const step = findStep(flow, setting, moment);

  const goOnUncompared = (reason: string) => {
    const lot = findUncomparedLot(reading, setting);
    const refuse = (problem: string | null) => setPage((before) => ({ ...before, problem }));
    if (!lot) return;
    if (reason.trim() === '') return refuse('A reason is needed.');
    void sendUncompared(lot.id, reason.trim()).then(
      (now) => {
        refuse(null);
        show((before) => withLot(before, now.lot));
      },
      (error) => refuse(error instanceof ApiError ? sayRefusal(error) : 'The reason is not saved yet: the server does not answer.'),
    );
  };

  const send = (event: SwabEvent) => {
    if (isClosed) return;
    if (step === 'not-compared' && 'typed' in event) return goOnUncompared(event.typed);
    const next = afterEvent(flow, event, setting, readMoment());
    if (next === flow) return;
    if (next.meterId !== undefined && next.meterId !== meterId) put('meterId', next.meterId);
    if (next.reading !== flow.reading) put('reading', next.reading);
    setPage(next);
  };

  return {
    input,
    assessment,
    flow,
    setting,
    moment,
    step,
    choices: isClosed ? [] : listChoices(step, flow, setting),
    isClosed,
    send,
    // What came from elsewhere starts a new row of keys: undo must not bring back what was given up.
    show: (change) => {
      show(change);
      setPage((before) => beginFlow(before.reading, before.meterId));
    },
  };
}

function settingOf({ input, members }: VisitBundle, session: SessionView, mouth: SwabSetting['mouth']): SwabSetting {
  const { practice, visit } = input;
  const rank = ({ id, trainedSwab }: VisitBundle['members'][number]) => (trainedSwab ? (id === session.member.id ? 0 : 1) : 2);
  return {
    meters: practice.meters,
    lots: practice.lots,
    members: [...members].sort((a, b) => rank(a) - rank(b)),
    pastReadings: visit.pastReadings,
    studySwabs: visit.studySwabs,
    conditions: content.swabConditions,
    onDate: visit.onDate,
    timeZone: practice.timeZone,
    controls: visit.controls,
    mouth,
  };
}

const TICK_MS = 200;

/**
 * The time now, and since activation. Where this page saw the activation itself, its own stopwatch goes on whatever is done to the clock;
 * after a lid was closed, when a stopwatch may stand still, the clock tells more.
 */
function useClock(activatedAt: SwabReading['activatedAt'], isRunning: boolean): () => SwabMoment {
  const [, redraw] = useState(0);
  const [openedMs] = useState(() => Date.now());
  const stopwatch = useRef<{ readonly activatedAt: string; readonly startedMs: number } | null>(null);

  useEffect(() => {
    if (activatedAt === undefined || !isRunning) return;
    if (Date.parse(activatedAt) >= openedMs && stopwatch.current?.activatedAt !== activatedAt)
      stopwatch.current = { activatedAt, startedMs: performance.now() };
    const timer = setInterval(() => redraw((n) => n + 1), TICK_MS);
    return () => clearInterval(timer);
  }, [activatedAt, isRunning, openedMs]);

  return () => ({ now: new Date().toISOString(), sinceActivationS: sinceActivation(activatedAt, stopwatch.current) });
}

function sinceActivation(
  activatedAt: SwabReading['activatedAt'],
  stopwatch: { readonly activatedAt: string; readonly startedMs: number } | null,
): number | undefined {
  if (activatedAt === undefined) return undefined;
  const byClockS = (Date.now() - Date.parse(activatedAt)) / 1000;
  if (stopwatch?.activatedAt === activatedAt) return Math.max((performance.now() - stopwatch.startedMs) / 1000, byClockS);
  return byClockS < 0 ? undefined : byClockS;
}
