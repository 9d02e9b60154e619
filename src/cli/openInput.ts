import { createReadStream, statSync } from 'node:fs';
import type { CliIo } from './cliIo.ts';
import { AnswerError } from './failure.ts';

export interface OpenedInput {
  readonly chunks: AsyncIterable<Uint8Array | string>;
  /** Unknown for standard input. */
  readonly totalBytes?: number | undefined;
}

/** A file, or standard input for "-". @throws AnswerError where there is no such file */
export function openInput(file: string, { input }: CliIo): OpenedInput {
  if (file === '-') return { chunks: input };
  let isFile = false;
  let totalBytes = 0;
  try {
    const stats = statSync(file);
    isFile = stats.isFile();
    totalBytes = stats.size;
  } catch (error) {
    throw new AnswerError(file, 'cannot be read: there is no such file', 'INPUT_INVALID', { cause: error });
  }
  if (!isFile) throw new AnswerError(file, 'is a folder, where a file was expected');
  return { chunks: createReadStream(file), totalBytes };
}
