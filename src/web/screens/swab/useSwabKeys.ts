import { useEffect, useRef } from 'react';
import { useSingleKeys } from '../../preferences.ts';
import type { SwabWork } from './useSwabWork.ts';

interface SwabKeys {
  readonly work: SwabWork;
  readonly openHelp: () => void;
  readonly leave: () => void;
  readonly printCard: () => void;
}

/** Letters that act in the box of the number too: no number holds them. */
const OVER_A_NUMBER = ['w', 'f', 'z', 'v', 'p', '?'];

/** Listens for the keys of the page. What is typed into a box stays there, but for those that no number holds. */
export function useSwabKeys(keys: SwabKeys): void {
  const singleKeys = useSingleKeys();
  const latest = useRef(keys);
  latest.current = keys;
  useEffect(() => {
    const onKeyDown = (event: KeyboardEvent) => {
      const { key } = event;
      if (event.ctrlKey || event.metaKey || event.altKey || event.isComposing || event.repeat || event.defaultPrevented) return;
      if (!isForThePage(event) || (!singleKeys && key.length === 1)) return;
      const { work, openHelp, leave, printCard } = latest.current;
      const own = { '?': openHelp, v: leave, p: printCard }[key];
      if (!own && key !== 'Escape' && !work.choices.some((choice) => choice.key === key)) return;
      event.preventDefault();
      if (own) own();
      else work.send({ key });
    };
    addEventListener('keydown', onKeyDown);
    return () => removeEventListener('keydown', onKeyDown);
  }, [singleKeys]);
}

function isForThePage({ target, key }: KeyboardEvent): boolean {
  if (!(target instanceof HTMLElement)) return true;
  if (target.closest('dialog') !== null) return false;
  if (!target.matches('input, textarea, select')) return true;
  return key === 'Escape' || (target.matches('input.number') && OVER_A_NUMBER.includes(key));
}
