import { z } from 'zod';
import { VisitFileSchema } from '../api/visitSchema.ts';
import { content } from '../content/allContent.ts';
import { assessVisit } from '../core/visit/assessVisit.ts';
import type { VisitAssessment } from '../core/visit/types.ts';
import { answerLines } from './answerLines.ts';
import { answerOne } from './answerOne.ts';
import type { CliIo, ExitCode } from './cliIo.ts';
import { drawProgress } from './drawProgress.ts';
import { openInput } from './openInput.ts';
import { readVisit } from './readVisit.ts';
import { reportFailure } from './reportFailure.ts';
import { visitText } from './visitText.ts';
import { visitWords } from './visitWords.ts';

export interface AssessOptions {
  readonly json?: boolean | undefined;
  readonly text?: boolean | undefined;
  readonly parts?: string | undefined;
  readonly schema?: boolean | undefined;
  readonly lines?: boolean | undefined;
  readonly progress?: boolean | undefined;
}

const PARTS: Readonly<Record<keyof VisitAssessment, true>> = {
  ageYears: true,
  ageMonths: true,
  mouth: true,
  unknownAnswers: true,
  safetyUnknown: true,
  facts: true,
  reading: true,
  proposed: true,
  proposedSentence: true,
  compare: true,
  couldChange: true,
  confirmed: true,
  needs: true,
  plan: true,
  leaflet: true,
  sources: true,
  versions: true,
};

/** `assess FILE`: the same assessment as on the screen, for one visit file or for a stream of visits. */
export async function assessCommand(file: string, options: AssessOptions, io: CliIo): Promise<ExitCode> {
  if (options.schema) {
    io.write(JSON.stringify(z.toJSONSchema(VisitFileSchema, { io: 'input' }), null, 2));
    return 0;
  }
  const parts = options.parts
    ?.split(',')
    .map((part) => part.trim())
    .filter((part) => part !== '');
  const problem = findProblem(options, parts);
  if (problem !== undefined) {
    io.warn(problem);
    return 2;
  }
  if (options.lines) return reportFailure(io, () => assessLines(file, parts, options, io));
  const asText = options.text === true || (io.isTerminal && !options.json && !parts);
  return reportFailure(io, () =>
    answerOne(io, openInput(file, io).chunks, (value) => (asText ? textOf(value) : JSON.stringify(jsonOf(value, parts), null, 2))),
  );
}

function findProblem({ text, json, lines }: AssessOptions, parts: readonly string[] | undefined): string | undefined {
  if (text && (lines || json || parts)) return '--text stands alone: it does not go with --json, --parts or --lines.';
  const unknown = parts?.find((part) => !Object.hasOwn(PARTS, part));
  return unknown === undefined ? undefined : `--parts: there is no part "${unknown}". The parts are: ${Object.keys(PARTS).join(', ')}.`;
}

async function assessLines(file: string, parts: readonly string[] | undefined, options: AssessOptions, io: CliIo): Promise<ExitCode> {
  const { chunks, totalBytes } = openInput(file, io);
  const bar = drawProgress(io.progress ?? (options.progress ? process.stderr : undefined), totalBytes, 'visit');
  try {
    return await answerLines(io, { input: chunks, noun: 'visit', onLine: bar.update, onEnd: bar.stop }, (value) => jsonOf(value, parts));
  } finally {
    bar.stop();
  }
}

function jsonOf(value: unknown, parts: readonly string[] | undefined): unknown {
  const assessment = assessVisit(readVisit(value), content);
  return parts ? Object.fromEntries(Object.entries(assessment).filter(([part]) => parts.includes(part))) : assessment;
}

function textOf(value: unknown): string {
  const input = readVisit(value);
  return visitText(input, assessVisit(input, content), visitWords);
}
