import fc from 'fast-check';
import { describe, expect, it, test } from 'vitest';
import { regimenTables as tables } from '../../content/regimenTables.ts';
import type { RiskResult } from '../risk/types.ts';
import type { Finding } from '../visit/types.ts';
import { type FindNeedsInput, findNeeds } from './findNeeds.ts';
import type { ConfirmedLevel, NeedKind, PersonFacts } from './types.ts';

const facts: PersonFacts = { ageYears: 40, ageMonths: 480, conditions: [], medicines: [], allergies: [], dryMouth: false };
const confirmed = (level: ConfirmedLevel['level'], protocol = 'four_level_6plus_2019'): ConfirmedLevel => ({
  level,
  protocol,
  edition: '1',
  by: 'Ines Marrow',
  at: '2026-11-25T10:00:00Z',
});
const input: FindNeedsInput = { facts, result: null, findings: [], jurisdiction: 'US', tables };
const stateOf = (kind: NeedKind, rest: Partial<FindNeedsInput> = {}) =>
  findNeeds({ ...input, ...rest }).find((n) => n.kind === kind)?.state;
const finding = (kind: Finding['kind'], rest: Partial<Finding> = {}): Finding => ({ tooth: '36', kind, isNew: true, ...rest });
const LEVEL_KINDS = ['fluoride-extra', 'professional-fluoride', 'antimicrobial', 'sweetener', 'calcium-phosphate', 'sealing'] as const;

describe('by confirmed level', () => {
  // Rows of the four-level care table (memory) and of the child list (read). n needed, u undecided, - not needed.
  test.each([
    ['four_level_6plus_2019', 'low', '-----u'],
    ['four_level_6plus_2019', 'moderate', 'nn-n-u'],
    ['four_level_6plus_2019', 'high', 'nnun-u'],
    ['four_level_6plus_2019', 'extreme', 'nnunnu'],
    ['scored_list_over_6', 'high', 'nnun-u'],
    ['child_list_6plus', 'low', '-----u'],
    ['child_list_6plus', 'moderate', '-n---u'],
    ['child_list_6plus', 'high', 'nn---u'],
  ] as const)('%s, %s', (protocol, level, states) => {
    const needs = findNeeds({ ...input, confirmed: confirmed(level, protocol) });
    const letter = { needed: 'n', undecided: 'u', 'not-needed': '-' };
    expect(LEVEL_KINDS.map((kind) => letter[needs.find((n) => n.kind === kind)?.state ?? 'not-needed']).join('')).toBe(states);
  });

  it('says nothing of the level before it is confirmed, save what holds at every level', () => {
    const needs = findNeeds(input);
    expect(needs.find((n) => n.kind === 'fluoride-base')?.state).toBe('needed');
    for (const kind of LEVEL_KINDS) {
      expect(needs.find((n) => n.kind === kind)).toMatchObject({ state: 'undecided', because: 'Level not confirmed yet.' });
    }
  });

  it('carries the status of the row: memory for four levels, read for the child list', () => {
    const status = (protocol: string) =>
      findNeeds({ ...input, confirmed: confirmed('high', protocol) }).find((n) => n.kind === 'professional-fluoride')?.sources[0]?.status;
    expect(status('four_level_6plus_2019')).toBe('memory');
    expect(status('child_list_6plus')).toBe('read');
  });

  it('leaves a list without a table of care open, and names the table that it used', () => {
    expect(stateOf('fluoride-extra', { confirmed: confirmed('high', 'another-list') })).toBe('undecided');
    const because = findNeeds({ ...input, confirmed: confirmed('high', 'scored_list_over_6') }).find(
      (n) => n.kind === 'fluoride-extra',
    )?.because;
    expect(because).toBe('Confirmed level high: added by Four-level care rows, 2007 and 2019.');
  });

  it('has no extra fluoride, antimicrobial or sweetener for small children', () => {
    const small = (ageYears: number) => ({
      facts: { ...facts, ageYears, ageMonths: ageYears * 12 },
      confirmed: confirmed('high', 'four_level_0_5_2010'),
    });
    expect(stateOf('fluoride-extra', small(5))).toBe('not-needed');
    expect(stateOf('antimicrobial', { ...small(5), reading: { counted: true, verdict: 'above' } })).toBe('not-needed');
    expect(stateOf('sweetener', small(4))).toBe('not-needed');
    expect(stateOf('professional-fluoride', small(2))).toBe('needed');
  });

  it('gives varnish to every child of 3 to 17 in the UK', () => {
    const at = (ageYears: number, jurisdiction: 'UK' | 'US') =>
      stateOf('professional-fluoride', {
        facts: { ...facts, ageYears, ageMonths: ageYears * 12 },
        confirmed: confirmed('low'),
        jurisdiction,
      });
    expect([at(8, 'UK'), at(17, 'UK'), at(18, 'UK'), at(8, 'US')]).toEqual(['needed', 'needed', 'not-needed', 'not-needed']);
  });
});

