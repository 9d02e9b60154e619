import type { ReadingsDecision, StopOverride } from './control.ts';

/** How one meter with one lot stood from one control to the next. */
export interface ControlSpan {
  readonly meterId: string;
  /** Absent = the meter's own check, which holds for every lot. */
  readonly lotId?: string | undefined;
  readonly controlId: string;
  /** UTC, when that control was taken; the span ends where the next of the same meter and lot begins. */
  readonly from: string;
  readonly state: 'in-control' | 'warning' | 'out' | 'no-target';
  /** Which rule and what it saw, in words; empty where none fired. */
  readonly says: string;
  readonly override?: Pick<StopOverride, 'by' | 'at' | 'reason'> | undefined;
  /** UTC of the stop that a control in line has ended since, where nobody has noted what was done. */
  readonly notResolvedSince?: string | undefined;
  /** The readings of this span were put under question when a later control was out of limits. */
  readonly question?: Pick<ReadingsDecision, 'by' | 'at' | 'reason'> | undefined;
}

/**
 * The span that holds at a moment; without a moment the newest one. While the meter's own check has not passed, that one holds for every
 * lot; an override of it lets no reading count that a control of the lot stops, or that is under
 * question.
 */
export function findSpan(
  spans: readonly ControlSpan[],
  { meterId, lotId }: { readonly meterId: string; readonly lotId: string },
  atMs: number | undefined,
): ControlSpan | undefined {
  const ofMeter = spans.filter((span) => span.meterId === meterId && (atMs === undefined || Date.parse(span.from) <= atMs));
  const [check, control] = [newestOf(ofMeter, undefined), newestOf(ofMeter, lotId)];
  if (check?.state !== 'out') return control;
  const isStoppedByItself = control?.question !== undefined || (control?.state === 'out' && !control.override);
  return check.override && isStoppedByItself ? control : check;
}

function newestOf(spans: readonly ControlSpan[], lotId: string | undefined): ControlSpan | undefined {
  return spans
    .filter((span) => span.lotId === lotId)
    .reduce<ControlSpan | undefined>((last, span) => (last && last.from > span.from ? last : span), undefined);
}
