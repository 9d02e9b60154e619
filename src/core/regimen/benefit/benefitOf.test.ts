import { describe, expect, it, test } from 'vitest';
import { regimenTables as tables } from '../../../content/regimenTables.ts';
import type { ConfirmedLevel } from '../types.ts';
import { benefitOf, sayNumber } from './benefitOf.ts';
import { numberNeededToTreat, wholePeople } from './numberNeededToTreat.ts';

const at = (agentId: string, ageYears: number, level?: ConfirmedLevel['level'], protocol = 'four_level_0_5_2010') =>
  benefitOf({
    agentId,
    ageYears,
    confirmed: level && { level, protocol, edition: '1', by: 'Ines Marrow', at: '2026-11-25T10:00:00Z' },
    tables,
  })?.says.join(' ') ?? '';

describe('number needed to treat', () => {
  // de Sousa 2019 (read): risk ratio 0.88, 17 at 50 % incidence. Rinses (read): 16 at 0.25 and 2 at 2.14 surfaces a year, which implies
  // about 25 % prevented (derived). Whole people.
  test.each([
    [0.5, 0.12, 17],
    [0.25, 0.25, 16],
    [2.14, 0.25, 2],
  ])('at %f with %f prevented: %i', (baseline, prevented, published) => {
    expect(wholePeople(numberNeededToTreat(baseline, prevented) ?? 0)).toBe(published);
  });

  it('reproduces each number that the tables carry as published', () => {
    const varnish = tables.benefit.rows.find((r) => r.agentId === 'F_VARNISH' && r.belowAgeYears === 6);
    for (const { number, baseline } of varnish?.published ?? []) {
      expect(wholePeople(numberNeededToTreat(baseline, varnish?.figure.prevented?.at ?? 0) ?? 0)).toBe(number);
    }
    expect(varnish?.published).toHaveLength(1);
  });

  it('has no end where nothing is prevented, and none without a baseline', () => {
    expect(numberNeededToTreat(0.5, 0)).toBeNull();
    expect(numberNeededToTreat(0.5, -0.1)).toBeNull();
    expect(() => numberNeededToTreat(0, 0.2)).toThrow(RangeError);
    expect(() => numberNeededToTreat(Number.NaN, 0.2)).toThrow(RangeError);
    expect(() => numberNeededToTreat(0.5, 1.01)).toThrow(RangeError);
    expect(sayNumber(0.5, { at: 0.1, range: [-0.05, 0.2] })).toBe('Number needed to treat 20 (10 to no end).');
  });
});

describe('benefit at a level', () => {
  // 1 / (0.204 x 0.12), interval 0.05 to 0.19; the same at 0.306: derived.
  test.each([
    ['low', '20 in 100', 'Number needed to treat 41 (26 to 99).'],
    ['moderate', '31 in 100', 'Number needed to treat 28 (18 to 66).'],
  ] as const)('varnish under 6 at level %s', (level, baseline, number) => {
    expect(at('F_VARNISH', 4, level)).toContain(baseline);
    expect(at('F_VARNISH', 4, level)).toContain(number);
    expect(at('F_VARNISH', 4, level)).toContain('reaches no difference');
  });

  it('is not worked out where the outcome is decay that was there, is of teeth, or is not known', () => {
    expect(at('F_VARNISH', 4, 'high')).toMatch(/69 in 100.*No number needed to treat is worked out/);
    expect(at('F_VARNISH', 4, 'low', 'child_list_0_5')).toContain('No number needed to treat is worked out');
    expect(at('POLYOL_GUM', 40, 'high', 'four_level_6plus_2019')).toMatch(/1\.79 newly.*No number needed to treat/);
    expect(at('F_VARNISH', 4)).toContain('the level is not confirmed');
  });

  it('shows no figure that is from memory, in whole or in part', () => {
    expect(at('F_RINSE_005', 12, 'high')).toMatch(/^Not shown: the figure of added topical fluoride beside paste is from memory\./);
    expect(at('F_VARNISH', 12, 'high')).toBe('Not shown: the figure of varnish in permanent teeth is partly from memory.');
    for (const { figure } of tables.benefit.rows.filter((r) => r.figure.source.status !== 'read')) {
      for (const agent of tables.agents) for (const age of [4, 12, 40, 80]) expect(at(agent.id, age, 'low')).not.toContain(figure.says);
    }
  });

  it('has no figure for people whom no trial was read about', () => {
    expect(at('F_PASTE_STD', 40, 'low')).toBe('No pooled figure for this age was read.');
    expect(at('SDF38', 4, 'high')).toBe('');
  });
});
