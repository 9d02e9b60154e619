import { type PointerEvent, type RefObject, useRef } from 'react';
import type { AcidDay } from '../../../core/plaque/day/types.ts';
import { minuteOf } from '../../charts/acidDayLayout.ts';
import { findEvent, moveEvent, STEP_MINUTES } from './editDay.ts';

export interface EventChange {
  readonly day: AcidDay;
  /** While something is dragged the picture follows and nothing is saved; null of a drag given up. */
  readonly phase: 'following' | 'done' | 'given-up';
  /** Of the hand or the key, ms of this page. */
  readonly since: number;
}

interface Drag {
  readonly fromX: number;
  /** Of the picture to the screen: read once, since reading it later would lay out the page anew. */
  readonly scale: number;
  readonly fromMinute: number;
  readonly day: AcidDay;
  readonly stop: () => void;
  moved: AcidDay;
}

/** What a browser tells of a pointer's move, in whichever event. */
type Move = Pick<globalThis.PointerEvent, 'clientX' | 'timeStamp'>;

/** Told at once where the hand moved; `pointermove` waits for the next frame. Not every browser has it, and those use the other. */
const AT_ONCE = 'pointerrawupdate';

interface DragPlace {
  readonly day: RefObject<AcidDay>;
  readonly width: number;
  /** Null = nothing here can be moved. */
  readonly onChange: ((change: EventChange) => void) | null;
}

/** Moves an event with the mouse, a finger or a pen; it comes to rest on whole five minutes, where there is room. */
export function useEventDrag(id: string, { day, width, onChange }: DragPlace) {
  const drag = useRef<Drag | null>(null);
  const end = (phase: 'done' | 'given-up', since: number) => {
    const ended = drag.current;
    drag.current = null;
    ended?.stop();
    if (!ended || !onChange) return;
    const isMoved = ended.moved !== ended.day;
    onChange({ day: isMoved && phase === 'done' ? ended.moved : ended.day, phase: isMoved ? phase : 'given-up', since });
  };
  const follow = ({ clientX, timeStamp }: Move) => {
    const now = drag.current;
    if (!now) return;
    const by = minuteOf((clientX - now.fromX) * now.scale, width) - minuteOf(0, width);
    const wanted = Math.round((now.fromMinute + by) / STEP_MINUTES) * STEP_MINUTES;
    const moved = moveEvent(now.day, id, wanted);
    if (isSameDay(moved, now.moved)) return;
    now.moved = moved;
    onChange?.({ day: moved, phase: 'following', since: timeStamp });
  };
  return {
    isDragging: () => drag.current !== null,
    giveUp: (since: number) => end('given-up', since),
    handlers: {
      onPointerDown: (event: PointerEvent<SVGGElement>) => {
        const { currentTarget: mark, pointerId, clientX } = event;
        const found = findEvent(day.current, id);
        if (!onChange || !found || event.button !== 0) return;
        mark.setPointerCapture(pointerId);
        const listen = (raw: Event) => follow(raw as globalThis.PointerEvent);
        mark.addEventListener(AT_ONCE, listen);
        drag.current = {
          fromX: clientX,
          scale: width / (mark.ownerSVGElement?.clientWidth || width),
          fromMinute: found.startMinute,
          day: day.current,
          stop: () => mark.removeEventListener(AT_ONCE, listen),
          moved: day.current,
        };
      },
      onPointerMove: follow,
      onPointerUp: (event: PointerEvent<SVGGElement>) => end('done', event.timeStamp),
      onPointerCancel: (event: PointerEvent<SVGGElement>) => end('given-up', event.timeStamp),
    },
  };
}

const isSameDay = (a: AcidDay, b: AcidDay): boolean =>
  a === b || a.events.every((event, i) => event.id === b.events[i]?.id && event.startMinute === b.events[i]?.startMinute);
