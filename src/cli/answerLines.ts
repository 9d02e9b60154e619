import type { CliIo, ExitCode } from './cliIo.ts';
import { type ErrorBody, errorBodyOf, sayError } from './failure.ts';
import { parseJson } from './parseJson.ts';
import { readLines } from './readLines.ts';

export interface AnswerLinesOptions {
  readonly input: AsyncIterable<Uint8Array | string>;
  /** What one line is called in the closing sentence, e.g. "visit". */
  readonly noun: string;
  readonly onLine?: ((progress: { readonly lines: number; readonly bytesRead: number }) => void) | undefined;
  /** Before the closing sentence. */
  readonly onEnd?: (() => void) | undefined;
}

/** Answer to one parsed line: an object to print, or the error to print in its place. */
export type AnswerLine = (value: unknown) => unknown;

/**
 * One line out for each line in, in the same order. A line that cannot be answered gives an error line, which names the line, and the
 * stream goes on. One sentence at the end says how many there were and which came first.
 */
export async function answerLines({ writeLines, warn }: CliIo, options: AnswerLinesOptions, answer: AnswerLine): Promise<ExitCode> {
  let lines = 0;
  let refused = 0;
  let first = '';
  for await (const together of readLines(options.input)) {
    const answers: string[] = [];
    for (const { number, text, bytesRead } of together) {
      lines = number;
      const body = tryAnswer(text, answer);
      if (isErrorBody(body)) {
        refused += 1;
        if (refused === 1) first = sayLine(number, body);
        answers.push(JSON.stringify({ ...body, line: number }));
      } else answers.push(JSON.stringify(body));
      options.onLine?.({ lines, bytesRead });
    }
    if (answers.length > 0) writeLines(answers);
    // Lets the output drain where it is slower than the computation.
    await new Promise((resolve) => setImmediate(resolve));
  }
  options.onEnd?.();
  if (refused === 0) return 0;
  warn(closingSentence({ first, refused, lines, noun: options.noun }));
  return 1;
}

function sayLine(number: number, body: ErrorBody): string {
  const sentence = sayError(body, `Line ${number}`);
  return sentence.startsWith('Line ') ? sentence : `Line ${number}, ${sentence}`;
}

function closingSentence({ first, refused, lines, noun }: { first: string; refused: number; lines: number; noun: string }): string {
  const answered = lines - refused;
  const more = refused === 1 ? '' : ` Nor did ${refused - 1} more, each named in its place in the output.`;
  return `${first}, so it got no answer.${more} ${answered} of ${lines} ${noun}s ${answered === 1 ? 'was' : 'were'} answered.`;
}

function tryAnswer(text: string, answer: AnswerLine): unknown {
  try {
    return answer(parseJson(text));
  } catch (error) {
    const body = errorBodyOf(error);
    if (!body) throw error;
    return body;
  }
}

function isErrorBody(body: unknown): body is ErrorBody {
  return typeof body === 'object' && body !== null && 'error' in body;
}
