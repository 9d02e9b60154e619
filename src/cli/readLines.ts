import { StringDecoder } from 'node:string_decoder';

export interface InputLine {
  /** Counts from 1, as an editor does. */
  readonly number: number;
  readonly text: string;
  /** Bytes of input taken in so far. */
  readonly bytesRead: number;
}

/**
 * Lines of a stream, as many at a time as one chunk completes, with "\n" or "\r\n" taken off. An empty line within counts as a line; empty lines at the end do not,
 * since editors leave them there.
 */
export async function* readLines(input: AsyncIterable<Uint8Array | string>): AsyncGenerator<readonly InputLine[]> {
  const decoder = new StringDecoder('utf8');
  let rest = '';
  let number = 0;
  let bytesRead = 0;
  let emptyAhead = 0;

  const take = (texts: readonly string[]): readonly InputLine[] => {
    const lines: InputLine[] = [];
    for (const text of texts) {
      const line = text.endsWith('\r') ? text.slice(0, -1) : text;
      if (line.trim() === '') {
        emptyAhead += 1;
        continue;
      }
      for (; emptyAhead > 0; emptyAhead -= 1) lines.push({ number: ++number, text: '', bytesRead });
      lines.push({ number: ++number, text: line, bytesRead });
    }
    return lines;
  };

  for await (const chunk of input) {
    bytesRead += typeof chunk === 'string' ? Buffer.byteLength(chunk) : chunk.length;
    const [first = '', ...others] = (typeof chunk === 'string' ? chunk : decoder.write(Buffer.from(chunk))).split('\n');
    // Only what is new is searched, so that one line of many megabytes does not take quadratic time.
    const whole = [rest + first, ...others];
    rest = whole.pop() ?? '';
    if (whole.length > 0) yield take(whole);
  }
  yield take([rest + decoder.end()]);
}
