import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { allItems, cases, planOf } from './safetyCases.ts';
import { SEED } from './safetyShard.ts';

describe(`the people of the safety lines, seed ${SEED}`, () => {
  test('the same input gives the same plan', () => {
    fc.assert(
      fc.property(cases, (c) => {
        expect(JSON.stringify(planOf(c))).toBe(JSON.stringify(planOf(c)));
      }),
      { seed: SEED, numRuns: 300 },
    );
  });

  test('the people and shelves reach every kind of pack, state and safety line, so that the tests look at something', () => {
    const seen = new Map<string, number>();
    const count = (key: string) => seen.set(key, (seen.get(key) ?? 0) + 1);
    for (const c of fc.sample(cases, { seed: SEED, numRuns: 2_000 })) {
      const plan = planOf(c);
      const agentOf = (id: string) => allItems.find((i) => i.id === id)?.agentId ?? '';
      for (const line of plan.lines) count(`${agentOf(line.shelfItemId)} ${line.state}`);
      for (const exclusion of plan.notOffered) count(`${exclusion.ruleId} ${exclusion.level}`);
      if (plan.lines.some((l) => l.warnings.some((w) => w.text.startsWith('Lifted')))) count('a stop lifted by a signature');
      if (plan.fluoride.complete) count('fluoride complete');
      count(`food ${plan.diet.allowed}`);
    }
    const wanted = [
      'F_PASTE_STD proposed',
      'F_PASTE_5000 waiting-for-signature',
      'F_PASTE_5000 signed',
      'F_PASTE_2800 signed',
      'F_RINSE_005 proposed',
      'F_VARNISH proposed',
      'XYLITOL proposed',
      'POLYOL_GUM proposed',
      'CHX_RINSE signed',
      'NAOCL signed',
      'ESSENTIAL_OILS proposed',
      'a stop lifted by a signature',
      'fluoride complete',
      'food any',
      'food after-only',
      'food sweet-bottle-only',
      ...[
        'C02',
        'C03',
        'C05',
        'C06',
        'C07',
        'C16',
        'C17',
        'C20',
        'C28',
        'C28b',
        'C30',
        'P01',
        'P04',
        'P09',
        'P10',
        'P12',
        'I02',
        'I03',
        'I13',
      ].map((id) => `${id} stop`),
      ...['P02', 'C31'].map((id) => `${id} caution`),
      ...['C34', 'P06', 'P09', 'P11', 'P12'].map((id) => `${id} ask-first`),
    ];
    expect(wanted.filter((key) => !seen.has(key))).toEqual([]);
    if (process.env.EBBLINE_COUNTS === '1') console.log([...seen].sort());
  });
});
