import { type Calculator, inputJsonSchema, outputJsonSchema, runCalculator } from '../calculators/calculator.ts';
import { calculators, findCalculator } from '../calculators/index.ts';
import { answerLines } from './answerLines.ts';
import { answerOne } from './answerOne.ts';
import type { CliIo, ExitCode } from './cliIo.ts';
import { AnswerError } from './failure.ts';

export interface CalcOptions {
  readonly list?: boolean | undefined;
  readonly schema?: boolean | undefined;
  readonly lines?: boolean | undefined;
}

/** `calc NAME < in.json`, `calc NAME --lines`, `calc NAME --schema`, `calc --list`. */
export async function calcCommand(name: string | undefined, options: CalcOptions, io: CliIo): Promise<ExitCode> {
  if (options.list) return list(io);
  const calculator = name === undefined ? undefined : findCalculator(name);
  if (!calculator) {
    const what = name === undefined ? 'Which calculator?' : `There is no calculator "${name}".`;
    io.warn(`${what} "ebbline calc --list" names them.`);
    return 2;
  }
  if (options.schema) {
    io.write(JSON.stringify({ input: inputJsonSchema(calculator), output: outputJsonSchema(calculator) }, null, 2));
    return 0;
  }
  if (options.lines) return answerLines(io, { input: io.input, noun: 'line' }, (value) => outputOf(calculator, value));
  return answerOne(io, io.input, (value) => JSON.stringify(outputOf(calculator, value), null, 2));
}

function list({ write }: CliIo): ExitCode {
  const width = Math.max(...calculators.map(({ name }) => name.length));
  for (const { name, summary } of calculators) write(`${name.padEnd(width)}  ${summary}`);
  return 0;
}

export function outputOf(calculator: Calculator, value: unknown): unknown {
  const result = runCalculator(calculator, value);
  if (result.ok) return result.output;
  throw new AnswerError(result.error.path, result.error.message, result.error.code);
}
