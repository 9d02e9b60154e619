// Ebbline's risk evaluator against json-rules-engine, on fully answered sets: the peer has two truth values, ours also has "unknown".
import { fourLevel2019 } from '../src/content/protocols/fourLevel2019.ts';
import { protocolTables } from '../src/content/protocols/protocolTables.ts';
import { compileList } from '../src/core/risk/compileList.ts';
import { evaluateProtocol } from '../src/core/risk/evaluateProtocol.ts';
import type { ItemValue } from '../src/core/risk/types.ts';
import { seededRandom } from '../test/reference/statistics/seededRandom.ts';
import { digits, measure, median, ratioOf, timesOf } from './measure.ts';
import { levelRulesOnly, lineRules } from './peerRules.ts';

const SETS = 1000;
const ROUNDS = 9;
const SEED = 2019;
const AGE_YEARS = 40;
const SETTINGS = { lowSalivaMeansExtreme: false };

const table = protocolTables.find(({ id }) => id === fourLevel2019.id) ?? fourLevel2019;
const { uniform } = seededRandom(SEED);
const sets = Array.from({ length: SETS }, answeredSet);
const byLines = lineRules();
const byLevels = levelRulesOnly();
const ours = (items: (typeof sets)[number]) => evaluateProtocol(table, items, AGE_YEARS, SETTINGS);

const seen = await checkSameLevels();
console.log(`${SETS} fully answered sets (seed ${SEED}), ${table.screenName}: the same level from all three on every set.`);
console.log(`  levels: ${[...seen].map(([level, count]) => `${level} ${count}`).join(', ')}`);

const rounds = await measure(
  [
    { name: 'Ebbline evaluateProtocol', run: () => sets.forEach((items) => void ours(items)) },
    { name: 'json-rules-engine, each line a rule', run: () => runAll(byLines) },
    { name: 'json-rules-engine, lines counted in plain code', run: () => runAll(byLevels) },
  ],
  ROUNDS,
);
const own = timesOf(rounds, 'Ebbline evaluateProtocol');
for (const [name, times] of rounds) {
  const ratio = times === own ? '' : `; peer / Ebbline ${ratioOf(times, own)}`;
  console.log(`  ${name}: ${digits((median(times) / SETS) * 1000)} us per set${ratio}`);
}

const halfKnown = sets.map((items) => Object.fromEntries(Object.entries(items).filter(() => uniform() < 0.5)));
const unknown = await measure([{ name: 'half unknown', run: () => halfKnown.forEach((items) => void ours(items)) }], ROUNDS);
const halfMs = timesOf(unknown, 'half unknown');
console.log(`  Ebbline with half of the items unknown, which no peer here can do: ${digits((median(halfMs) / SETS) * 1000)} us per set`);

/** Every item that the list reads has a value. Disease is rare, so that all four levels occur. */
function answeredSet(): Record<string, ItemValue> {
  const ids = new Set(compileList(table, AGE_YEARS, SETTINGS).rules.flatMap((rule) => rule.conditions.map(({ item }) => item)));
  const risky = uniform();
  return Object.fromEntries(
    [...ids].map((id): [string, ItemValue] => {
      const definition = table.items[id];
      if (definition?.valueType === 'count') return [id, Math.floor(uniform() * 8)];
      const share = { disease: 0.08, risk: risky, protective: 1 - risky }[definition?.role ?? 'risk'];
      return [id, uniform() < share];
    }),
  );
}

/** @throws Error on the first set on which the evaluators differ */
async function checkSameLevels(): Promise<ReadonlyMap<string, number>> {
  const counts = new Map<string, number>();
  for (const items of sets) {
    const { level } = ours(items);
    const peers = [await byLines(items), await byLevels(items)];
    if (level === null || peers.some((peer) => peer !== level)) {
      throw new Error(`Ebbline says ${level}, the peers ${peers.join(' and ')} on ${JSON.stringify(items)}`);
    }
    counts.set(level, (counts.get(level) ?? 0) + 1);
  }
  if (counts.size !== table.levels.length) throw new Error(`only these levels occur: ${[...counts.keys()].join(', ')}`);
  return counts;
}

async function runAll(evaluate: (items: (typeof sets)[number]) => Promise<string>): Promise<void> {
  for (const items of sets) await evaluate(items);
}
