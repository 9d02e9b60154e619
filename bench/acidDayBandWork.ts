/** Works out its share of the draws whenever it is told to; kept alive, so that it is warm. */
import { parentPort } from 'node:worker_threads';
import { dayTables } from '../src/content/plaque/dayTables.ts';
import { acidLines } from '../src/core/plaque/day/acidLines.ts';
import { sampleDay } from '../src/core/plaque/day/dayBand.ts';
import type { BandTask } from './acidDayBand.ts';

const lines = acidLines(dayTables);

parentPort?.on('message', ({ day, models }: BandTask) => {
  const samples = sampleDay(day, models, { foods: dayTables.foods, lines });
  parentPort?.postMessage(samples, [samples.ph.buffer as ArrayBuffer]);
});
