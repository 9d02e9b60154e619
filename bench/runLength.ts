// Average run lengths of control charts against R in the same run: the package spc, whose computing is compiled C, and the same integral
// equation written on R's vectors. At equal accuracy: each contender takes the fewest nodes that reach it. R times itself, start-up apart.
import { cusumRunLength } from '../src/core/stats/cusumRunLength.ts';
import { ewmaRunLength } from '../src/core/stats/ewmaRunLength.ts';
import { multiRuleRunLength } from '../src/core/stats/multiRuleRunLength.ts';
import { STOP_RULES } from '../src/core/stats/multiRules.ts';
import { digits, measure, median, ratioOf, timesOf } from './measure.ts';
import { type RPeer, startR, whyNoR } from './rPeer.ts';

const SHIFTS_SD = [0, 0.25, 0.5, 0.75, 1, 1.5, 2, 2.5, 3, 4];
const ROUNDS = 9;
const REPEATS = 20;
/** Nodes of the run lengths that count as true; twice of what any design here needs for twelve digits. */
const REFINED = 120;

interface Design {
  readonly chart: 'cusum' | 'ewma';
  /** k and h, or lambda and limit. */
  readonly parameters: readonly [number, number];
}
const CUSUMS = (
  [
    [0.5, 4],
    [0.5, 5],
    [0.25, 8],
    [1, 2.516],
  ] as const
).map((parameters): Design => ({ chart: 'cusum', parameters }));
const EWMAS = (
  [
    [0.05, 2.615],
    [0.1, 2.814],
    [0.2, 2.962],
    [0.25, 2.998],
  ] as const
).map((parameters): Design => ({ chart: 'ewma', parameters }));

const missing = whyNoR(['spc']);
if (missing !== undefined) console.log(`Run lengths against R: skipped, ${missing} (Debian: r-base-core and r-cran-spc).`);
else await againstR();
await multiRulesAlone();

async function againstR(): Promise<void> {
  const r = startR('bench/runLength.R', []);
  try {
    for (const accuracy of [1e-6, 1e-10]) {
      await play('cumulative sum, one- and two-sided', CUSUMS, { accuracy, peers: ['spc', 'plain'] }, r);
      await play('moving average, two-sided', EWMAS, { accuracy, peers: ['spc'] }, r);
    }
  } finally {
    r.close();
  }
}

interface Match {
  /** Largest relative error of any run length of the design. */
  readonly accuracy: number;
  readonly peers: readonly string[];
}

/** One unmeasured round, then each round all of them, in turns. */
async function play(name: string, designs: readonly Design[], { accuracy, peers }: Match, r: RPeer): Promise<void> {
  const own = await fewestNodes(designs, accuracy, async (design, nodes) => ours(design, nodes));
  const tasks: { peer: string; nodes: readonly number[]; task: string }[] = [];
  for (const peer of peers) {
    const nodes = await fewestNodes(designs, accuracy, async (design, n) => (await r.run(taskOf(peer, 1, [design], [n]))).values);
    tasks.push({ peer, nodes, task: taskOf(peer, REPEATS, designs, nodes) });
  }
  const times = { own: [] as number[], peers: tasks.map((): number[] => []) };
  for (let round = -1; round < ROUNDS; round++) {
    const began = performance.now();
    for (let i = 0; i < REPEATS; i++) for (const [d, design] of designs.entries()) ours(design, own[d] ?? REFINED);
    const ownMs = performance.now() - began;
    const peerMs: number[] = [];
    for (const { task } of tasks) peerMs.push((await r.run(task)).ms);
    if (round < 0) continue;
    times.own.push(ownMs);
    for (const [i, ms] of peerMs.entries()) times.peers[i]?.push(ms);
  }
  const lengths = REPEATS * designs.reduce((sum, design) => sum + ours(design, 8).length, 0);
  const each = (ms: readonly number[]) => `${digits((median(ms) / lengths) * 1000)} us a run length`;
  console.log(
    `${name}, relative error at most ${accuracy}, ${ROUNDS} rounds of ${lengths}: Ebbline ${each(times.own)}, nodes ${own.join(' ')}`,
  );
  for (const [i, { peer, nodes }] of tasks.entries()) {
    const ms = times.peers[i] ?? [];
    console.log(`  R ${peer}: ${each(ms)}, nodes ${nodes.join(' ')}; R / Ebbline ${ratioOf(ms, times.own)}`);
  }
}

function ours({ chart, parameters: [a, b] }: Design, nodes: number): number[] {
  if (chart === 'ewma') return SHIFTS_SD.map((shift) => ewmaRunLength({ lambda: a, limit: b, sides: 2 }, shift, nodes));
  return SHIFTS_SD.flatMap((shift) => ([1, 2] as const).map((sides) => cusumRunLength({ k: a, h: b, sides }, shift, nodes)));
}

function taskOf(peer: string, repeats: number, designs: readonly Design[], nodes: readonly number[]): string {
  const said = designs.map(({ chart, parameters }, i) => `${chart} ${parameters.join(' ')} ${nodes[i]}`);
  return `${peer} ${repeats} ${said.join(' / ')}`;
}

/** For each design the smallest number of nodes from which on the error stays within what is asked. */
async function fewestNodes(
  designs: readonly Design[],
  accuracy: number,
  compute: (design: Design, nodes: number) => Promise<readonly number[]>,
): Promise<number[]> {
  const fewest: number[] = [];
  for (const design of designs) {
    const want = ours(design, REFINED);
    let reached: number | undefined;
    for (let nodes = 6; nodes <= 80; nodes++) {
      const got = await compute(design, nodes);
      const isNear = got.length === want.length && got.every((value, i) => Math.abs(value / (want[i] ?? 0) - 1) <= accuracy);
      reached = isNear ? (reached ?? nodes) : undefined;
      if (reached !== undefined && nodes >= reached + 3) break;
    }
    if (reached === undefined) throw new Error(`${design.chart} ${design.parameters.join(' ')} does not reach ${accuracy}`);
    fewest.push(reached);
  }
  return fewest;
}

/** No peer here: spc knows no rules about runs. */
async function multiRulesAlone(): Promise<void> {
  const name = 'five control rules together';
  const rounds = await measure([{ name, run: () => SHIFTS_SD.forEach((shift) => void multiRuleRunLength(STOP_RULES, shift)) }], ROUNDS);
  console.log(`${name}, exact: ${digits((median(timesOf(rounds, name)) / SHIFTS_SD.length) * 1000)} us a run length; no peer`);
}
