import { useEffect, useRef, useState } from 'react';
import type { Sizing, Wish } from './sizeStudy.ts';
import type { SizesAnswer } from './sizes.worker.ts';

/** While somebody types, no search is begun. */
const QUIET_MS = 150;

export type Sizes =
  | { readonly state: 'nothing' | 'working' }
  | { readonly state: 'done'; readonly wish: Wish; readonly sizing: Sizing }
  | { readonly state: 'problem'; readonly says: string };

/** How many of each a study needs, searched for in a worker: on a slow computer that takes seconds. */
export function useSizes(wish: Wish | null): Sizes {
  const [sizes, setSizes] = useState<Sizes>({ state: 'nothing' });
  const asked = useRef(0);
  const key = JSON.stringify(wish);
  useEffect(() => {
    const wanted = JSON.parse(key) as Wish | null;
    if (wanted === null) return setSizes({ state: 'nothing' });
    setSizes({ state: 'working' });
    const id = ++asked.current;
    let worker: Worker | undefined;
    const timer = setTimeout(() => {
      worker = new Worker(new URL('./sizes.worker.ts', import.meta.url), { type: 'module' });
      worker.onmessage = ({ data }: MessageEvent<SizesAnswer>) => {
        if (data.id !== asked.current) return;
        setSizes('sizing' in data ? { state: 'done', wish: wanted, sizing: data.sizing } : { state: 'problem', says: data.problem });
      };
      worker.onerror = () => setSizes({ state: 'problem', says: 'It could not be worked out on this computer.' });
      worker.postMessage({ id, wish: wanted });
    }, QUIET_MS);
    // A search whose question has changed is stopped.
    return () => {
      clearTimeout(timer);
      worker?.terminate();
    };
  }, [key]);
  return sizes;
}
