import type { SignedBy } from './types.ts';

/** "Ines Marrow, on the standing order "Strong paste" of 15 January 2026 by Dr. Ahlgren"; the date in the reader's way. */
export function saySigner({ name, standingOrder }: SignedBy, sayDate: (isoDate: string) => string = (date) => date): string {
  if (!standingOrder) return name;
  const by = standingOrder.by === undefined ? '' : ` by ${standingOrder.by}`;
  return `${name}, on the standing order "${standingOrder.name}" of ${sayDate(standingOrder.date)}${by}`;
}
