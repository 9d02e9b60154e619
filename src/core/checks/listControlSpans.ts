import type { StopOverride, StopReadings, StopResolution } from './control.ts';
import type { ControlSpan } from './controlSpan.ts';
import type { JudgedControl, JudgedLot } from './judgeControls.ts';
import { type ControlStop, isInLine, listStops } from './listStops.ts';

/** What members have said of stops. */
export interface StopRecords {
  /** Those that hold on the day of the stretch. */
  readonly overrides: readonly StopOverride[];
  readonly resolutions: readonly StopResolution[];
  readonly questions: readonly StopReadings[];
}

/**
 * How each meter and lot stood over a stretch of time: the control before it, and each one within.
 * @param from  UTC, where the stretch begins
 */
export function listControlSpans(lots: readonly JudgedLot[], from: string, records: StopRecords): readonly ControlSpan[] {
  const stops = listStops(lots, records.resolutions);
  const inQuestion = records.questions.filter((one) => one.decisions.at(-1)?.decision === 'under-question');
  const ofLots = lots.flatMap((lot) => {
    const ofLot = stops.filter(({ meterId, lotId }) => meterId === lot.meterId && lotId === lot.lotId);
    const spans = lot.controls.flatMap((judged) => spanOf(lot, judged, { ...records, questions: inQuestion }, ofLot));
    const before = spans.filter((span) => span.from < from).slice(-1);
    return [...before, ...spans.filter((span) => span.from >= from)];
  });
  return [...inQuestion.flatMap(beforeAnyControl), ...ofLots];
}

function spanOf(
  { meterId, lotId }: JudgedLot,
  judged: JudgedControl,
  { overrides, questions }: StopRecords,
  stops: readonly ControlStop[],
): ControlSpan[] {
  const { control, state, says } = judged;
  if (state === 'void') return [];
  const override = state === 'out' ? overrides.find(({ controlId }) => controlId === control.id) : undefined;
  const last = isInLine(judged) ? stops.findLast(({ endedBy }) => endedBy !== undefined && !isAfter(endedBy, judged)) : undefined;
  const question = questions.find((one) => one.meterId === meterId && one.lotId === lotId && isWithin(control.takenAt, one));
  return [
    {
      ...{ meterId, lotId, controlId: control.id, from: control.takenAt, state, says },
      ...(override && { override: saidOf(override) }),
      ...(last?.state === 'not-recorded' && { notResolvedSince: last.out[0].control.takenAt }),
      ...(question && { question: questionOf(question) }),
    },
  ];
}

const isAfter = (a: JudgedControl, b: JudgedControl): boolean => a.control.takenAt > b.control.takenAt;
const isWithin = (at: string, { from, until }: StopReadings): boolean => (from === null || from <= at) && at < until;

/** Readings with a lot whose very first control was out of limits have no span of their own to carry the question. */
function beforeAnyControl(one: StopReadings): ControlSpan[] {
  if (one.from !== null) return [];
  const { meterId, lotId, outId } = one;
  return [{ meterId, lotId, controlId: outId, from: EARLIEST, state: 'no-target', says: '', question: questionOf(one) }];
}

const EARLIEST = '1970-01-01T00:00:00.000Z';

/** Which rule the later control broke goes along: whoever looks at an old reading wants to know. */
function questionOf({ says, decisions }: StopReadings): ControlSpan['question'] {
  const last = decisions.at(-1);
  return last && { by: last.by, at: last.at, reason: `${last.reason} (${says})` };
}

const saidOf = ({ by, at, reason }: StopOverride) => ({ by, at, reason });
