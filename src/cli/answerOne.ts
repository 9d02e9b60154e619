import type { CliIo, ExitCode } from './cliIo.ts';
import { errorBodyOf, sayError } from './failure.ts';
import { parseJson } from './parseJson.ts';

/**
 * One JSON object in, one answer out. Where there is none, the error goes to standard output in the same form as in a stream, and as a
 * sentence to standard error.
 */
export async function answerOne(
  io: CliIo,
  input: AsyncIterable<Uint8Array | string>,
  answer: (value: unknown) => string,
): Promise<ExitCode> {
  try {
    io.write(answer(parseJson(await readAll(input))));
    return 0;
  } catch (error) {
    const body = errorBodyOf(error);
    if (!body) throw error;
    io.write(JSON.stringify(body));
    io.warn(sayError(body));
    return 2;
  }
}

/** Everything, as one text. */
export async function readAll(input: AsyncIterable<Uint8Array | string>): Promise<string> {
  const chunks: Buffer[] = [];
  for await (const chunk of input) chunks.push(Buffer.from(chunk));
  return Buffer.concat(chunks).toString('utf8');
}
