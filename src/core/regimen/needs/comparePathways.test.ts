import { describe, expect, it, test } from 'vitest';
import { regimenTables as tables } from '../../../content/regimenTables.ts';
import type { Finding } from '../../visit/types.ts';
import type { ConfirmedLevel } from '../types.ts';
import { type ComparePathwaysInput, comparePathways } from './comparePathways.ts';

const LEVELS = ['low', 'moderate', 'high', 'extreme'] as const;
const compare = (
  ageYears: number,
  level: ConfirmedLevel['level'],
  { protocol = 'four_level_6plus_2019', ...rest }: Partial<ComparePathwaysInput> & { readonly protocol?: string } = {},
) =>
  comparePathways({
    facts: { ageYears, ageMonths: ageYears * 12 },
    confirmed: { level, protocol, edition: '1', by: 'Ines Marrow', at: '2026-11-25T10:00:00Z' },
    findings: [],
    jurisdiction: 'US',
    tables,
    ...rest,
  });
const givenBy = (comparison: ReturnType<typeof compare>, id: string) =>
  Object.fromEntries(comparison?.pathways.find((p) => p.id === id)?.gives.map(({ topic, says }) => [topic, says]) ?? []);

describe('side by side', () => {
  it('says nothing before a level is confirmed', () => {
    expect(compare(40, 'high', { confirmed: undefined })).toBeNull();
  });

  // Rows of the published pathways: read, or from memory for the four levels. Which stand for whom.
  test.each([
    [40, 'high', 'four_level_6plus_2019', ['four-level', 'topical-2013', 'toolkit-2021', 'care-table-2022']],
    [40, 'low', 'four_level_6plus_2019', ['four-level', 'toolkit-2021', 'care-table-2022']],
    [8, 'high', 'child_list_6plus', ['child-list', 'four-level', 'topical-2013', 'toolkit-2021', 'care-table-2022']],
    [8, 'high', 'scored_list_over_6', ['four-level', 'child-list', 'topical-2013', 'toolkit-2021', 'care-table-2022']],
    [4, 'moderate', 'four_level_0_5_2010', ['topical-2013', 'child-list', 'toolkit-2021', 'care-table-2022']],
    [4, 'low', 'child_list_0_5', ['child-list', 'toolkit-2021', 'care-table-2022']],
    [30, 'high', 'another-list', ['four-level', 'topical-2013', 'toolkit-2021', 'care-table-2022']],
  ] as const)('at %i years, %s, by %s', (ageYears, level, protocol, ids) => {
    const comparison = compare(ageYears, level, { protocol });
    expect(comparison?.pathways.map((p) => p.id)).toEqual(ids);
    expect(comparison?.pathways.filter((p) => p.isOwn)).toHaveLength(
      protocol === 'another-list' || (ageYears === 4 && level === 'low' && protocol !== 'child_list_0_5') ? 0 : 1,
    );
    expect(comparison?.silent.map((s) => s.name)).toHaveLength(5 - ids.length);
  });

  it('gives what each table prints', () => {
    const comparison = compare(12, 'high', { protocol: 'child_list_6plus', jurisdiction: 'UK' });
    expect(givenBy(comparison, 'child-list')).toEqual({
      'home-fluoride': 'paste or gel of 0.5 % fluoride (about 5,000 ppm)',
      'professional-fluoride': 'every 3 months; silver fluoride on cavities',
      sealing: 'yes',
      recall: '3 months',
      bitewings: '6 months',
    });
    expect(givenBy(comparison, 'toolkit-2021')['home-fluoride']).toContain('2,800 ppm');
    expect(givenBy(comparison, 'care-table-2022')['professional-fluoride']).toBe('varnish four times a year');
  });

  it('has the daily rinse of the guideline for an adult with a root lesion that is not inactive', () => {
    const roots = (activity: Finding['activity']): Finding[] => [{ tooth: '36', kind: 'root-lesion', isNew: true, activity }];
    const rinse = (findings: Finding[]) => givenBy(compare(70, 'high', { findings }), 'topical-2013')['home-fluoride'];
    expect(rinse(roots('active'))).toContain('every day');
    expect(rinse(roots('inactive'))).toContain('once a week');
    expect(rinse([])).toContain('once a week');
  });

  it('says beside what it names that the label age of the place is not reached', () => {
    const tooYoung = (ageYears: number, jurisdiction: 'UK' | 'US') =>
      compare(ageYears, 'high', { protocol: 'child_list_6plus', jurisdiction })?.pathways[0]?.gives[0]?.tooYoung;
    expect(tooYoung(15, 'UK')).toEqual(['under 16 years (C05)']);
    expect(tooYoung(16, 'UK')).toEqual([]);
    expect(tooYoung(6, 'US')).toEqual([]);
  });

  it('never names chlorhexidine without the guideline that advises against it', () => {
    const named = LEVELS.flatMap((level) => compare(40, level)?.pathways ?? []).flatMap((p) =>
      p.gives.filter((g) => g.says.includes('chlorhexidine')),
    );
    expect(named.length).toBeGreaterThan(0);
    for (const { says } of named) expect(says).toMatch(/2011 advises against chlorhexidine .* never proposed by default/);
  });
});

describe('where they differ', () => {
  it('is one sentence a topic, each pathway in it once', () => {
    for (const level of LEVELS) {
      for (const ageYears of [1, 4, 6, 9, 15, 17, 18, 80]) {
        const comparison = compare(ageYears, level);
        const names = comparison?.pathways.map((p) => p.name) ?? [];
        const topics = comparison?.differences.map((d) => d.split(':')[0]);
        expect(new Set(topics).size).toBe(topics?.length);
        for (const sentence of comparison?.differences ?? []) for (const name of names) expect(sentence.split(name)).toHaveLength(2);
      }
    }
  });

  it('groups those that say the same and names those that are silent', () => {
    const sealing = compare(12, 'high', { protocol: 'child_list_6plus' })?.differences.find((d) => d.startsWith('Sealing'));
    expect(sealing).toBe(
      'Sealing: yes (Child list table, 2022; Four-level care rows, 2007 and 2019), or not named (Topical fluoride guideline, 2013; National toolkit, 2021; Care table, 2022).',
    );
  });
});

describe('the table', () => {
  it.each(tables.pathways)('$id has at most one row for each age, level and kind of lesion', ({ rows }) => {
    for (const level of LEVELS)
      for (let age = 0; age <= 100; age++)
        for (const roots of [true, undefined]) {
          const fitting = rows.filter(
            (r) => r.levels.includes(level) && age >= r.fromAgeYears && age < r.belowAgeYears && r.withRootLesion === roots,
          );
          expect(fitting.length).toBeLessThanOrEqual(1);
        }
  });

  it('names only agents that are in the tables', () => {
    const known = new Set(tables.agents.map((a) => a.id));
    const named = tables.pathways.flatMap((p) => p.rows.flatMap((r) => Object.values(r.gives).flatMap((g) => g.agentIds ?? [])));
    expect(named.filter((id) => !known.has(id))).toEqual([]);
  });

  it('leads with the pathway that the care of the practice is taken from', () => {
    const tablesOfCare = new Set(tables.care.map((row) => row.table));
    expect([...tablesOfCare].filter((name) => !tables.pathways.some((p) => p.name === name))).toEqual([]);
  });
});
