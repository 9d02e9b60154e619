import type { StopResolution } from './control.ts';
import type { JudgedControl, JudgedLot } from './judgeControls.ts';

/** One meter and lot from a control out of limits to the next one in line. */
export interface ControlStop {
  readonly meterId: string;
  readonly lotId: string;
  /** The controls out of limits, oldest first; the first of them began it. */
  readonly out: readonly [JudgedControl, ...JudgedControl[]];
  /** The last control in line before it; absent = there was none with this lot. */
  readonly lastInLine?: JudgedControl | undefined;
  /** The first control in line after it. */
  readonly endedBy?: JudgedControl | undefined;
  readonly resolution?: StopResolution | undefined;
  /**
   * `stopped`: readings do not count. `not-recorded`: a control is in line again and nobody has noted what was done. `put-away`: resolved
   * with another lot, and this one is still stopped.
   */
  readonly state: 'stopped' | 'not-recorded' | 'put-away' | 'resolved';
}

/** Every stop of these meters and lots, the oldest of each lot first. */
export function listStops(lots: readonly JudgedLot[], resolutions: readonly StopResolution[]): readonly ControlStop[] {
  const notInLine = new Set(lots.flatMap(({ controls }) => controls.filter((one) => !isInLine(one)).map(({ control }) => control.id)));
  // A record whose control was made void, or is judged otherwise since, shows nothing any more.
  const holding = resolutions.filter(({ controlId }) => !notInLine.has(controlId));
  return lots.flatMap((lot) => stopsOf(lot).map((stop) => withResolution(stop, holding)));
}

export const isInLine = ({ state }: Pick<JudgedControl, 'state'>): boolean => state === 'in-control' || state === 'warning';

type OpenStop = Omit<ControlStop, 'state' | 'resolution'>;

function stopsOf({ meterId, lotId, controls }: JudgedLot): readonly OpenStop[] {
  const stops: OpenStop[] = [];
  let lastInLine: JudgedControl | undefined;
  for (const judged of controls) {
    const open = stops.at(-1)?.endedBy === undefined ? stops.at(-1) : undefined;
    if (judged.state === 'out') {
      if (open) stops[stops.length - 1] = { ...open, out: [...open.out, judged] };
      else stops.push({ meterId, lotId, out: [judged], lastInLine });
    } else if (isInLine(judged)) {
      if (open) stops[stops.length - 1] = { ...open, endedBy: judged };
      lastInLine = judged;
    }
  }
  return stops;
}

function withResolution(stop: OpenStop, resolutions: readonly StopResolution[]): ControlStop {
  const outIds = stop.out.map(({ control }) => control.id);
  const resolution = resolutions.findLast((one) => one.outIds.some((id) => outIds.includes(id)));
  if (stop.endedBy) return { ...stop, resolution, state: resolution ? 'resolved' : 'not-recorded' };
  return { ...stop, resolution, state: resolution ? 'put-away' : 'stopped' };
}
