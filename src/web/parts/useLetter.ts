import { useEffect } from 'react';
import { useSingleKeys } from '../preferences.ts';

/** One letter does something wherever nobody types, where single letters are keys. `act` undefined = nothing to do just now. */
export function useLetter(letter: string, act: (() => void) | undefined): boolean {
  const isSingle = useSingleKeys();
  useEffect(() => {
    if (!isSingle || !act) return;
    const onKey = (event: KeyboardEvent) => {
      const isTyping = event.target instanceof Element && event.target.closest('input:not([type="checkbox"]), select, textarea, dialog');
      if (isTyping || event.key !== letter || event.ctrlKey || event.metaKey || event.altKey) return;
      event.preventDefault();
      act();
    };
    addEventListener('keydown', onKey);
    return () => removeEventListener('keydown', onKey);
  }, [isSingle, letter, act]);
  return isSingle;
}
