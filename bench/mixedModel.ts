// Restricted maximum likelihood on 20,000 readings of 4,000 people, against R in the same run on the same readings: lme4, nlme, and what a
// statistician would write by hand on R's compiled functions. R times itself; its start-up and reading of the file are left out, as is the
// making of the readings here. Sorting readings by person is part of both.
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { crossedOperatorTrend, randomInterceptTrend, type TrendFit } from '../src/core/stats/mixed/trendFit.ts';
import { seededRandom } from '../test/reference/statistics/seededRandom.ts';
import { digits, median, ratioOf } from './measure.ts';
import { type RPeer, startR, whyNoR } from './rPeer.ts';

const READINGS = 20_000;
const PEOPLE = 4_000;
const OPERATORS = 8;
const ROUNDS = 9;
/** Largest relative difference of any result: how far the peers' own searches go. */
const TOLERANCE = 5e-3;
const LIKELIHOOD_TOLERANCE = 1e-7;

interface Match {
  readonly name: string;
  readonly ours: () => readonly number[];
  readonly peers: readonly string[];
}

const readings = drawReadings();
const matches: readonly Match[] = [
  {
    name: 'a level for each person',
    ours: () => resultsOf(randomInterceptTrend(readings)),
    peers: ['lme4-intercept', 'nlme-intercept', 'rowsum-intercept'],
  },
  {
    name: `a level for each person and each of ${OPERATORS} operators`,
    ours: () => resultsOf(crossedOperatorTrend(readings)),
    peers: ['lme4-crossed'],
  },
];

const missing = whyNoR(['lme4', 'nlme']);
if (missing !== undefined) console.log(`Mixed model against R: skipped, ${missing} (Debian: r-base-core and r-cran-lme4).`);
else await againstR();

async function againstR(): Promise<void> {
  const folder = mkdtempSync(join(tmpdir(), 'ebbline-mixed-'));
  const file = join(folder, 'readings.csv');
  const lines = readings.map(({ subject, operator, time, value }) => [subject, operator, time, value].join(','));
  writeFileSync(file, `subject,operator,time,value\n${lines.join('\n')}\n`);
  const r = startR('bench/mixedModel.R', [file]);
  console.log(`Restricted maximum likelihood, ${READINGS.toLocaleString('en')} readings of ${PEOPLE.toLocaleString('en')} people:`);
  try {
    for (const match of matches) await play(match, r);
  } finally {
    r.close();
    rmSync(folder, { recursive: true });
  }
}

/** Two unmeasured rounds, in which the results are compared, then each round all of them, in turns. */
async function play({ name, ours, peers }: Match, r: RPeer): Promise<void> {
  ours();
  const values = ours();
  for (const peer of peers) requireSame(peer, values, (await r.run(peer)).values);
  const own: number[] = [];
  const theirs = peers.map((): number[] => []);
  for (let round = 0; round < ROUNDS; round++) {
    const began = performance.now();
    ours();
    own.push(performance.now() - began);
    for (const [i, peer] of peers.entries()) theirs[i]?.push((await r.run(peer)).ms);
  }
  console.log(`  ${name}, ${ROUNDS} rounds: Ebbline ${digits(median(own))} ms`);
  peers.forEach((peer, i) => {
    const times = theirs[i] ?? [];
    console.log(`    R ${peer}: ${digits(median(times))} ms; R / Ebbline ${ratioOf(times, own)}`);
  });
}

/** @throws Error where the two do not say the same */
function requireSame(peer: string, ours: readonly number[], theirs: readonly number[]): void {
  const last = ours.length - 1;
  const differs = ours.some((value, i) => !(Math.abs(value / (theirs[i] ?? 0) - 1) <= (i === last ? LIKELIHOOD_TOLERANCE : TOLERANCE)));
  if (differs || ours.length !== theirs.length) throw new Error(`Ebbline says ${ours.join(', ')}, R ${peer} ${theirs.join(', ')}`);
}

function resultsOf({ intercept, slope, interceptSe, slopeSe, variance, operatorEffect, logLikelihood }: TrendFit): readonly number[] {
  const operator = operatorEffect === 'random' ? [variance.operator] : [];
  return [intercept, slope, interceptSe, slopeSe, variance.subject, ...operator, variance.residual, logLikelihood];
}

/** Natural logs over two years, in no order: people differ most, hands less, single readings in between. */
function drawReadings() {
  const { normal, uniform } = seededRandom(2026);
  const draw = (count: number, sd: number) => Array.from({ length: count }, () => sd * normal());
  const [people, operators] = [draw(PEOPLE, 0.8), draw(OPERATORS, 0.2)];
  return Array.from({ length: READINGS }, () => {
    const [s, o, time] = [Math.floor(PEOPLE * uniform()), Math.floor(OPERATORS * uniform()), 24 * uniform()];
    const value = 7.5 - 0.02 * time + (people[s] ?? 0) + (operators[o] ?? 0) + 0.4 * normal();
    return { subject: `S${s}`, operator: `O${o}`, time, value };
  });
}
