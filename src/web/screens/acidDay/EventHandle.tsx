import { type KeyboardEvent, memo, type RefObject } from 'react';
import type { AcidDay, DayEvent } from '../../../core/plaque/day/types.ts';
import { ROW, xOf } from '../../charts/acidDayLayout.ts';
import { LARGE_STEP_MINUTES, lengthenEvent, removeEvent, STEP_MINUTES, stepEvent } from './editDay.ts';
import { sayWhen } from './sayEvent.ts';
import { type EventChange, useEventDrag } from './useEventDrag.ts';

const MARK_HEIGHT = 8;
const TARGET = 44;
export const EVENT_HEIGHT = 22;

interface EventHandleProps {
  /** The day now, read when something is moved: while one event is dragged the others are not drawn again. */
  readonly day: RefObject<AcidDay>;
  readonly event: DayEvent;
  readonly name: string;
  /** Its word, where that stands and in which row. */
  readonly word: string;
  readonly wordX: number;
  readonly row: number;
  readonly width: number;
  readonly y: number;
  /** Null = it stays as it is. */
  readonly onChange: ((change: EventChange) => void) | null;
}

/** One event under the strip: a mark as long as it lasts, with its word. Dragged, or moved by keys. */
export const EventHandle = memo(function EventHandle({ day, event, name, word, wordX, row, width, y, onChange }: EventHandleProps) {
  const drag = useEventDrag(event.id, { day, width, onChange });
  const x = xOf(event.startMinute, width);
  const long = Math.max(MARK_HEIGHT, xOf(event.startMinute + event.minutes, width) - x);
  const at = y + 8;
  const target = { x: x + long / 2 - Math.max(TARGET, long) / 2, width: Math.max(TARGET, long) };
  const mark = (
    <>
      <rect className="event-target" {...target} y={y} height={EVENT_HEIGHT + ROW} />
      <rect className="event-mark" x={x} y={at} width={long} height={MARK_HEIGHT} rx={MARK_HEIGHT / 2} />
      {row > 0 && <line className="event-lead" x1={x + 1} x2={x + 1} y1={at + MARK_HEIGHT} y2={y + EVENT_HEIGHT + row * ROW + 2} />}
      <text className="event-word chart-halo" x={wordX} y={y + EVENT_HEIGHT + (row + 1) * ROW - 6}>
        {word}
      </text>
    </>
  );
  if (!onChange) return <g className={classOf(event)}>{mark}</g>;
  const onKeyDown = (key: KeyboardEvent<SVGGElement>) => {
    if (key.key === 'Escape' && drag.isDragging()) return drag.giveUp(key.timeStamp);
    const changed = dayAfterKey(day.current, event.id, key);
    if (!changed) return;
    key.preventDefault();
    if (key.key === 'Delete') focusBeside(key.currentTarget);
    if (changed !== day.current) onChange({ day: changed, phase: 'done', since: key.timeStamp });
  };
  return (
    <g
      className={`${classOf(event)} movable`}
      role="slider"
      tabIndex={0}
      data-event={event.id}
      aria-label={name}
      aria-valuemin={0}
      aria-valuemax={1439}
      aria-valuenow={event.startMinute}
      aria-valuetext={sayWhen(event)}
      aria-keyshortcuts="ArrowLeft ArrowRight ArrowUp ArrowDown Delete"
      onKeyDown={onKeyDown}
      {...drag.handlers}
    >
      {mark}
    </g>
  );
});

/** What takes the focus once this one is gone. */
function focusBeside(element: SVGGElement): void {
  const others = [...document.querySelectorAll<SVGGElement>('[data-event]')];
  const at = others.indexOf(element);
  (others[at + 1] ?? others[at - 1])?.focus();
}

const classOf = ({ kind, keep }: DayEvent): string => `day-event ${kind === 'eating' ? 'eaten' : 'done'}${keep ? ' kept' : ''}`;

/** Left and right: earlier, later; with Shift by half an hour. Up and down: longer, shorter. Delete takes it out. Undefined: no key of an event. */
function dayAfterKey(day: AcidDay, id: string, { key, shiftKey, ctrlKey, altKey, metaKey }: KeyboardEvent): AcidDay | undefined {
  if (ctrlKey || altKey || metaKey) return undefined;
  const step = shiftKey ? LARGE_STEP_MINUTES : STEP_MINUTES;
  switch (key) {
    case 'ArrowLeft':
      return stepEvent(day, id, -step);
    case 'ArrowRight':
      return stepEvent(day, id, step);
    case 'ArrowUp':
      return lengthenEvent(day, id, 1);
    case 'ArrowDown':
      return lengthenEvent(day, id, -1);
    case 'Delete':
      return removeEvent(day, id);
    default:
      return undefined;
  }
}
