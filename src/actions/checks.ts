import { AppError } from '../api/errors.ts';

const DATE = /^\d{4}-\d{2}-\d{2}$/;

/** The text without spaces around it. Control characters are refused: PostgreSQL cannot hold one of them, and none is typed on purpose. */
export function requireText(name: string, value: string, longest = 200): string {
  const text = value.trim();
  if (text === '') throw new AppError('INPUT_INVALID', `${name} must not be empty.`);
  if (text.length > longest) throw new AppError('INPUT_INVALID', `${name} is longer than ${longest} letters.`);
  // biome-ignore lint/suspicious/noControlCharactersInRegex: these are the characters looked for
  if (/[\u0000-\u0008\u000b\u000c\u000e-\u001f]/.test(text)) throw new AppError('INPUT_INVALID', `${name} holds a control character.`);
  return text;
}

/** A local date that exists, such as "2026-03-04". */
export function requireDate(name: string, value: string): string {
  const time = DATE.test(value) ? Date.parse(`${value}T00:00:00Z`) : Number.NaN;
  // Some engines roll 31 February over into March.
  if (!(Number.isFinite(time) && new Date(time).toISOString().startsWith(value))) {
    throw new AppError('INPUT_INVALID', `${name} is not a date: ${value}.`);
  }
  return value;
}

/** A local time of the day, such as "09:40". */
export function requireClockTime(name: string, value: string): string {
  if (/^([01]\d|2[0-3]):[0-5]\d$/.test(value)) return value;
  throw new AppError('INPUT_INVALID', `${name} is not a time of the day such as 09:40: ${value}.`);
}

/** A time with a zone as fixed-length UTC text. */
export function requireUtc(name: string, value: string): string {
  const time = Date.parse(value);
  if (!(Number.isFinite(time) && /(Z|[+-]\d{2}:\d{2})$/.test(value)))
    throw new AppError('INPUT_INVALID', `${name} is not a time with a zone: ${value}.`);
  return new Date(time).toISOString();
}

/** A reason in words. */
export function requireReason(reason: string | undefined): string {
  if (reason === undefined || reason.trim() === '') throw new AppError('REASON_REQUIRED', 'This needs a reason.');
  return requireText('The reason', reason, 500);
}
