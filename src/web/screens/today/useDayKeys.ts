import { type RefObject, useEffect } from 'react';
import type { DayView } from '../../../api/day.ts';
import { useSingleKeys } from '../../preferences.ts';
import { goTo } from '../../routing.ts';
import { focusRow } from './DayList.tsx';
import { dayAfter, dayPath } from './sayDay.ts';

/** Keys of the whole page, while nothing is being typed; the keys of a line stand with the list. */
export function useDayKeys({ onDate, today }: Pick<DayView, 'onDate' | 'today'>, list: RefObject<HTMLOListElement | null>): void {
  const singleKeys = useSingleKeys();
  useEffect(() => {
    const onKeyDown = (event: KeyboardEvent) => {
      if (event.ctrlKey || event.metaKey || event.altKey || event.isComposing || event.defaultPrevented) return;
      const field = event.target instanceof HTMLInputElement ? event.target : null;
      if (field && event.key === 'Escape') focusRow(list.current, 0);
      else if (event.key === 'ArrowLeft' && isFree(field)) goTo(dayPath(dayAfter(onDate, -1), today));
      else if (event.key === 'ArrowRight' && isFree(field)) goTo(dayPath(dayAfter(onDate, 1), today));
      else if (field || !singleKeys) return;
      else if (event.key === 'a') document.getElementById('day-entry')?.focus();
      else if (event.key === 't') goTo('/');
      else if (event.key === 'p') goTo('/people');
      else if (event.key === 'f') goTo(`/day/${onDate}/fill`);
      else if (event.key === 'w') goTo(`/day/${onDate}/sheets`);
      else return;
      event.preventDefault();
    };
    addEventListener('keydown', onKeyDown);
    return () => removeEventListener('keydown', onKeyDown);
  }, [onDate, today, singleKeys, list]);
}

/** In an empty field the arrows have no letters to walk over. */
const isFree = (field: HTMLInputElement | null): boolean => field === null || (field.id === 'day-entry' && field.value === '');
