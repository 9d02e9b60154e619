import { numberProblems } from '../../../../core/reading/checkReading.ts';
import type { Bound, Meter } from '../../../../core/reading/types.ts';

export type ParsedReading =
  | { readonly ok: true; readonly rlu: number; readonly bound: Bound }
  | { readonly ok: false; readonly says: string };

/** A number as it is read off a meter: "5150", "5,150", "5 150", "<40", ">60000". A reading has no decimals, so a comma groups digits. */
export function parseReading(typed: string, meter: Meter): ParsedReading {
  const match = /^([<>]?)\s*(\d{1,3}(?:[, ]\d{3})+|\d{1,9})$/.exec(typed.trim());
  if (!match) return { ok: false, says: 'A whole number is needed, like 5150; < or > before it at the end of the scale.' };
  const rlu = Number(match[2]?.replaceAll(/[, ]/g, ''));
  if (rlu === 0) return { ok: false, says: 'A 0 says nothing of how low it was: type the lowest number of the meter with < before it.' };
  const [problem] = numberProblems({ rlu }, meter);
  if (problem) return { ok: false, says: `${problem.message}.` };
  return { ok: true, rlu, bound: match[1] === '<' ? 'at-most' : match[1] === '>' ? 'at-least' : 'exact' };
}
