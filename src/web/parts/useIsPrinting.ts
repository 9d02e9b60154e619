import { useSyncExternalStore } from 'react';
import { flushSync } from 'react-dom';

let isPrinting = false;

/** Whether the page is on its way to paper. What may be read there by anybody is decided before it is laid out. */
export const useIsPrinting = (): boolean => useSyncExternalStore(subscribe, () => isPrinting);

function subscribe(listener: () => void): () => void {
  const turn = (isOn: boolean) => () => {
    isPrinting = isOn;
    flushSync(listener);
  };
  const [before, after] = [turn(true), turn(false)];
  addEventListener('beforeprint', before);
  addEventListener('afterprint', after);
  return () => {
    removeEventListener('beforeprint', before);
    removeEventListener('afterprint', after);
  };
}
