import { writeFileSync } from 'node:fs';
import { join, parse } from 'node:path';
import { content } from '../content/allContent.ts';
import { LANGUAGE_NAMES, LEAFLET_LANGUAGES } from '../core/leaflet/languages.ts';
import type { LeafletLanguage } from '../core/leaflet/types.ts';
import { assessVisit } from '../core/visit/assessVisit.ts';
import { readAll } from './answerOne.ts';
import type { CliIo, ExitCode } from './cliIo.ts';
import { AnswerError } from './failure.ts';
import { openInput } from './openInput.ts';
import { parseJson } from './parseJson.ts';
import { readVisit } from './readVisit.ts';
import { reportFailure } from './reportFailure.ts';

export interface LeafletOptions {
  readonly pdf: string;
  readonly letter?: boolean | undefined;
  readonly language?: string | undefined;
  readonly largePrint?: boolean | undefined;
}

/**
 * `leaflet FILE --pdf OUT`: the person's one page, with nothing on it that the screen would not print. For several homes a file each,
 * in the language of the home; with `--language` one page in that language. `--large-print` sets it in 18 pt and more, on two pages where they hold it.
 */
export function leafletCommand(file: string, options: LeafletOptions, io: CliIo): Promise<ExitCode> {
  return reportFailure(io, async () => {
    const language = options.language === undefined ? undefined : requireLanguage(options.language);
    const input = readVisit(parseJson(await readAll(openInput(file, io).chunks)));
    const { leaflet, leaflets } = assessVisit({ ...input, visit: { ...input.visit, language: language ?? input.visit.language } }, content);
    // Loaded only here: no other command needs the typesetter.
    const { renderLeafletPdf } = await import('./leafletPdf.tsx');
    const page = options.letter ? 'LETTER' : 'A4';
    const printed = language === undefined ? leaflets : [leaflet];
    for (const [i, one] of printed.entries()) {
      const path = printed.length === 1 ? options.pdf : numberedPath(options.pdf, i + 1);
      writePdf(path, await renderLeafletPdf(one, { page, largePrint: options.largePrint }));
      const home = one.home === undefined ? '' : `, ${one.home}`;
      if (one.notInLanguage.length > 0)
        io.write(`No name in ${LANGUAGE_NAMES[one.language]}, so the English one stands: ${one.notInLanguage.join('; ')}.`);
      if (one.review !== null) io.write(`The ${LANGUAGE_NAMES[one.language]} wording is to be reviewed by a native-speaking clinician.`);
      io.write(`Leaflet of ${one.personName}${home} written to ${path} (${page === 'A4' ? 'A4' : 'Letter'}).`);
    }
    return 0;
  });
}

/** "out.pdf" as "out-2.pdf". */
function numberedPath(path: string, number: number): string {
  const { dir, name, ext } = parse(path);
  return join(dir, `${name}-${number}${ext}`);
}

function requireLanguage(code: string): LeafletLanguage {
  const language = LEAFLET_LANGUAGES.find((known) => known === code);
  if (!language) throw new AnswerError('--language', `must be one of: ${LEAFLET_LANGUAGES.join(', ')}`);
  return language;
}

function writePdf(path: string, pdf: Uint8Array): void {
  try {
    writeFileSync(path, pdf);
  } catch (error) {
    throw new AnswerError(path, `cannot be written (${error instanceof Error ? error.message : error})`, 'INPUT_INVALID', { cause: error });
  }
}
