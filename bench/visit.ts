// How long one assessment of a visit takes. There is no peer for it; copying the visit through JSON in the same run is the yardstick.
import { readdirSync, readFileSync } from 'node:fs';
import { readVisit } from '../src/cli/readVisit.ts';
import { content } from '../src/content/allContent.ts';
import { assessVisit } from '../src/core/visit/assessVisit.ts';
import { digits, median, quantile } from './measure.ts';

const WARM_UP = 20;
const TIMES = 200;
const BUDGET_MS = 50;

const folder = new URL('../examples/', import.meta.url);
const names = readdirSync(folder).filter((name) => name.endsWith('.json'));
const visits = names.map((name) => ({ name, input: readVisit(JSON.parse(readFileSync(new URL(name, folder), 'utf8'))) }));

const [firstVisit] = visits;
if (!firstVisit) throw new Error('there are no examples');
const coldMs = timed(() => assessVisit(firstVisit.input, content));

const assessMs: number[] = [];
const anewMs: number[] = [];
const copyMs: number[] = [];
console.log(`${visits.length} examples, ${TIMES} times each:`);
for (const { name, input } of visits) {
  const own: number[] = [];
  const copies: number[] = [];
  for (let time = -WARM_UP; time < TIMES; time += 1) {
    const assess = timed(() => assessVisit(input, content));
    // Plans are kept by shelf: another copy of it has none yet.
    const another = { ...input, practice: { ...input.practice, shelf: [...input.practice.shelf] } };
    const anew = timed(() => assessVisit(another, content));
    const copy = timed(() => JSON.parse(JSON.stringify(input)));
    if (time < 0) continue;
    own.push(assess);
    anewMs.push(anew);
    copies.push(copy);
  }
  assessMs.push(...own);
  copyMs.push(...copies);
  console.log(`  ${name}: median ${digits(median(own))} ms, 95th percentile ${digits(quantile(own, 0.95))} ms`);
}

console.log(`  all: median ${digits(median(assessMs))} ms, 95th percentile ${digits(quantile(assessMs, 0.95))} ms`);
console.log(`  all, the plan made anew: median ${digits(median(anewMs))} ms, 95th percentile ${digits(quantile(anewMs, 0.95))} ms`);
console.log(`  first call in a new process: ${digits(coldMs)} ms`);
console.log(`  yardstick, JSON.stringify and JSON.parse of the same visit: median ${digits(median(copyMs))} ms`);
console.log(`  assessment / yardstick: ${digits(median(assessMs) / median(copyMs))}`);
console.log(`  budget from an answer to the redrawn summary: ${BUDGET_MS} ms, of which the assessment is one part`);

function timed(work: () => unknown): number {
  const began = performance.now();
  work();
  return performance.now() - began;
}
