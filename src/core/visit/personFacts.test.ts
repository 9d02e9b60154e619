import { describe, expect, test } from 'vitest';
import { questions } from '../../content/questions.ts';
import type { AnswerValue } from './answer.ts';
import { personFacts } from './personFacts.ts';

const facts = (ageYears: number, known: Record<string, AnswerValue>, items = {}) =>
  personFacts({ ageYears, ageMonths: ageYears * 12 + 3, known, items, questions });

test('nothing answered: every fact but the age is left out, never no', () => {
  expect(facts(40, {})).toEqual({ ageYears: 40, ageMonths: 483 });
  expect(Object.keys(facts(40, {}))).not.toContain('pregnant');
});

describe('pregnancy, by the ages at which it is asked', () => {
  test.each([
    [10, {}, false],
    [11, {}, undefined],
    [11, { pregnant: 'pregnant' }, true],
    [30, { pregnant: 'breastfeeding' }, false],
    [55, {}, undefined],
    [56, {}, false],
  ])('age %i, %j -> %s', (age, known, pregnant) => expect(facts(age, known as Record<string, AnswerValue>).pregnant).toBe(pregnant));

  test('breast-feeding is its own fact', () => expect(facts(30, { pregnant: 'breastfeeding' }).breastfeeding).toBe(true));
});

describe('spitting', () => {
  const none = { conditions: [], private_conditions: [] };
  test.each([
    ['a child of 6 is asked', 6, none, undefined],
    ['a child of 6 who spits', 6, { ...none, can_spit: true }, true],
    ['a recorded condition outweighs the answer', 6, { ...none, conditions: ['cannot-spit'], can_spit: true }, false],
    ['from 7 a known list of conditions settles it', 7, none, true],
    ['from 7 unknown conditions leave it unknown', 7, {}, undefined],
    ['an adult who cannot', 80, { ...none, conditions: ['cannot-spit'] }, false],
  ])('%s', (_, age, known, canSpit) => expect(facts(age, known as Record<string, AnswerValue>).canSpit).toBe(canSpit));
});

test('conditions are known only when both lists are; a private one declined is not none', () => {
  expect(facts(40, { conditions: ['asthma'] }).conditions).toBeUndefined();
  expect(facts(40, { conditions: ['asthma'], private_conditions: ['eating-disorder'] }).conditions).toEqual(['asthma', 'eating-disorder']);
});

describe('dry mouth', () => {
  const none = { conditions: [], private_conditions: [] };
  test.each([
    ['a low flow is enough', {}, { saliva_flow_reduced_measured: true }, true],
    ['a feeling is enough', { dry_mouth: 'sometimes' }, {}, true],
    ['a cause is enough', { ...none, conditions: ['sjogren'], dry_mouth: 'no' }, {}, true],
    ['"no" without known conditions settles nothing', { dry_mouth: 'no' }, {}, undefined],
    ['"no" with none of them is no', { ...none, dry_mouth: 'no' }, {}, false],
    ['unanswered is unknown', none, {}, undefined],
  ])('%s', (_, known, items, dryMouth) => expect(facts(40, known as Record<string, AnswerValue>, items).dryMouth).toBe(dryMouth));
});

test('appliances and household are three-valued', () => {
  expect(facts(40, { appliance: ['partial-denture', 'fixed-brace'], household: ['dog'] })).toMatchObject({
    dentures: true,
    braces: true,
    dogAtHome: true,
    youngChildAtHome: false,
  });
  expect(facts(40, { appliance: [] })).toMatchObject({ dentures: false, braces: false });
});

test('other fluoride at home: unknown until asked, none when asked, by name where taken', () => {
  expect(facts(40, {})).not.toHaveProperty('otherFluoride');
  expect(facts(40, { home_extras: [] }).otherFluoride).toEqual([]);
  expect(facts(40, { home_extras: ['xylitol', 'fluoridated-salt', 'fluoride-tablets-or-drops', 'other'] }).otherFluoride).toEqual([
    'fluoridated-salt',
    'fluoride-tablets-or-drops',
    'other',
  ]);
});

describe('other fluoride, in amounts', () => {
  test('amounts are taken as told, and not told they are left out', () => {
    expect(facts(5, { salt_fluoride_mg_per_kg: 250, salt_g_per_day: 3, supplement_fluoride_mg_per_day: 0.25 })).toMatchObject({
      saltFluorideMgPerKg: 250,
      saltGPerDay: 3,
      supplementFluorideMgPerDay: 0.25,
    });
    expect(Object.keys(facts(5, { home_extras: ['fluoridated-salt'] }))).not.toContain('saltGPerDay');
    expect(facts(5, { water_fluoride_mg_per_l: 0.7, water_litres_per_day: 1 })).toMatchObject({ waterLitresPerDay: 1 });
  });

  test.each([
    [{}, undefined],
    [{ professional_fluoride: 'none' }, 0],
    [{ professional_fluoride: 'other' }, 0],
    [{ professional_fluoride: 'varnish' }, undefined],
    [{ professional_fluoride: 'varnish', varnish_days_12m: 3 }, 3],
  ] as const)('varnish days of %j: %s', (known, days) => expect(facts(5, known).varnishDaysPerYear).toBe(days));

  test('gel or foam at the practice is other fluoride once the things at home are known', () => {
    expect(facts(5, { professional_fluoride: 'other', home_extras: [] }).otherFluoride).toEqual(['professional-gel']);
    expect(facts(5, { professional_fluoride: 'other' }).otherFluoride).toBeUndefined();
  });

  test.each([
    [{}, undefined],
    [{ paste_strength: '5000' }, true],
    [{ paste_strength: '1000-1500' }, false],
    [{ paste_times_per_day: 0 }, false],
  ] as const)('a strong paste in use by %j: %s', (known, inUse) => expect(facts(40, known).strongPasteInUse).toBe(inUse));
});
