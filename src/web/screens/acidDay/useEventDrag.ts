import { type PointerEvent, useRef } from 'react';
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
  readonly id: string;
  readonly fromX: number;
  readonly fromMinute: number;
  readonly day: AcidDay;
  moved: AcidDay;
}

/** Moves an event with the mouse, a finger or a pen; it comes to rest on whole five minutes, where there is room. */
export function useEventDrag(day: AcidDay, width: number, onChange: ((change: EventChange) => void) | null) {
  const drag = useRef<Drag | null>(null);
  const end = (phase: 'done' | 'given-up', since: number) => {
    const ended = drag.current;
    drag.current = null;
    if (!ended || !onChange) return;
    const isMoved = ended.moved !== ended.day;
    onChange({ day: isMoved && phase === 'done' ? ended.moved : ended.day, phase: isMoved ? phase : 'given-up', since });
  };
  return {
    isDragging: () => drag.current !== null,
    giveUp: (since: number) => end('given-up', since),
    handlers: (id: string) => ({
      onPointerDown: (event: PointerEvent<SVGGElement>) => {
        const found = findEvent(day, id);
        if (!onChange || !found || event.button !== 0) return;
        event.currentTarget.setPointerCapture(event.pointerId);
        drag.current = { id, fromX: event.clientX, fromMinute: found.startMinute, day, moved: day };
      },
      onPointerMove: (event: PointerEvent<SVGGElement>) => {
        const now = drag.current;
        if (now?.id !== id) return;
        const scale = width / (event.currentTarget.ownerSVGElement?.clientWidth || width);
        const by = minuteOf((event.clientX - now.fromX) * scale, width) - minuteOf(0, width);
        const wanted = Math.round((now.fromMinute + by) / STEP_MINUTES) * STEP_MINUTES;
        const moved = moveEvent(now.day, id, wanted);
        if (isSameDay(moved, now.moved)) return;
        now.moved = moved;
        onChange?.({ day: moved, phase: 'following', since: event.timeStamp });
      },
      onPointerUp: (event: PointerEvent<SVGGElement>) => end('done', event.timeStamp),
      onPointerCancel: (event: PointerEvent<SVGGElement>) => end('given-up', event.timeStamp),
    }),
  };
}

const isSameDay = (a: AcidDay, b: AcidDay): boolean =>
  a === b || a.events.every((event, i) => event.id === b.events[i]?.id && event.startMinute === b.events[i]?.startMinute);
