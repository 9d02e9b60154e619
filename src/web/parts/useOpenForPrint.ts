import { useEffect } from 'react';

/**
 * Paper unfolds nothing: whatever is folded is open while the page prints, unless it is for the screen alone, and as it was afterwards.
 * @param within  selector of the part that is meant; on a page too long for paper only some of it is
 */
export function useOpenForPrint(within = 'main'): void {
  useEffect(() => {
    let opened: HTMLDetailsElement[] = [];
    const open = () => {
      opened = [...document.querySelectorAll<HTMLDetailsElement>(`${within} details:not([open]):not(.off-paper)`)];
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
  }, [within]);
}
