const QUIET_MS = 1_000;
const AGAIN_MS = 2_000;

/** Says that something takes its time once a second has passed, and from then on every two seconds how far it is. */
export function sayProgress(
  what: string,
  { now, say }: { readonly now: () => string; readonly say: (line: string) => void },
): (made: { readonly done: number; readonly of: number }) => void {
  let nextMs = Date.parse(now()) + QUIET_MS;
  return ({ done, of }) => {
    const timeMs = Date.parse(now());
    if (timeMs < nextMs || done === of) return;
    nextMs = timeMs + AGAIN_MS;
    say(`${what} ... ${Math.floor((100 * done) / of)} %`);
  };
}
