import type { ReadingsDecision, StopOverride } from './control.ts';

/** How one meter with one lot stood from one control to the next. */
export interface ControlSpan {
  readonly meterId: string;
  readonly lotId: string;
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

/** The span that holds at a moment; without a moment the newest one. */
export function findSpan(
  spans: readonly ControlSpan[],
  { meterId, lotId }: { readonly meterId: string; readonly lotId: string },
  atMs: number | undefined,
): ControlSpan | undefined {
  return spans
    .filter((span) => span.meterId === meterId && span.lotId === lotId && (atMs === undefined || Date.parse(span.from) <= atMs))
    .reduce<ControlSpan | undefined>((last, span) => (last && last.from > span.from ? last : span), undefined);
}
