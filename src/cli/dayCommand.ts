import { writeFileSync } from 'node:fs';
import { parse } from 'node:path';
import { AcidDayFileSchema } from '../api/acidDayFileSchema.ts';
import { describeIssues } from '../api/describeIssues.ts';
import { assessDayFile } from '../calculators/day/acidDay.ts';
import { foodsById } from '../content/foods.ts';
import { readAll } from './answerOne.ts';
import type { CliIo, ExitCode } from './cliIo.ts';
import { daySvg } from './daySvg.ts';
import { dayText } from './dayText.ts';
import { AnswerError } from './failure.ts';
import { openInput } from './openInput.ts';
import { parseJson } from './parseJson.ts';
import { reportFailure } from './reportFailure.ts';

export interface DayOptions {
  readonly svg?: string | undefined;
}

/** `day FILE`: the figures of a described day as text, and its curve as a picture beside where the command was called. */
export function dayCommand(file: string, { svg }: DayOptions, io: CliIo): Promise<ExitCode> {
  return reportFailure(io, async () => {
    const value = parseJson(await readAll(openInput(file, io).chunks));
    const parsed = AcidDayFileSchema.safeParse(value);
    if (!parsed.success) {
      const [first = { path: '', message: 'is not a described day' }] = describeIssues(parsed.error.issues, value);
      throw new AnswerError(first.path, first.message);
    }
    const { day, result } = assessOrName(() => assessDayFile(parsed.data));
    const path = svg ?? `${file === '-' ? 'acid-day' : parse(file).name}.svg`;
    writePicture(path, daySvg(day, result, foodsById));
    io.write(dayText(day, result, foodsById));
    io.write(`Picture written to ${path}.`);
    return 0;
  });
}

/** A range that the core refuses is the file's fault: its message begins with the field. */
function assessOrName<T>(work: () => T): T {
  try {
    return work();
  } catch (error) {
    if (error instanceof RangeError) throw new AnswerError('', error.message, 'INPUT_INVALID', { cause: error });
    throw error;
  }
}

function writePicture(path: string, picture: string): void {
  try {
    writeFileSync(path, picture);
  } catch (error) {
    throw new AnswerError(path, `cannot be written (${error instanceof Error ? error.message : error})`, 'INPUT_INVALID', { cause: error });
  }
}
