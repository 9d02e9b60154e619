import { useEffect } from 'react';

/** Paper unfolds nothing: whatever is folded on the page is open while it prints, unless it is for the screen alone, and as it was afterwards. */
export function useOpenForPrint(): void {
  useEffect(() => {
    let opened: HTMLDetailsElement[] = [];
    const open = () => {
      opened = [...document.querySelectorAll<HTMLDetailsElement>('main details:not([open]):not(.off-paper)')];
      for (const details of opened) details.open = true;
    };
    const close = () => {
      for (const details of opened) details.open = false;
    };
    addEventListener('beforeprint', open);
    addEventListener('afterprint', close);
    return () => {
      removeEventListener('beforeprint', open);
      removeEventListener('afterprint', close);
    };
  }, []);
}
