import { useCallback, useLayoutEffect, useRef } from 'react';
import { nightSpans } from '../../../core/plaque/day/nightSpans.ts';
import type { AcidDay, DayEvent } from '../../../core/plaque/day/types.ts';
import { sayMinute } from '../../../core/visit/sayDescribedDays.ts';
import { AcidDayCurve, CURVE_BLOCK_HEIGHT, type PhBand } from '../../charts/AcidDayCurve.tsx';
import { AcidDayStrip, STRIP_HEIGHT } from '../../charts/AcidDayStrip.tsx';
import { placeLabels, ROW } from '../../charts/acidDayLayout.ts';
import { useWidth } from '../../parts/useWidth.ts';
import type { DrawnDay } from './drawDay.ts';
import { EVENT_HEIGHT, EventHandle } from './EventHandle.tsx';
import { nameEvent } from './sayEvent.ts';
import type { EventChange } from './useEventDrag.ts';

const WORDS = 20;
const GAP = 14;

interface DayPictureProps {
  /** The day whose events stand under the strip. */
  readonly day: AcidDay;
  /** The same with the names that may be read now. */
  readonly seen: AcidDay;
  readonly drawn: DrawnDay;
  readonly band: PhBand | null;
  /** Beside a changed day, the day as it was told. */
  readonly told: { readonly day: AcidDay; readonly drawn: DrawnDay } | null;
  /** Null = nothing here can be moved. */
  readonly onChange: ((change: EventChange) => void) | null;
  /** Whether this event stays as it is. */
  readonly isFixed: (event: DayEvent) => boolean;
  /** When the hand or the key moved that led to this picture, ms of this page. */
  readonly since: number;
}

export const REDRAW = 'acid-day redraw';
const MOST_MEASURES = 500;

/** The strip leads, what was eaten stands under it, the curve comes second. */
export function DayPicture({ day, seen, drawn, band, told, onChange, isFixed, since }: DayPictureProps) {
  const place = useRef<HTMLDivElement>(null);
  const width = useWidth(place);
  const focused = useRef<string | null>(null);
  const drawings = useRef(0);
  const latest = useRef(day);
  latest.current = day;
  const report = useRef(onChange);
  report.current = onChange;
  const onEvent = useCallback((change: EventChange) => report.current?.(change), []);
  // A mark that went past another one has another place in the page by now, and would have lost the focus.
  // biome-ignore lint/correctness/useExhaustiveDependencies: whenever the order of the events may have changed
  useLayoutEffect(() => {
    if (focused.current === null || document.activeElement !== document.body) return;
    place.current?.querySelector<SVGGElement>(`[data-event="${CSS.escape(focused.current)}"]`)?.focus({ preventScroll: true });
  }, [day]);
  // biome-ignore lint/correctness/useExhaustiveDependencies: each picture is measured once
  useLayoutEffect(() => {
    // For the bench and the tests: how long it took from the hand or the key to the new picture. Only the last ones are kept.
    drawings.current += 1;
    if (drawings.current % MOST_MEASURES === 0) performance.clearMeasures(REDRAW);
    performance.measure(REDRAW, { start: since, end: performance.now() });
  }, [since, drawn]);

  const labels = placeLabels(
    seen.events.map((event) => ({ minute: event.startMinute, text: nameEvent(event) })),
    width,
  );
  const rows = Math.max(1, ...labels.map(({ row }) => row + 1));
  const beforeHeight = told ? WORDS + STRIP_HEIGHT + GAP : 0;
  const stripAt = beforeHeight + WORDS;
  const eventsAt = stripAt + STRIP_HEIGHT;
  const curveAt = eventsAt + EVENT_HEIGHT + rows * ROW + GAP;
  const height = curveAt + CURVE_BLOCK_HEIGHT;
  return (
    // biome-ignore lint/a11y/noStaticElementInteractions: only notices where the focus went
    <div
      ref={place}
      className="day-picture"
      onFocus={({ target }) => {
        focused.current = target.closest<SVGGElement>('[data-event]')?.dataset.event ?? null;
      }}
    >
      <svg viewBox={`0 0 ${width} ${height}`}>
        <title>The day as a picture; the table gives the figures.</title>
        {told && (
          <>
            <text y={WORDS - 6}>as told</text>
            <AcidDayStrip width={width} y={WORDS} stretches={told.drawn.stretches} night={nightSpans(told.day)} />
          </>
        )}
        <text y={stripAt - 6}>{told ? 'with the change' : <Caption day={day} mayMove={onChange !== null} width={width} />}</text>
        <AcidDayStrip width={width} y={stripAt} stretches={drawn.stretches} night={nightSpans(day)} />
        {day.events.map((event, i) => (
          <EventHandle
            key={event.id}
            day={latest}
            event={event}
            name={nameEvent(seen.events[i] ?? event)}
            word={labels[i]?.text ?? ''}
            wordX={labels[i]?.x ?? 0}
            row={labels[i]?.row ?? 0}
            width={width}
            y={eventsAt}
            onChange={onChange === null || isFixed(event) ? null : onEvent}
          />
        ))}
        <AcidDayCurve width={width} y={curveAt} ph={drawn.ph} band={band} before={told?.drawn.ph ?? null} lines={drawn.lines} />
      </svg>
    </div>
  );
}

interface CaptionProps {
  readonly day: AcidDay;
  readonly mayMove: boolean;
  readonly width: number;
}

/** What the marks mean; colours and the hand only where there are any. */
function Caption({ day: { wakeMinute }, mayMove, width }: CaptionProps) {
  if (width < 700) return 'dark: on the acid side, in the model';
  return (
    <>
      asleep until {sayMinute(wakeMinute)} · darker: on the acid side in the model
      <tspan className="off-paper"> · violet: eating, drinking, care{mayMove && ', drag to move'}</tspan>
    </>
  );
}
