import { type RefObject, useEffect } from 'react';
import { useSingleKeys } from '../../preferences.ts';

/** Keys of the page while nothing is being typed: the field of the control, and each part by its number. */
export function useCheckKeys(page: RefObject<HTMLElement | null>): void {
  const singleKeys = useSingleKeys();
  useEffect(() => {
    if (!singleKeys) return;
    const onKeyDown = (event: KeyboardEvent) => {
      if (event.ctrlKey || event.metaKey || event.altKey || event.isComposing || event.defaultPrevented || isTyping(event.target)) return;
      if (document.querySelector('dialog[open]')) return;
      const target = event.key === 'n' ? '[data-control-number]' : `[data-head][aria-keyshortcuts="${event.key}"]`;
      const found = /^[n1-6]$/.test(event.key) ? page.current?.querySelector<HTMLElement>(target) : null;
      if (!found) return;
      event.preventDefault();
      found.focus();
      found.scrollIntoView({ block: 'start' });
    };
    addEventListener('keydown', onKeyDown);
    return () => removeEventListener('keydown', onKeyDown);
  }, [page, singleKeys]);
}

function isTyping(target: EventTarget | null): boolean {
  if (target instanceof HTMLInputElement) return !['radio', 'checkbox'].includes(target.type);
  return target instanceof HTMLTextAreaElement || target instanceof HTMLSelectElement;
}
