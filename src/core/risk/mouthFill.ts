import type { SourceRef } from '../visit/answer.ts';
import type { MouthReason } from '../visit/mouthReason.ts';
import type { Items } from './types.ts';

/** What a mouth itself says of an item, where the question makes no sense in it: roots under an overdenture have no pits. */
export interface MouthFill {
  readonly mouth: MouthReason;
  readonly item: string;
  readonly value: boolean;
  readonly source: SourceRef;
}

/** The items with what the mouth settles; what was seen or told stays. */
export function fillFromMouth(items: Items, reasons: readonly MouthReason[], fills: readonly MouthFill[]): Items {
  const settled = fills.filter(({ mouth, item }) => reasons.includes(mouth) && items[item] === undefined);
  return settled.length === 0 ? items : { ...items, ...Object.fromEntries(settled.map(({ item, value }) => [item, value])) };
}
