// A day of 24 hours with nine events in the model of plaque, against SciPy's BDF and LSODA on the same equations, and against CVODE
// compiled from C: each at its loosest setting that stays within 0.02, and within 0.002 pH of a tight run at every minute. All begin with
// the same rest of six hours. Processor time, told by each
// program of itself: a short run would otherwise gain on a busy machine by being over before its turn is. Start-up and printing are left out.
import { spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { plaqueValues } from '../src/content/plaque/constants.ts';
import { mouthPresets } from '../src/content/plaque/presets.ts';
import { simulateDay } from '../src/core/plaque/model/simulateDay.ts';
import type { DayInput, Exposure } from '../src/core/plaque/types.ts';
import { flattenDay } from './acidDayNumbers.ts';
import { type LinePeer, startPeer } from './linePeer.ts';
import { digits, median, ratioOf } from './measure.ts';

const ROUNDS = 7;
/** The first days of a process are slow: nobody's are counted. */
const WARM_UP = 20;
const GOALS_PH = [0.02, 0.002];
const OUR_TOLERANCES = [0.05, 0.04, 0.03, 0.025, 0.02, 0.015, 0.01, 0.007, 0.005, 0.003, 0.002, 0.0015, 0.001, 5e-4];
const PEER_RTOLS = [
  0.05, 0.03, 0.02, 0.014, 0.01, 7e-3, 5e-3, 3e-3, 2e-3, 1.4e-3, 1e-3, 7e-4, 5e-4, 3e-4, 2e-4, 1.4e-4, 1e-4, 5e-5, 2e-5, 1e-5,
];
const PEER_ATOL_BY_RTOL = [1, 0.1];

const event = (kind: Exposure['kind'], startMinute: number, minutes: number, hexoseMmolPerL: number): Exposure => ({
  kind,
  startMinute,
  minutes,
  hexoseMmolPerL,
});
const acid = { pH: 3, titratableMmolPerL: 30 };
const { saliva, plaque } = mouthPresets.average;
const day: DayInput = {
  saliva,
  plaque,
  constants: plaqueValues,
  exposures: [
    event('eating', 450, 20, 117),
    event('eating', 570, 5, 467),
    { ...event('drinking', 660, 10, 467), ...acid },
    event('eating', 750, 20, 117),
    event('eating', 870, 5, 467),
    { ...event('drinking', 960, 10, 467), ...acid },
    event('eating', 1110, 20, 117),
    event('eating', 1200, 5, 467),
    { ...event('drinking', 1290, 10, 467), ...acid },
  ],
};

interface Contender {
  readonly name: string;
  /** In rows, each from loose to tight. */
  readonly settings: readonly (readonly string[])[];
  run(setting: string): Promise<{ readonly ms: number; readonly values: ArrayLike<number> }>;
}

const began = performance.now();
simulateDay(day);
console.log(`A day with nine events, average plaque. First call in a new process: ${digits(performance.now() - began)} ms.`);
const folder = mkdtempSync(join(tmpdir(), 'ebbline-day-'));
const peers: LinePeer[] = [];
try {
  await play([ours(), ...listScipy(), ...listCvode()]);
} finally {
  for (const peer of peers) peer.close();
  rmSync(folder, { recursive: true });
}

function ours(): Contender {
  return {
    name: 'Ebbline',
    settings: [OUR_TOLERANCES.map(String)],
    run: async (setting) => {
      const start = process.cpuUsage();
      const { ph } = simulateDay(day, { tolerancePh: Number(setting) });
      const { user, system } = process.cpuUsage(start);
      return { ms: (user + system) / 1000, values: ph };
    },
  };
}

function listScipy(): readonly Contender[] {
  const { status } = spawnSync('python3', ['-c', 'import scipy'], { stdio: 'ignore' });
  if (status !== 0) {
    console.log('SciPy: skipped, python3 with scipy is not installed (Debian: python3-scipy).');
    return [];
  }
  const file = join(folder, 'day.json');
  writeFileSync(file, JSON.stringify(day));
  const peer = startPeer('python3', ['bench/acidDay.py', file]);
  peers.push(peer);
  return ['BDF', 'LSODA'].map((method) => peerContender(`SciPy ${method}`, method, peer));
}

function listCvode(): readonly Contender[] {
  const program = join(folder, 'acidDay');
  const flags = ['-O2', '-march=native', '-o', program, 'bench/acidDay.c'];
  const libraries = ['-lsundials_cvode', '-lsundials_nvecserial', '-lsundials_sunmatrixband', '-lsundials_sunlinsolband', '-lm'];
  const { status } = spawnSync('gcc', [...flags, ...libraries], { stdio: 'ignore' });
  if (status !== 0) {
    console.log('CVODE: skipped, it does not compile here (Debian: gcc and libsundials-dev).');
    return [];
  }
  const file = join(folder, 'day.txt');
  writeFileSync(file, flattenDay(day).join('\n'));
  const peer = startPeer(program, [file]);
  peers.push(peer);
  return [peerContender('CVODE, C with -O2', 'CVODE', peer)];
}

function peerContender(name: string, method: string, peer: LinePeer): Contender {
  const settings = PEER_ATOL_BY_RTOL.map((share) => PEER_RTOLS.map((rtol) => `${method} ${rtol} ${rtol * share}`));
  return { name, settings, run: (setting) => peer.run(setting) };
}

async function play(contenders: readonly Contender[]): Promise<void> {
  for (let i = 0; i < WARM_UP; i += 1) simulateDay(day);
  const exact = simulateDay(day, { tolerancePh: 1e-6 }).ph;
  for (const { name, run, settings } of contenders.slice(1)) {
    const [method] = (settings[0]?.[0] ?? '').split(' ');
    const difference = largestDifference((await run(`${method} 1e-7 1e-7`)).values, exact);
    console.log(`  ${name} at 1e-7 and Ebbline at 1e-6 differ by at most ${difference.toExponential(1)} pH`);
    if (!(difference < 5e-4)) throw new Error(`${name} does not solve the same equations`);
  }
  for (const goal of GOALS_PH) await race(contenders, exact, goal);
}

async function race(contenders: readonly Contender[], exact: ArrayLike<number>, goal: number): Promise<void> {
  const racers = [];
  for (const contender of contenders) racers.push({ contender, ...(await quickestWithin(contender, exact, goal)), times: [] as number[] });
  for (let round = 0; round < ROUNDS; round += 1) {
    for (const { contender, setting, times } of racers) times.push((await contender.run(setting)).ms);
  }
  console.log(`Within ${goal} pH at every minute, ${ROUNDS} rounds:`);
  const own = racers[0]?.times ?? [];
  for (const { contender, setting, error, times } of racers) {
    const ratio = times === own ? '' : `; ${contender.name} / Ebbline ${ratioOf(times, own)}`;
    console.log(`  ${contender.name} (${setting}, off by ${error.toFixed(4)}): ${digits(median(times))} ms${ratio}`);
  }
}

/** The first setting of each row that keeps to the goal, and of these the quickest. */
async function quickestWithin({ name, settings, run }: Contender, exact: ArrayLike<number>, goal: number) {
  let best: { readonly setting: string; readonly error: number; readonly ms: number } | undefined;
  for (const row of settings) {
    for (const setting of row) {
      const { ms, values } = await run(setting);
      const error = largestDifference(values, exact);
      // No time: the peer gave up at this setting.
      if (!(error <= goal && ms > 0)) continue;
      if (best === undefined || ms < best.ms) best = { setting, error, ms };
      break;
    }
  }
  if (best === undefined) throw new Error(`${name} has no setting within ${goal} pH`);
  return best;
}

function largestDifference(values: ArrayLike<number>, exact: ArrayLike<number>): number {
  if (values.length !== exact.length) return Number.NaN;
  return Math.max(...Array.from(values, (value, i) => Math.abs(value - (exact[i] ?? Number.NaN))));
}
