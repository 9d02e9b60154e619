/** Cents from "12.50", "12,50" or "12"; undefined for anything else. */
export function parsePrice(typed: string): number | undefined {
  const match = /^\s*(\d{1,6})(?:[.,](\d{1,2}))?\s*$/.exec(typed);
  return match ? Number(match[1]) * 100 + Number((match[2] ?? '').padEnd(2, '0')) : undefined;
}
