import { MOST_PACKS_SIGNED, packsCovered } from '../../../core/regimen/signatureCover.ts';
import { parseBirthday as parseDay } from '../findPeople.ts';

/** As typed by whoever signs. */
export interface CoverDraft {
  readonly packs: string;
  readonly until: string;
}

export interface CoverLimits {
  /** ISO local date. */
  readonly today: string;
  /** Packs that went already. */
  readonly given: number;
  /** The standing order that is signed on. */
  readonly order?: { readonly packs?: number | undefined; readonly until?: string | undefined } | undefined;
}

export interface ReadCover {
  readonly covers: { readonly packs?: number; readonly until?: string };
  readonly problems: { readonly packs?: string; readonly until?: string };
}

/** What was typed as packs and last day, or what is wrong with either line. Left empty, a line says nothing: one pack, no last day. */
export function readCover({ packs, until }: CoverDraft, limits: CoverLimits): ReadCover {
  const number = packs.trim() === '' ? undefined : /^\s*\d{1,4}\s*$/.test(packs) ? Number(packs) : Number.NaN;
  const day = until.trim() === '' ? undefined : parseDay(until);
  const packsProblem = problemOfPacks(number, limits);
  const untilProblem = until.trim() !== '' && day === undefined ? NO_DAY : problemOfDay(day, limits);
  return {
    covers: { ...(number !== undefined && { packs: number }), ...(day !== undefined && { until: day }) },
    problems: { ...(packsProblem && { packs: packsProblem }), ...(untilProblem && { until: untilProblem }) },
  };
}

function problemOfPacks(packs: number | undefined, { given, order }: CoverLimits): string | undefined {
  if (packs !== undefined && !(packs >= 1 && packs <= MOST_PACKS_SIGNED))
    return `A whole number from 1 to ${MOST_PACKS_SIGNED}, or nothing for one pack.`;
  const inAll = packsCovered({ packs });
  if (inAll <= given) return `${given} went already: more than ${given} in all, so that another may go.`;
  if (order && inAll > packsCovered(order)) return `The order covers at most ${packsCovered(order)}.`;
  return undefined;
}

function problemOfDay(day: string | undefined, { today, order }: CoverLimits): string | undefined {
  if (day === undefined) return undefined;
  if (day < today) return 'This day is past.';
  return order?.until !== undefined && day > order.until ? 'The order ends before this day.' : undefined;
}

const NO_DAY = 'This is no day of the calendar. Year, month and day, like 20270307.';

/** The server's words under the line that they name: "until: ..." */
export function problemOfLine(problem: string | null | undefined, line: keyof CoverDraft): string | undefined {
  return problem?.startsWith(`${line}: `) ? problem.slice(line.length + 2) : undefined;
}
