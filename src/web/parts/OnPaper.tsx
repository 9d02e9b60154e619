import { plural } from '../format.ts';

/** A long table stands on paper with its newest rows alone. */
export const MOST_ON_PAPER = 30;

/** Of a row, newest first: class that keeps it off the paper. */
export const rowOnPaper = (at: number): string | undefined => (at < MOST_ON_PAPER ? undefined : 'off-paper');

/** Says on paper, and only there, that there are more. */
export function LastOnPaper({ count, one }: { readonly count: number; readonly one: string }) {
  if (count <= MOST_ON_PAPER) return null;
  return (
    <p className="paper-only">
      The last {MOST_ON_PAPER} of {plural(count, one)}; the screen shows all.
    </p>
  );
}
