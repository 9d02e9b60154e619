/** 200 draws of a day with nine events of eating: the band on two workers, beside the same on one thread. */
import { once } from 'node:events';
import { loadavg } from 'node:os';
import { Worker } from 'node:worker_threads';
import { dayTables } from '../src/content/plaque/dayTables.ts';
import { mouthPresets } from '../src/content/plaque/presets.ts';
import { acidLines } from '../src/core/plaque/day/acidLines.ts';
import { bandOf, type DayBand, type DaySamples, joinSamples, sampleDay } from '../src/core/plaque/day/dayBand.ts';
import type { DayModel } from '../src/core/plaque/day/dayModel.ts';
import { drawModels } from '../src/core/plaque/day/drawModels.ts';
import type { AcidDay, EatingEvent } from '../src/core/plaque/day/types.ts';
import { seededUniform } from '../src/core/stats/seededUniform.ts';
import { digits, measure, median, ratioOf, timesOf } from './measure.ts';

export interface BandTask {
  readonly day: AcidDay;
  readonly models: readonly DayModel[];
}

const DRAWS = 200;
const WORKERS = 2;
const ROUNDS = Number(process.env.EBBLINE_ROUNDS ?? 5);

const eating = (food: string, startMinute: number, occasion: EatingEvent['occasion']): EatingEvent => {
  const row = dayTables.foods.get(food);
  if (!row) throw new RangeError(`food is not in the table of foods: ${food}`);
  const minutes = occasion === 'meal' ? 20 : row.usualMinutes;
  return { id: `${food}-${startMinute}`, kind: 'eating', occasion, startMinute, minutes, portions: [{ food, amount: row.usualAmount }] };
};
const day: AcidDay = {
  wakeMinute: 420,
  sleepMinute: 1380,
  events: [
    ...['granola', 'pasta', 'rice'].map((food, i) => eating(food, 450 + 330 * i, 'meal')),
    ...['cola', 'banana', 'milk-chocolate', 'apple', 'marie-biscuit', 'orange-juice'].map((food, i) =>
      eating(food, [540, 600, 690, 900, 1000, 1260][i] ?? 0, 'between-meals'),
    ),
  ],
};

const models = drawModels(mouthPresets.average, dayTables, DRAWS, seededUniform(1));
const lines = acidLines(dayTables);
const workers = Array.from({ length: WORKERS }, () => new Worker(new URL('./acidDayBandWorker.mjs', import.meta.url)));

const bands = new Map<string, DayBand>();
const contenders = [
  { name: 'one thread', run: () => void bands.set('one thread', bandOf(sampleDay(day, models, { foods: dayTables.foods, lines }))) },
  { name: 'two workers', run: async () => void bands.set('two workers', await bandOnWorkers()) },
];

const began = process.cpuUsage();
const rounds = await measure(contenders, ROUNDS);
const { user, system } = process.cpuUsage(began);
await Promise.all(workers.map((worker) => worker.terminate()));
const [first, ...others] = [...bands.values()].map(({ minutesBelow }) => JSON.stringify(minutesBelow));
if (others.some((other) => other !== first)) throw new Error('the two bands differ');

for (const { name } of contenders) {
  const times = timesOf(rounds, name);
  console.log(`${name}: median ${digits(median(times))} ms (${digits(Math.min(...times))} to ${digits(Math.max(...times))})`);
}
console.log(`one thread / two workers: ${ratioOf(timesOf(rounds, 'one thread'), timesOf(rounds, 'two workers'))}`);
const runs = 2 * (ROUNDS + 1) * DRAWS;
console.log(`processor time for one draw: ${digits((user + system) / 1000 / runs)} ms; load of the machine ${loadavg()[0]?.toFixed(1)}`);

async function bandOnWorkers(): Promise<DayBand> {
  const share = DRAWS / WORKERS;
  const parts = workers.map(async (worker, i): Promise<DaySamples> => {
    worker.postMessage({ day, models: models.slice(i * share, (i + 1) * share) } satisfies BandTask);
    const [samples] = (await once(worker, 'message')) as [DaySamples];
    return samples;
  });
  return bandOf(joinSamples(await Promise.all(parts)));
}
