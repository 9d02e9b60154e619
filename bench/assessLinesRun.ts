// What bench/assessLines.ts builds and runs.
import { closeSync, openSync, readdirSync, readFileSync, writeSync } from 'node:fs';
import fc from 'fast-check';
import { assessCommand } from '../src/cli/assessCommand.ts';
import type { CliIo } from '../src/cli/cliIo.ts';
import { readVisit } from '../src/cli/readVisit.ts';
import { content } from '../src/content/allContent.ts';
import { assessParts } from '../src/core/visit/assessVisit.ts';
import { visitArbitrary } from '../test/property/visitArbitrary.ts';
import { digits, measure, median, ratioOf, timesOf } from './measure.ts';
import { levelRulesOnly, lineRules } from './peerRules.ts';

const VISITS = 600;
/** For what is slower; of the generated visits more than the plans that are kept, so that each is made anew. */
const FEW_VISITS = 300;
const GENERATED = 300;
const ROUNDS = 15;
const SEED = 20_261_125;
const GOAL = 5000;
const CHUNK_BYTES = 65_536;

const examples = readdirSync('examples')
  .filter((name) => name.endsWith('.json'))
  .map((name) => JSON.stringify(JSON.parse(readFileSync(`examples/${name}`, 'utf8'))));
const generated = fc
  .sample(visitArbitrary, { seed: SEED, numRuns: GENERATED })
  .map(({ practice, ...visit }) => JSON.stringify({ ebbline: 'visit-1', ...visit, practice }));
/** The examples name the invented practice, the generated visits carry it in full, so that both ways are measured. */
const sets = { examples: repeat(examples), 'generated, practice in full on each line': repeat(generated) };

type Evaluate = ReturnType<typeof lineRules>;

const output = openSync('/dev/null', 'w');
try {
  for (const [name, lines] of Object.entries(sets)) await report(name, lines);
} finally {
  closeSync(output);
}

interface Measured {
  readonly name: string;
  readonly visits: number;
  run(): Promise<void>;
}

async function report(name: string, lines: readonly string[]): Promise<void> {
  const few = lines.slice(0, FEW_VISITS);
  const assess = (parts: string | undefined, visits: readonly string[]): Measured => ({
    name: parts ?? 'everything',
    visits: visits.length,
    run: () => assessAll(visits, parts),
  });
  const own = assess('reading,risk', lines);
  const others = ['reading', 'risk', 'plan', 'explain', 'leaflet', undefined].map((parts) => assess(parts, few));
  const withItems = few.map((line) => ({ line, items: assessParts(readVisit(JSON.parse(line)), content, ['risk']).items ?? {} }));
  const peer = (title: string, levelOf: Evaluate): Measured => ({
    name: title,
    visits: withItems.length,
    run: async () => {
      for (const { line, items } of withItems) {
        JSON.parse(line);
        writeSync(output, `${JSON.stringify({ level: await levelOf(items) })}\n`);
      }
    },
  });
  const copy: Measured = {
    name: 'JSON.parse and JSON.stringify alone',
    visits: lines.length,
    run: async () => {
      for (const line of lines) writeSync(output, `${JSON.stringify(JSON.parse(line))}\n`);
    },
  };
  const peers = [
    copy,
    peer('json-rules-engine, each line a rule', withoutUnknown(lineRules())),
    peer('json-rules-engine, lines counted in plain code', withoutUnknown(levelRulesOnly())),
  ];
  console.log(`${name}: visits a second of the clock, and of processor time; ${ROUNDS} rounds`);
  // First alone with the peers, as one who wants only these parts runs it: what runs besides changes how the engine compiles it.
  await measureVisits([own, ...peers]);
  await measureVisits([own, ...others]);
}

/** The first is the one that the others are compared with. */
async function measureVisits(contenders: readonly Measured[]): Promise<void> {
  const cpuMs = new Map<string, number[]>(contenders.map(({ name }) => [name, []]));
  const timed = contenders.map(({ name, run }) => ({
    name,
    run: async () => {
      const began = process.cpuUsage();
      await run();
      const { user, system } = process.cpuUsage(began);
      cpuMs.get(name)?.push((user + system) / 1000);
    },
  }));
  const rounds = await measure(timed, ROUNDS);
  const perVisit = (name: string, visits: number) => timesOf(rounds, name).map((ms) => ms / visits);
  const [first] = contenders;
  if (!first) return;
  const ours = perVisit(first.name, first.visits);
  for (const { name, visits } of contenders) {
    const times = perVisit(name, visits);
    // The first round is not measured.
    const cpu = (cpuMs.get(name) ?? []).slice(1).map((ms) => ms / visits);
    const ratio = name === first.name ? `goal ${digits(GOAL)}` : `time of this / ${first.name}: ${ratioOf(times, ours)}`;
    const best = digits(1000 / Math.min(...times));
    console.log(`  ${name}: ${digits(1000 / median(times))}, best round ${best} (${digits(1000 / median(cpu))}); ${ratio}`);
  }
}

async function assessAll(lines: readonly string[], parts: string | undefined): Promise<void> {
  const io: CliIo = {
    input: chunksOf(lines),
    write: (text) => void writeSync(output, `${text}\n`),
    writeLines: (texts) => void writeSync(output, `${texts.join('\n')}\n`),
    warn: (line) => {
      throw new Error(line);
    },
    isTerminal: false,
    askSecret: () => Promise.resolve(undefined),
    dataFolder: '',
    serverFile: '',
    now: () => '2026-11-25T10:36:00.000Z',
  };
  const code = await assessCommand('-', { lines: true, parts }, io);
  if (code !== 0) throw new Error(`assess ended with ${code}`);
}

/** As a file or a pipe gives them. */
async function* chunksOf(lines: readonly string[]): AsyncGenerator<Uint8Array> {
  const bytes = Buffer.from(`${lines.join('\n')}\n`);
  for (let at = 0; at < bytes.length; at += CHUNK_BYTES) yield bytes.subarray(at, at + CHUNK_BYTES);
}

function repeat(lines: readonly string[]): readonly string[] {
  return Array.from({ length: VISITS }, (_, i) => lines[i % lines.length] ?? '');
}

/** The peer has two truth values: it gets "no" for what is not known, which Ebbline never assumes. */
function withoutUnknown(evaluate: Evaluate): Evaluate {
  const items = content.protocols.flatMap((table) => Object.values(table.items));
  const nothing = Object.fromEntries(items.map(({ id, valueType }) => [id, valueType === 'count' ? 0 : false]));
  return (known) => evaluate({ ...nothing, ...known });
}
