import { z } from 'zod';
import { VisitFileSchema } from '../api/visitSchema.ts';
import { content } from '../content/allContent.ts';
import { assessParts, assessVisit, VISIT_PARTS, type VisitPart } from '../core/visit/assessVisit.ts';
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

/** `assess FILE`: the same assessment as on the screen, for one visit file or for a stream of visits. */
export async function assessCommand(file: string, options: AssessOptions, io: CliIo): Promise<ExitCode> {
  if (options.schema) {
    io.write(JSON.stringify({ description: sayParts(), ...z.toJSONSchema(VisitFileSchema, { io: 'input' }) }, null, 2));
    return 0;
  }
  const names = options.parts
    ?.split(',')
    .map((name) => name.trim())
    .filter((name) => name !== '');
  const problem = findProblem(options, names);
  if (problem !== undefined) {
    io.warn(problem);
    return 2;
  }
  const parts = names?.filter(isPart);
  if (options.lines) return reportFailure(io, () => assessLines(file, parts, options, io));
  const asText = options.text === true || (io.isTerminal && !options.json && !parts);
  return reportFailure(io, () =>
    answerOne(io, openInput(file, io).chunks, (value) => (asText ? textOf(value) : JSON.stringify(jsonOf(value, parts), null, 2))),
  );
}

/** What stands in each part of an assessment. */
const PART_WORDS: Readonly<Record<VisitPart, string>> = {
  reading: 'the reading and whether it counts',
  risk: 'age, mouth, items, proposed level with sentence, possible levels, what is missing',
  plan: 'facts, confirmed level, needs, plan',
  explain: 'the other lists, what could change the level',
  leaflet: 'the leaflet',
};

function sayParts(): string {
  const parts = VISIT_PARTS.map((part) => `${part} (${PART_WORDS[part]})`);
  return `A visit file. It is assessed whole, or with --parts in some of these only: ${parts.join('; ')}.`;
}

function findProblem({ text, json, lines }: AssessOptions, names: readonly string[] | undefined): string | undefined {
  if (text && (lines || json || names)) return '--text stands alone: it does not go with --json, --parts or --lines.';
  if (names?.length === 0) return `--parts: names no part. The parts are: ${VISIT_PARTS.join(', ')}.`;
  const unknown = names?.filter((name) => !isPart(name)).map((name) => `"${name}"`);
  return unknown?.length ? `--parts: there is no part ${unknown.join(', ')}. The parts are: ${VISIT_PARTS.join(', ')}.` : undefined;
}

const isPart = (name: string): name is VisitPart => VISIT_PARTS.some((part) => part === name);

async function assessLines(file: string, parts: readonly VisitPart[] | undefined, options: AssessOptions, io: CliIo): Promise<ExitCode> {
  const { chunks, totalBytes } = openInput(file, io);
  const bar = drawProgress(io.progress ?? (options.progress ? process.stderr : undefined), totalBytes, 'visit');
  try {
    return await answerLines(io, { input: chunks, noun: 'visit', onLine: bar.update, onEnd: bar.stop }, (value) => jsonOf(value, parts));
  } finally {
    bar.stop();
  }
}

function jsonOf(value: unknown, parts: readonly VisitPart[] | undefined): unknown {
  const input = readVisit(value);
  return parts ? assessParts(input, content, parts) : assessVisit(input, content);
}

function textOf(value: unknown): string {
  const input = readVisit(value);
  return visitText(input, assessVisit(input, content), visitWords);
}
