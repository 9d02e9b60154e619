import { useEffect } from 'react';

/** Paper unfolds nothing: whatever is folded on the page is open while it prints, and as it was afterwards. */
export function useOpenForPrint(): void {
  useEffect(() => {
    let opened: HTMLDetailsElement[] = [];
    const open = () => {
      opened = [...document.querySelectorAll<HTMLDetailsElement>('main details:not([open])')];
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
