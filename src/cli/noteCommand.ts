import { content } from '../content/allContent.ts';
import { buildNote } from '../core/note/buildNote.ts';
import { assessVisit } from '../core/visit/assessVisit.ts';
import { readAll } from './answerOne.ts';
import type { CliIo, ExitCode } from './cliIo.ts';
import { openInput } from './openInput.ts';
import { parseJson } from './parseJson.ts';
import { readVisit } from './readVisit.ts';
import { reportFailure } from './reportFailure.ts';

/** `note FILE`: the chart note of a visit, the same text as the page copies. */
export function noteCommand(file: string, io: CliIo): Promise<ExitCode> {
  return reportFailure(io, async () => {
    const input = readVisit(parseJson(await readAll(openInput(file, io).chunks)));
    io.write(buildNote({ input, assessment: assessVisit(input, content), tables: content, sections: input.practice.settings.note }));
    return 0;
  });
}