describe('the reading speaks to the antimicrobial question alone', () => {
  test.each([
    ['high', { counted: true, verdict: 'above' }, 'needed'],
    ['high', { counted: true, verdict: 'below' }, 'not-needed'],
    ['high', { counted: true, verdict: 'too-close' }, 'undecided'],
    ['high', { counted: false, verdict: 'above' }, 'undecided'],
    ['high', { counted: true }, 'undecided'],
    ['high', undefined, 'undecided'],
    ['low', { counted: true, verdict: 'above' }, 'undecided'],
    ['low', undefined, 'not-needed'],
    ['low', { counted: true, verdict: 'too-close' }, 'undecided'],
    ['low', { counted: false, state: 'void' }, 'undecided'],
    ['high', { counted: false, state: 'void' }, 'undecided'],
    ['low', { counted: false, state: 'not-taken' }, 'not-needed'],
    ['low', { counted: false, state: 'failed' }, 'not-needed'],
  ] as const)('level %s, %j: %s', (level, reading, expected) => {
    expect(stateOf('antimicrobial', { confirmed: confirmed(level), reading })).toBe(expected);
  });

  test('and to nothing else, whatever the person, the level and the reading', () => {
    const reading = fc.option(
      fc.record({
        counted: fc.boolean(),
        verdict: fc.constantFrom('above', 'below', 'too-close', undefined),
        state: fc.constantFrom('valid', 'flagged', 'void', 'failed', 'not-taken', undefined),
      }),
      { nil: undefined },
    );
    const maybe = fc.constantFrom(true, false, undefined);
    const ageYears = fc.oneof(fc.constantFrom(0, 2, 4, 5, 6, 9, 10, 17, 18), fc.integer({ min: 0, max: 100 }));
    const person = fc.record({
      ageYears,
      dryMouth: maybe,
      conditions: fc.option(fc.subarray(['reflux', 'sjogren', 'head-neck-radiotherapy', 'eating-disorder']), { nil: undefined }),
    });
    const level = fc.option(fc.constantFrom('low', 'moderate', 'high', 'extreme'), { nil: undefined });
    const list = fc.constantFrom('four_level_6plus_2019', 'four_level_0_5_2010', 'child_list_6plus', 'another-list');
    const kinds = fc.subarray(['root-lesion', 'white-spot', 'cavity', 'acid-wear'] as const);
    const others = (whole: FindNeedsInput) => findNeeds(whole).filter(({ kind }) => kind !== 'antimicrobial');
    fc.assert(
      fc.property(person, level, list, kinds, reading, reading, (who, at, protocol, seen, one, other) => {
        const whole: FindNeedsInput = {
          ...input,
          facts: { ...facts, ...who, ageMonths: who.ageYears * 12 },
          confirmed: at && confirmed(at, protocol),
          findings: seen.map((kind) => finding(kind)),
        };
        expect(others({ ...whole, reading: one })).toEqual(others({ ...whole, reading: other }));
        const open = findNeeds({ ...whole, reading: { counted: true, verdict: 'too-close' } }).find((n) => n.kind === 'antimicrobial');
        if (who.ageYears >= 6) expect(open?.state).toBe('undecided');
      }),
      { numRuns: 300, seed: 20_261_126 },
    );
  });
});

