/** Digits of other scripts, which a phone or a list may bring, as 0 to 9. */
export function plainDigits(text: string): string {
  return text.replace(/[\u0660-\u0669\u06f0-\u06f9]/g, (digit) => String((digit.codePointAt(0) ?? 0) & 0xf));
}

const SEPARATED = /^(\d{1,2})[:.h](\d{2})(?::00)?$/;
const RUN_TOGETHER = /^(\d{1,2})(\d{2})$/;
const HOUR_ALONE = /^(\d{1,2})$/;

/**
 * "9:40", "09.40", "0940", "940", "9h40", "9:40 am" and "9 pm" as "09:40"; undefined for anything else. An hour alone counts only with
 * "am" or "pm", since "9" might be anything.
 */
export function readClockTime(typed: string): string | undefined {
  const text = plainDigits(typed).trim().toLowerCase();
  const half = /\s*([ap])\.?\s?m\.?$/.exec(text);
  const clock = half ? text.slice(0, half.index) : text;
  const match = SEPARATED.exec(clock) ?? RUN_TOGETHER.exec(clock) ?? (half ? HOUR_ALONE.exec(clock) : null);
  if (!match) return undefined;
  const [hour, minute] = [Number(match[1]), Number(match[2] ?? '0')];
  if (minute > 59) return undefined;
  if (!half) return hour > 23 ? undefined : format(hour, minute);
  if (hour < 1 || hour > 12) return undefined;
  return format((hour % 12) + (half[1] === 'p' ? 12 : 0), minute);
}

function format(hour: number, minute: number): string {
  return `${String(hour).padStart(2, '0')}:${String(minute).padStart(2, '0')}`;
}
