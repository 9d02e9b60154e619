import { readClockTime } from '../../../core/day/clockTime.ts';

export interface DayEntry {
  /** "09:40"; absent = a name alone. */
  readonly atTime?: string | undefined;
  readonly who: string;
}

/** "9:40 odile", "940 am odile" and "odile". A number with nothing after it is a chart number and no time. */
export function readEntry(typed: string): DayEntry {
  const text = typed.trim();
  const match = /^(\S+(?:\s*[ap]\.?m\.?(?=\s))?)\s+(\S.*)$/iu.exec(text);
  const atTime = match?.[1] === undefined ? undefined : readClockTime(match[1]);
  return atTime === undefined || match?.[2] === undefined ? { who: text } : { atTime, who: match[2] };
}
