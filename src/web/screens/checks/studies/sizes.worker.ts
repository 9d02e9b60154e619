import { type Sizing, sizeStudy, type Wish } from './sizeStudy.ts';

export type SizesAnswer = { readonly id: number } & ({ readonly sizing: Sizing } | { readonly problem: string });

addEventListener('message', ({ data }: MessageEvent<{ readonly id: number; readonly wish: Wish }>) => {
  postMessage({ id: data.id, ...answer(data.wish) } satisfies SizesAnswer);
});

function answer(wish: Wish): { readonly sizing: Sizing } | { readonly problem: string } {
  try {
    return { sizing: sizeStudy(wish) };
  } catch (error) {
    if (error instanceof RangeError) return { problem: error.message };
    throw error;
  }
}
