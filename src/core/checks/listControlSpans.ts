import type { StopOverride } from './control.ts';
import type { ControlSpan } from './controlSpan.ts';
import type { JudgedLot } from './judgeControls.ts';

/**
 * How each meter and lot stood over a stretch of time: the control before it, and each one within.
 * @param from       UTC, where the stretch begins
 * @param overrides  those that hold on the day of the stretch
 */
export function listControlSpans(lots: readonly JudgedLot[], from: string, overrides: readonly StopOverride[]): readonly ControlSpan[] {
  return lots.flatMap(({ meterId, lotId, controls }) => {
    const spans = controls.flatMap(({ control, state, says }): ControlSpan[] => {
      if (state === 'void') return [];
      const override = state === 'out' ? overrides.find(({ controlId }) => controlId === control.id) : undefined;
      const said = override && { by: override.by, at: override.at, reason: override.reason };
      return [{ meterId, lotId, controlId: control.id, from: control.takenAt, state, says, ...(said && { override: said }) }];
    });
    const before = spans.filter((span) => span.from < from).slice(-1);
    return [...before, ...spans.filter((span) => span.from >= from)];
  });
}
