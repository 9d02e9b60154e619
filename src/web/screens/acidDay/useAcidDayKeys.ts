import { useEffect, useRef } from 'react';
import type { KeyMap } from '../../parts/KeyHelp.tsx';
import { useSingleKeys } from '../../preferences.ts';
import { goTo } from '../../routing.ts';
import { listBeginnings } from './BeginDay.tsx';
import { listTryable } from './ChangeList.tsx';
import type { DayWork } from './dayWork.ts';
import { toggleLeaflet } from './OnLeaflet.tsx';

export const ACID_DAY_KEYS: KeyMap = [
  ['1 to 9, 0', 'with no day yet: begin from the day with this number; then: try the change with this number'],
  ['e', 'with no day yet: begin from the day of an earlier visit; then: to the first thing of the day'],
  ['left right', 'on a thing of the day: 5 minutes earlier, later; with Shift half an hour'],
  ['up down', 'on a thing of the day: longer, shorter'],
  ['Delete', 'on a thing of the day: take it out'],
  ['a', 'add: a time and what, then Enter'],
  ['c b', 'try a change of my own, back to the day as told; of a closed visit: c corrects it'],
  ['t h', 'the table, how it is computed'],
  ['l', 'put the strip on the leaflet, or take it off'],
  ['v', 'back to the visit'],
  ['Backspace', 'undo the last change, several steps back; also Ctrl+Z'],
  ['Ctrl Enter', 'show the patient; the same again, back to work'],
];

/** Keys of the page while nothing is being typed; those of an event stand with its mark. */
export function useAcidDayKeys(work: DayWork, openHelp: () => void): void {
  const singleKeys = useSingleKeys();
  const latest = useRef({ work, openHelp });
  latest.current = { work, openHelp };
  useEffect(() => {
    const onKeyDown = (event: KeyboardEvent) => {
      const { key, ctrlKey, metaKey, altKey, isComposing, defaultPrevented, target } = event;
      if (isComposing || defaultPrevented || altKey || isTyping(target)) return;
      const { work, openHelp } = latest.current;
      const isUndo = (ctrlKey || metaKey) && key.toLowerCase() === 'z';
      if (!isUndo && (ctrlKey || metaKey)) return;
      if (!isUndo && key.length === 1 && !singleKeys) return;
      if (key === '?') openHelp();
      else if (!actOn(isUndo ? 'Backspace' : key, work)) return;
      event.preventDefault();
    };
    addEventListener('keydown', onKeyDown);
    return () => removeEventListener('keydown', onKeyDown);
  }, [singleKeys]);
}

/** Does what the key means; false where it means nothing here. */
function actOn(key: string, work: DayWork): boolean {
  const { bundle, isClosed, told, day, changed, at } = work;
  if (key === 'v') goTo(`/visits/${bundle.visitId}`);
  else if (key === 't') toggle('day-table');
  else if (key === 'h') toggle('day-how');
  else if (isClosed) return key === 'c' && mayCorrect(work);
  else if (key === 'Backspace') work.undo();
  else if (!told || !day) {
    const beginning = listBeginnings(work).find((one) => one.key === key);
    if (!beginning) return false;
    work.save(beginning.begin);
  } else if (key === 'a') document.getElementById('day-add')?.focus();
  else if (key === 'e') document.querySelector<SVGGElement>('[data-event]')?.focus();
  else if (key === 'l') work.save(toggleLeaflet(told, at));
  else if (key === 'c' && !changed) work.tryChange(day);
  else if (key === 'b' && changed) work.leaveChange();
  else {
    const tryable = /^[1-9]$/.test(key) ? listTryable(work)[Number(key) - 1] : undefined;
    if (!tryable?.next) return false;
    work.tryChange(tryable.next);
  }
  return true;
}

function mayCorrect({ bundle, isPrivateHidden, correction }: DayWork): boolean {
  if (bundle.state !== 'closed' || isPrivateHidden) return false;
  correction.askReason();
  return true;
}

function toggle(id: string): void {
  const details = document.getElementById(id);
  if (!(details instanceof HTMLDetailsElement)) return;
  details.open = !details.open;
  if (details.open) details.querySelector('summary')?.focus();
}

function isTyping(target: EventTarget | null): boolean {
  if (!(target instanceof HTMLElement)) return false;
  if (target.closest('dialog, [role="listbox"]')) return true;
  if (target instanceof HTMLInputElement) return !['radio', 'checkbox'].includes(target.type);
  return target.matches('textarea, select');
}
