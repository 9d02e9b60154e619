import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { regimenTables } from '../../../src/content/regimenTables.ts';
import { type ProposePlanInput, proposePlan } from '../../../src/core/regimen/proposePlan.ts';
import type { Plan } from '../../../src/core/regimen/types.ts';
import { findBreaches, isSignatureBound } from '../oracle.ts';
import { type Case, cases, inputOf, READINGS, shelfOf, worldOf } from './safetyCases.ts';

/** Fixed, so that a failure can be looked at again; EBBLINE_SEED looks elsewhere. */
export const SEED = Number(process.env.EBBLINE_SEED ?? 20_261_125);
const LONG = process.env.EBBLINE_LONG === '1';
/** EBBLINE_PEOPLE asks for another number. */
export const PEOPLE = Number(process.env.EBBLINE_PEOPLE ?? (LONG ? 200_000 : 2_000));
/** A file for each, so that as many cores can work. */
const SHARDS = 4;
const MINUTE = 60_000;
const TIMEOUT = LONG ? 24 * 60 * MINUTE : 3 * MINUTE;

/** The safety lines on a part of the people; each part has its own seed. */
export function safetyShard(shard: number): void {
  const numRuns = Math.ceil(PEOPLE / SHARDS);
  const seed = SEED + shard;
  describe(`safety lines on ${numRuns} of ${PEOPLE} generated people, seed ${seed}`, () => {
    test('no plan breaks a safety line, the reading moves nothing bound, and what is kept out is named', { timeout: TIMEOUT }, () => {
      const tell = progress(`safety lines, part ${shard} of ${SHARDS}`, numRuns);
      fc.assert(
        fc.property(cases, (c) => {
          const looked = READINGS.map((reading) => inputOf({ ...c, reading }));
          const plans = planEach(looked);
          for (const plan of new Set(plans)) expect(findBreaches(worldOf(c), plan)).toEqual([]);
          expectUnmoved(c, looked, plans);
          const own = READINGS.indexOf(c.reading);
          expectNamed(c, given(looked[own]), given(plans[own]));
          tell();
        }),
        { seed, numRuns },
      );
    });
  });
}

/** The plan of each input. Readings that give the same needs give the same input, which is planned once. */
function planEach(inputs: readonly ProposePlanInput[]): readonly Plan[] {
  const planned = new Map<string, Plan>();
  return inputs.map((input) => {
    const needs = JSON.stringify(input.needs);
    const plan = planned.get(needs) ?? proposePlan(input);
    planned.set(needs, plan);
    return plan;
  });
}

/** The reading starts, stops or changes no item that needs a signature, and no need but the antimicrobial one. */
function expectUnmoved(c: Case, inputs: readonly ProposePlanInput[], plans: readonly Plan[]): void {
  const bound = new Set(
    shelfOf(c)
      .filter(isSignatureBound)
      .map((item) => item.id),
  );
  const seen = plans.map((plan, at) =>
    JSON.stringify({
      lines: plan.lines.filter((l) => bound.has(l.shelfItemId) || l.state !== 'proposed'),
      alternatives: plan.alternatives.filter((a) => bound.has(a.line.shelfItemId) || a.line.state !== 'proposed'),
      needs: inputs[at]?.needs.filter((n) => n.kind !== 'antimicrobial'),
    }),
  );
  expect(new Set(seen).size, 'plans that differ by the reading in what it must not move').toBe(1);
}

/** An item that would meet a need and is kept out is named with a reason. */
function expectNamed(c: Case, input: ProposePlanInput, plan: Plan): void {
  for (const exclusion of plan.notOffered) expect(exclusion.because).not.toBe('');
  if (c.facts.allergies !== undefined) return;
  const needed = input.needs.filter((n) => n.state === 'needed');
  const named = new Set(plan.notOffered.map((x) => x.shelfItemId));
  expect(plan.lines).toEqual([]);
  for (const item of input.shelf) {
    const agent = regimenTables.agents.find((a) => a.id === item.agentId);
    const meets = needed.some(({ kind, agentIds }) => {
      const isNamed = agentIds === undefined || agentIds.flat().includes(item.agentId);
      return isNamed && item.meets.includes(kind) && agent?.meets.includes(kind);
    });
    if (meets && item.inStock) expect(named).toContain(item.id);
  }
}

function given<T>(value: T | undefined): T {
  if (value === undefined) throw new Error('a case has a reading that is none of the list');
  return value;
}

const STEPS = 20;

/** Long runs say how far they are and how long the whole will take. */
function progress(name: string, all: number): () => void {
  const started = performance.now();
  let done = 0;
  return () => {
    done += 1;
    if (!LONG || done > all || done % Math.ceil(all / STEPS) !== 0) return;
    const minutes = (performance.now() - started) / MINUTE;
    process.stderr.write(`${name}: ${done} of ${all} people in ${minutes.toFixed(1)} min, ${((minutes * all) / done).toFixed(0)} in all\n`);
  };
}
