import type { Bar, ItemCheck } from './checkItem.ts';
import { isSignature } from './mayRelease.ts';
import type { SignedItem } from './types.ts';

/** Signatures by shelf item. */
export type Signatures = ReadonlyMap<string, readonly SignedItem[]>;

/** The first signature of an item that a plan may rely on. */
export function findSignature(signatures: Signatures, itemId: string): SignedItem | undefined {
  return signatures.get(itemId)?.find(isSignature);
}

/** The override that lifts a stop: for this rule, with a reason, by a person and not under a standing order. */
export function findOverride(signatures: Signatures, bar: Bar): SignedItem | undefined {
  if (!bar.overridable || bar.level !== 'stop') return undefined;
  return signatures
    .get(bar.shelfItemId)
    ?.find((s) => isSignature(s) && s.standingOrder === undefined && s.override?.ruleId === bar.ruleId && s.override.reason.trim() !== '');
}

/** What still keeps a signed pack out: stops without an override, and everything that must be asked first. Cautions are what the signature is for. */
export function unliftedBars({ stops, asks }: ItemCheck, signatures: Signatures): readonly Bar[] {
  return [...stops.filter((bar) => !findOverride(signatures, bar)), ...asks];
}
