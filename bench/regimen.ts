// A proposal for one person from a shelf of 40 packs: median and worst over 1,000 random people. The programmes behind them are solved by
// HiGHS, compiled to WebAssembly, in the same run: as peer for the time and as oracle for every optimum.
import fc from 'fast-check';
import { buildProgramme } from '../src/core/regimen/choice/buildProgramme.ts';
import { goalTerms, rowsOf } from '../src/core/regimen/choice/findOptions.ts';
import { solveInOrder } from '../src/core/regimen/choice/solveInOrder.ts';
import { openNeeds, viewOf } from '../src/core/regimen/draftPlan.ts';
import { proposePlan } from '../src/core/regimen/proposePlan.ts';
import type { ShelfItem } from '../src/core/regimen/types.ts';
import { choices, everyItem, planInput } from '../test/property/regimenCases.ts';
import { startHighs } from './highsPeer.ts';
import { digits, measure, median, quantile, ratioOf, timesOf } from './measure.ts';

const PEOPLE = 1_000;
const PACKS = 40;
const ROUNDS = 5;

const shelf: readonly ShelfItem[] = Array.from({ length: PACKS }, (_, i) => {
  const item = everyItem[i % everyItem.length];
  if (!item) throw new Error('there is no pack to stock');
  return i < everyItem.length
    ? { ...item, inStock: true }
    : { ...item, id: `${item.id}-${i}`, inStock: true, priceCents: (item.priceCents ?? 500) - 5 };
});
const inputs = fc.sample(choices(1), { seed: 20_261_126, numRuns: PEOPLE }).map((c) => planInput({ ...c, shelf, dropped: [] }));

for (const input of inputs.slice(0, 200)) proposePlan(input);
const times = inputs.map((input) => {
  const [began, cpu] = [performance.now(), process.cpuUsage()];
  proposePlan(input);
  const { user, system } = process.cpuUsage(cpu);
  return { clockMs: performance.now() - began, cpuMs: (user + system) / 1_000 };
});
const say = (ms: readonly number[]) =>
  `median ${digits(median(ms))} ms, 99th percentile ${digits(quantile(ms, 0.99))} ms, worst ${digits(Math.max(...ms))} ms`;
console.log(`Proposal from ${PACKS} packs, ${PEOPLE} people, by the clock: ${say(times.map((t) => t.clockMs))}.`);
console.log(`  processor time, the engine's own threads included: ${say(times.map((t) => t.cpuMs))}.`);

const programmes = inputs.map((input) => {
  const view = viewOf(input);
  const programme = buildProgramme(openNeeds([], view), [], view);
  return { rows: rowsOf(programme), goals: goalTerms(programme) };
});
const solveByHighs = await startHighs();
const differing = programmes.filter(
  ({ rows, goals }) => solveInOrder(rows, goals)?.optima.join() !== solveByHighs(rows, goals)?.optima.join(),
).length;
if (differing > 0) throw new Error(`${differing} of ${PEOPLE} programmes have another optimum by HiGHS`);
const rounds = await measure(
  [
    { name: 'ours', run: () => programmes.forEach(({ rows, goals }) => void solveInOrder(rows, goals)) },
    { name: 'HiGHS', run: () => programmes.forEach(({ rows, goals }) => void solveByHighs(rows, goals)) },
  ],
  ROUNDS,
);
const [ours, highs] = [timesOf(rounds, 'ours'), timesOf(rounds, 'HiGHS')];
console.log(
  `Best regimen alone: ${digits(median(ours) / PEOPLE)} ms, HiGHS ${digits(median(highs) / PEOPLE)} ms, ratio ${ratioOf(ours, highs)}; ` +
    `the same optimum on all ${PEOPLE}.`,
);