describe('by finding and fact', () => {
  it('prefers high-fluoride paste for a root lesion that is not inactive', () => {
    const at = (activity: Finding['activity']) =>
      stateOf('fluoride-extra', { confirmed: confirmed('low'), findings: [finding('root-lesion', { activity })] });
    expect([at('active'), at('not-assessed'), at(undefined), at('inactive')]).toEqual(['needed', 'needed', 'needed', 'not-needed']);
  });

  it('puts daily paste of about 5,000 ppm first on roots, and names silver fluoride nowhere', () => {
    const needs = findNeeds({ ...input, confirmed: confirmed('high'), findings: [finding('root-lesion', { activity: 'active' })] });
    expect(needs.find((n) => n.kind === 'fluoride-extra')).toMatchObject({
      agentIds: [['F_PASTE_5000'], ['F_PASTE_2800']],
      sources: [{ key: 'slayton2018', status: 'read' }],
    });
    expect(needs.flatMap((n) => n.agentIds?.flat() ?? [])).not.toContain('SDF38');
  });

  it('seals an early chewing-surface lesion at any level, and deep pits from moderate on', () => {
    expect(stateOf('sealing', { findings: [finding('white-spot', { surface: 'occlusal' })] })).toBe('needed');
    expect(stateOf('sealing', { findings: [finding('white-spot', { surface: 'facial' })] })).toBe('undecided');
    const pits = (level: ConfirmedLevel['level'], deep: boolean | undefined) =>
      stateOf('sealing', { confirmed: confirmed(level), items: { pits_fissures_deep: deep } });
    expect([pits('moderate', true), pits('low', true), pits('moderate', false), pits('moderate', undefined)]).toEqual([
      'needed',
      'undecided',
      'not-needed',
      'undecided',
    ]);
  });

  it('keeps three kinds of dry mouth apart', () => {
    const dry = (rest: Partial<PersonFacts>) => stateOf('saliva', { facts: { ...facts, ...rest } });
    expect([dry({ dryMouth: true }), dry({ conditions: ['sjogren'] }), dry({ dryMouth: undefined }), dry({})]).toEqual([
      'needed',
      'needed',
      'undecided',
      'not-needed',
    ]);
  });

  it('reads food from the items, or from the drivers where there are none', () => {
    expect(stateOf('diet', { items: { snacks_between_meals_per_day: 4 } })).toBe('needed');
    expect(stateOf('diet', { items: { snacks_between_meals_per_day: 3 } })).toBe('not-needed');
    expect(stateOf('diet', { items: {} })).toBe('undecided');
    expect(stateOf('diet', { items: { snacks_between_meals_per_day: 0, bottle_sugared_fluid: true } })).toBe('needed');
    expect(stateOf('diet', { items: { snacks_between_meals_per_day: 0, sugars_mainly_at_meals: false } })).toBe('needed');
    const driver = {
      item: 'snacks_between_meals_per_day',
      role: 'risk',
      decisive: false,
      changeable: true,
      source: { key: 'project', status: 'proposal' },
    } as const;
    expect(stateOf('diet', { result: { drivers: [driver], missing: [] } as unknown as RiskResult })).toBe('needed');
  });

  it('advises on acid wear apart, and refers without naming a private matter', () => {
    expect(stateOf('acid-wear-advice', { findings: [finding('acid-wear')] })).toBe('needed');
    expect(stateOf('acid-wear-advice')).toBeUndefined();
    const needs = findNeeds({ ...input, facts: { ...facts, conditions: ['eating-disorder'] }, findings: [finding('cavity')] });
    const referrals = needs.filter((n) => n.kind === 'referral').map((n) => n.because);
    expect(referrals).toHaveLength(2);
    expect(referrals.join(' ')).not.toMatch(/eating|disorder/i);
  });
});

describe('mouths without teeth', () => {
  it.each(['no-natural-teeth', 'implants-only', 'no-teeth-yet'] as const)('%s: no need against decay, and a referral', (reason) => {
    const needs = findNeeds({
      ...input,
      confirmed: confirmed('high'),
      mouth: { reasons: [reason] },
      reading: { counted: true, verdict: 'above' },
    });
    expect(needs.filter((n) => n.kind !== 'referral' && n.kind !== 'saliva').every((n) => n.state === 'not-needed')).toBe(true);
    expect(needs.some((n) => n.kind === 'referral')).toBe(true);
  });

  it('roots under an overdenture need what teeth need', () => {
    expect(stateOf('fluoride-base', { mouth: { reasons: ['overdenture-roots'] } })).toBe('needed');
  });
});

describe('radiotherapy of head or neck', () => {
  const irradiated = (ageYears: number): PersonFacts => ({ ...facts, ageYears, conditions: ['head-neck-radiotherapy'] });

  it.each([
    [10, 'needed'],
    [9, 'undecided'],
  ])('at %i years, before any level: high-fluoride paste %s', (ageYears, state) => {
    expect(stateOf('fluoride-extra', { facts: irradiated(ageYears) })).toBe(state);
  });

  it('refers for medicines that make saliva', () => {
    expect(findNeeds({ ...input, facts: irradiated(50) }).filter((n) => n.kind === 'referral')).toHaveLength(1);
  });
});

it.each([
  ['no-natural-teeth', /Dentures/],
  ['implants-only', /outside this record/],
  ['no-teeth-yet', /first tooth/],
] as const)('%s: a referral of its own', (reason, words) => {
  expect(findNeeds({ ...input, mouth: { reasons: [reason] } }).find((n) => n.kind === 'referral')?.because).toMatch(words);
});
