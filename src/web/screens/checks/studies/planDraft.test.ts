import { describe, expect, test } from 'vitest';
import { testMeter } from '../../../../../test/testMeter.ts';
import { readingNoise } from '../../../../content/readingNoise.ts';
import { blendNoise } from '../../../../core/reading/blendNoise.ts';
import type { Meter } from '../../../../core/reading/types.ts';
import { buildPlan, findProblems, type PlanDraft, wishOf } from './planDraft.ts';
import { sayPlannedWidths, saySize, sayThought, sayWidth } from './sayPlan.ts';
import { sizeStudy } from './sizeStudy.ts';

const meter: Meter = { ...testMeter, id: 'm', cvAnalytical: 0.25, cvWithinPerson: 0.35 };
const noise = blendNoise(readingNoise, meter);
const draft: PlanDraft = {
  kind: 'hands',
  meterId: 'm',
  hands: ['Ines', 'Tomas', 'Una'],
  lotIds: ['l1'],
  newMeterId: '',
  of: 'swabs',
  width: '20',
  mostSwabs: '24',
};
const sizing = { reached: true, parts: 3, repeats: 2, swabs: 18, widths: {} };

test('nothing is searched for while a line needs a look, and each line says why', () => {
  expect(findProblems(draft)).toEqual({});
  const wrong = { ...draft, hands: ['Ines'], width: 'wide', mostSwabs: '3' };
  expect(Object.keys(findProblems(wrong))).toEqual(['hands', 'width', 'mostSwabs']);
  expect(wishOf(wrong, noise)).toBeNull();
  expect(findProblems({ ...draft, kind: 'lots' })).toMatchObject({ hands: /./, lotIds: /two lots/ });
  expect(findProblems({ ...draft, kind: 'meters', hands: ['Ines'], newMeterId: 'm' })).toMatchObject({ newMeterId: /second meter/ });
});

test('the wish takes measured noise where there is some, and the assumed one else', () => {
  expect(wishOf(draft, noise)).toMatchObject({ kind: 'hands', hands: 3, width: 0.2, mostSwabs: 24 });
  expect(wishOf(draft, noise)?.noise.operator).toBeCloseTo(Math.log1p(0.15 ** 2), 6);
  expect(sayThought('hands', noise)).toMatch(/^Reckoned with one swab after another 25 % \(assumed\) and hands 15 % \(assumed\)\./);
});

describe('a plan says what it takes, and what would help where the wish is out of reach', () => {
  const say = (part: Partial<PlanDraft>) => {
    const wish = wishOf({ ...draft, ...part }, noise);
    if (!wish) throw new Error('no wish');
    const sized = sizeStudy(wish);
    return [saySize(wish, sized), ...sayWidth(wish, sized), sayPlannedWidths(wish, sized)].join(' ');
  };
  test('people from day to day', () => {
    const one = { kind: 'paired-days', of: 'days', hands: ['Ines'] } as const;
    expect(say({ ...one, width: '30', mostSwabs: '60' })).toMatch(
      /^\d+ people, each swabbed on two days: \d+ swabs\. The 95 % interval .* 30 percentage points were wanted\./,
    );
    expect(say({ ...one, width: '5' })).toMatch(
      /out of reach with 24 swabs\. The best is about \d+ percentage points\. Only more people would narrow it\./,
    );
  });
  test('lots', () => {
    const lots = { kind: 'lots', hands: ['Ines'], lotIds: ['l1', 'l2'], of: 'lots', width: '30' } as const;
    expect(say(lots)).toMatch(/Only more lots would narrow it, more swabs would not\. (About \d+ lots|Even 12 lots)/);
  });
  test('two lots beside each other', () => {
    const pair = { kind: 'new-lot', hands: ['Ines'], lotIds: ['l1', 'l2'], of: 'ratio', width: '20' } as const;
    expect(say({ ...pair, width: '60', mostSwabs: '60' })).toMatch(
      /read once with both lots: \d+ swabs\. Where both lots read alike, .* 8 times in 10\./,
    );
    expect(say(pair)).toMatch(/24 swabs are too few .* That takes about \d+ swabs\. More swabs or a wider limit would help\./);
  });
});

describe('the run sheet', () => {
  test('is the same for the same seed, numbered in its order, each swab once', () => {
    const plan = buildPlan(draft, sizing, 7);
    expect(plan).toEqual(buildPlan(draft, sizing, 7));
    expect(plan.runs).not.toEqual(buildPlan(draft, sizing, 8).runs);
    expect(plan.runs.map(({ index }) => index)).toEqual(Array.from({ length: 18 }, (_, i) => i));
    expect(new Set(plan.runs.map(({ part, operator, replicate }) => `${part} ${operator} ${replicate}`)).size).toBe(18);
    expect(plan.design).toMatchObject({ medium: 'atp-solution', parts: 3, replicates: 2, seed: 7, wantedRatio: 1.1 });
  });
  test('people stand on it under numbers, and one member takes them all', () => {
    const { runs, design } = buildPlan({ ...draft, kind: 'paired-days', hands: ['Ines'] }, { ...sizing, parts: 4 }, 1);
    expect(design.medium).toBe('people');
    expect(runs.slice(3, 5)).toMatchObject([
      { index: 3, part: 'Person 4', operator: 'Ines', replicate: 1 },
      { index: 4, part: 'Person 1', operator: 'Ines', replicate: 2 },
    ]);
  });
  test('two meters read each solution one right after the other', () => {
    const { runs, design } = buildPlan(
      { ...draft, kind: 'meters', hands: ['Ines'], newMeterId: 'n' },
      { ...sizing, parts: 6, repeats: 1 },
      1,
    );
    expect(design.wantedRatio).toBe(1.2);
    for (let i = 0; i < runs.length; i += 2) {
      expect(runs[i]?.part).toBe(runs[i + 1]?.part);
      expect(new Set([runs[i]?.meterId, runs[i + 1]?.meterId])).toEqual(new Set(['m', 'n']));
    }
    expect(new Set(runs.filter((_, i) => i % 2 === 0).map(({ meterId }) => meterId)).size).toBe(2);
  });
});
