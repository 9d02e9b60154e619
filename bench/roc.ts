// DeLong on 100,000 cases and 2,000 resamples of a cut-off, against R in the same run on the same cases: the package pROC, and what a
// statistician would write by hand on R's compiled functions. R times itself, its start-up and reading of the file are left out.
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { bootstrapYouden } from '../src/core/stats/diagnostic/bootstrapYouden.ts';
import { delongAuc } from '../src/core/stats/diagnostic/delongAuc.ts';
import { outcomeTable } from '../src/core/stats/diagnostic/outcomeTable.ts';
import { seededUniform } from '../src/core/stats/seededUniform.ts';
import { seededRandom } from '../test/reference/statistics/seededRandom.ts';
import { digits, median, ratioOf } from './measure.ts';
import { type RPeer, startR, whyNoR } from './rPeer.ts';

const LARGE = 100_000;
const SMALL = 1000;
const SEED = 2026;

type Cases = readonly { readonly value: number; readonly positive: boolean }[];
interface Match {
  readonly name: string;
  readonly rounds: number;
  readonly ours: () => readonly number[];
  readonly peers: readonly string[];
  /** Largest relative difference between the results. */
  readonly tolerance: number;
}

const [large, small] = [drawCases(LARGE), drawCases(SMALL)];
const random = seededUniform(SEED);
const matches: readonly Match[] = [
  {
    name: `area with DeLong's standard error, ${LARGE.toLocaleString('en')} cases`,
    rounds: 15,
    ours: () => {
      const result = delongAuc(tableOf(large));
      return result.ok ? [result.value.auc, result.value.se ?? Number.NaN] : [];
    },
    peers: ['proc-delong', 'rank-delong'],
    tolerance: 1e-9,
  },
  {
    name: `cut-off, 2,000 resamples of ${SMALL.toLocaleString('en')} cases`,
    rounds: 5,
    ours: () => resample(small, 2000),
    peers: ['proc-bootstrap-small', 'count-bootstrap-small'],
    tolerance: 0.25,
  },
  {
    name: `cut-off, 200 resamples of ${LARGE.toLocaleString('en')} cases`,
    rounds: 5,
    ours: () => resample(large, 200),
    peers: ['count-bootstrap-large'],
    tolerance: 0.25,
  },
];

const missing = whyNoR(['pROC']);
if (missing !== undefined) console.log(`ROC against R: skipped, ${missing} (Debian: r-base-core and r-cran-proc).`);
else await againstR();

async function againstR(): Promise<void> {
  const folder = mkdtempSync(join(tmpdir(), 'ebbline-roc-'));
  const files = [large, small].map((cases, i) => {
    const file = join(folder, `${i}.csv`);
    const lines = cases.map(({ value, positive }) => `${value},${positive ? 1 : 0}`);
    writeFileSync(file, `value,positive\n${lines.join('\n')}\n`);
    return file;
  });
  const r = startR('bench/roc.R', files);
  try {
    for (const match of matches) await play(match, r);
  } finally {
    r.close();
    rmSync(folder, { recursive: true });
  }
}

/** One unmeasured round, in which the results are compared, then each round all of them, in turns. */
async function play({ name, rounds, ours, peers, tolerance }: Match, r: RPeer): Promise<void> {
  const values = ours();
  for (const peer of peers) requireSame(peer, values, (await r.run(peer)).values, tolerance);
  const own: number[] = [];
  const theirs = peers.map((): number[] => []);
  for (let round = 0; round < rounds; round++) {
    const began = performance.now();
    ours();
    own.push(performance.now() - began);
    for (const [i, peer] of peers.entries()) theirs[i]?.push((await r.run(peer)).ms);
  }
  console.log(`${name}, ${rounds} rounds: Ebbline ${digits(median(own))} ms`);
  peers.forEach((peer, i) => {
    const times = theirs[i] ?? [];
    console.log(`  R ${peer}: ${digits(median(times))} ms; R / Ebbline ${ratioOf(times, own)}`);
  });
}

/** @throws Error where the two do not say the same */
function requireSame(peer: string, ours: readonly number[], theirs: readonly number[], tolerance: number): void {
  const differs = ours.length !== theirs.length || ours.some((value, i) => !(Math.abs(value / (theirs[i] ?? 0) - 1) <= tolerance));
  if (differs) throw new Error(`Ebbline says ${ours.join(', ')}, R ${peer} ${theirs.join(', ')}`);
}

function resample(cases: Cases, resamples: number): readonly number[] {
  const result = bootstrapYouden(tableOf(cases), { random, resamples });
  return result.ok ? [result.value.cutoffInterval.low, result.value.medianCutoff, result.value.cutoffInterval.high] : [];
}

/** Parting the cases and sorting them are part of what is timed. */
function tableOf(cases: Cases): ReturnType<typeof outcomeTable> {
  const [withIt, without]: [number[], number[]] = [[], []];
  for (const { value, positive } of cases) (positive ? withIt : without).push(value);
  return outcomeTable(withIt, without);
}

/** Readings in whole RLU, so that some tie; those of the one in five with the outcome are 1.6 times as high in the middle. */
function drawCases(count: number): Cases {
  const { normal, uniform } = seededRandom(SEED + count);
  return Array.from({ length: count }, () => {
    const positive = uniform() < 0.2;
    return { value: Math.round(Math.exp(8 + 0.9 * normal() + (positive ? 0.5 : 0))), positive };
  });
}
