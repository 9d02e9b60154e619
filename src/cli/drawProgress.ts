import cliProgress from 'cli-progress';

export interface Progress {
  readonly update: (state: { readonly lines: number; readonly bytesRead: number }) => void;
  readonly stop: () => void;
}

/** A bar on the stream given; by bytes, because the number of lines is not known before the end. */
export function drawProgress(stream: NodeJS.WritableStream | undefined, totalBytes: number | undefined, noun: string): Progress {
  if (!stream) return { update: () => {}, stop: () => {} };
  const format = totalBytes === undefined ? `{lines} ${noun}s` : `[{bar}] {percentage} %, {lines} ${noun}s in {duration_formatted}`;
  const bar = new cliProgress.SingleBar({ stream, format, noTTYOutput: true, notTTYSchedule: 500, clearOnComplete: true });
  bar.start(Math.max(1, totalBytes ?? 1), 0, { lines: 0 });
  return {
    update: ({ lines, bytesRead }) => bar.update(totalBytes === undefined ? 0 : bytesRead, { lines }),
    stop: () => {
      if (bar.isActive) bar.stop();
    },
  };
}
