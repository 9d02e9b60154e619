import { describe, expect, test } from 'vitest';
import { questions } from '../../content/questions.ts';
import type { AnswerValue } from '../visit/answer.ts';
import type { Finding } from '../visit/types.ts';
import { decideMouth } from './mouthFirst.ts';

const decide = (known: Record<string, AnswerValue>, findings: readonly Finding[] = [], ageYears = 40) =>
  decideMouth({ known, findings, ageYears, questions });
const charted: Finding = { tooth: '36', kind: 'white-spot', isNew: true };

describe('natural teeth', () => {
  test.each([
    ['has-teeth', 'level-applies', []],
    ['none', 'level-does-not-apply', ['no-natural-teeth']],
    ['implants-only', 'level-does-not-apply', ['implants-only']],
    ['none-yet', 'level-does-not-apply', ['no-teeth-yet']],
    ['overdenture-roots', 'level-with-note', ['overdenture-roots']],
  ])('%s: %s', (teeth, kind, reasons) => {
    const decision = decide({ natural_teeth: teeth }, [], 1);
    expect(decision).toMatchObject({ kind, reasons });
    expect(decision.sentences).toHaveLength(reasons.length);
  });

  test('no teeth: the sentence says that a level does not apply', () => {
    expect(decide({ natural_teeth: 'none' }).sentences[0]).toMatch(/caries level does not apply/);
  });

  test('not recorded: a level may be proposed, with a sentence; never taken as teeth in silence', () => {
    const decision = decide({});
    expect(decision).toMatchObject({ kind: 'level-with-note', reasons: [] });
    expect(decision.sentences).toEqual([expect.stringMatching(/^Natural teeth: not recorded\./)]);
    expect(decide({}, [charted])).toEqual({ kind: 'level-applies', reasons: [], sentences: [], swab: null, notAsked: [] });
  });

  test('"none" against charted teeth is a contradiction to check, and the level stands', () => {
    const decision = decide({ natural_teeth: 'none' }, [charted]);
    expect(decision).toMatchObject({ kind: 'level-with-note', reasons: [] });
    expect(decision.sentences).toEqual([expect.stringMatching(/check\.$/)]);
  });
});

test.each([
  [{ appliance: ['fixed-brace'] }, 'braces-or-retainer'],
  [{ appliance: ['bonded-retainer', 'partial-denture'] }, 'braces-or-retainer'],
  [{ conditions: ['sjogren'] }, 'lost-gland-function'],
  [{ conditions: ['asthma', 'head-neck-radiotherapy'] }, 'lost-gland-function'],
  [{ conditions: ['salivary-glands-lost'] }, 'lost-gland-function'],
])('%j: a note, %s', (known, reason) => {
  expect(decide({ natural_teeth: 'has-teeth', ...known })).toMatchObject({ kind: 'level-with-note', reasons: [reason] });
});

test('no note for what does not cover the swab site or dry the mouth', () => {
  const known = { natural_teeth: 'has-teeth', appliance: ['partial-denture'], conditions: ['asthma'] };
  expect(decide(known).kind).toBe('level-applies');
});

test('acid wear is a finding of its own, and does not stop a level', () => {
  const wear: Finding = { tooth: '11', kind: 'acid-wear', isNew: false };
  expect(decide({ natural_teeth: 'has-teeth' }, [wear])).toMatchObject({ kind: 'level-with-note', reasons: ['acid-wear'] });
});

test('acid wear is told on the whole as well as tooth by tooth; another kind of wear is not acid wear', () => {
  expect(decide({ natural_teeth: 'has-teeth', tooth_wear: 'acid-and-other' }).reasons).toEqual(['acid-wear']);
  expect(decide({ natural_teeth: 'has-teeth', tooth_wear: 'other' }).reasons).toEqual([]);
  expect(decide({ natural_teeth: 'none', tooth_wear: 'acid' }).reasons).toEqual(['no-natural-teeth']);
});

test('no teeth yet at an age when all milk teeth are through is said to be checked', () => {
  expect(decide({ natural_teeth: 'none-yet' }, [], 2).sentences).toHaveLength(1);
  expect(decide({ natural_teeth: 'none-yet' }, [], 3).sentences[1]).toMatch(/no teeth yet at 3 years: check/);
});

test('without teeth a dry mouth is still cared for, and no level waits for saliva', () => {
  const { sentences } = decide({ natural_teeth: 'none', conditions: ['sjogren'] });
  expect(sentences[1]).toMatch(/^Gland function lost.*dry mouth/);
  expect(sentences.join()).not.toMatch(/before the level/);
});

describe('where to swab', () => {
  test.each([
    [{ natural_teeth: 'none' }, 'none'],
    [{ natural_teeth: 'implants-only' }, 'none'],
    [{ natural_teeth: 'none-yet' }, 'none'],
    [{ natural_teeth: 'overdenture-roots' }, 'may-be-missing'],
    [{ natural_teeth: 'has-teeth', appliance: ['bonded-retainer'] }, 'may-be-covered'],
    [{ natural_teeth: 'has-teeth', appliance: ['fixed-brace'] }, undefined],
    [{ natural_teeth: 'has-teeth' }, undefined],
  ])('%j: %s', (known, site) => {
    expect(decide(known).swab?.site).toBe(site);
  });
});

describe('what is not asked', () => {
  const notAsked = (natural_teeth: string) => decide({ natural_teeth }).notAsked;

  test('an ordinary mouth is asked everything', () => expect(notAsked('has-teeth')).toEqual([]));

  test('without teeth: nothing of paste, fillings, pits, plaque, bitewings; still dry mouth and tobacco', () => {
    for (const teeth of ['none', 'implants-only']) {
      expect(notAsked(teeth)).toEqual(
        expect.arrayContaining(['paste_times_per_day', 'filling_recent', 'pits_deep', 'plaque_heavy', 'bitewings_last', 'sugars_at_meals']),
      );
      for (const id of ['dry_mouth', 'tobacco', 'appliance', 'saliva_look']) expect(notAsked(teeth)).not.toContain(id);
    }
  });

  test('before the first tooth: not spitting, but bottles and decay in the family', () => {
    expect(notAsked('none-yet')).toEqual(expect.arrayContaining(['can_spit', 'appliance', 'dry_mouth']));
    for (const id of ['bottle', 'family_decay_months', 'carer_decay_12m', 'weight_kg']) expect(notAsked('none-yet')).not.toContain(id);
  });

  test('roots have no pits, contacts or enamel, and no bitewings', () => {
    expect([...notAsked('overdenture-roots')].sort()).toEqual(
      ['bitewings_last', 'enamel_defects', 'filling_between_teeth', 'pits_deep', 'tooth_wear'].sort(),
    );
  });

  test('what decides the mouth is asked in every mouth that it can decide', () => {
    for (const teeth of ['none', 'implants-only', 'none-yet', 'overdenture-roots']) {
      for (const id of ['natural_teeth', 'conditions', 'medicines', 'allergies']) expect(notAsked(teeth)).not.toContain(id);
    }
  });
});

test('every id that it looks for can be answered', () => {
  const choicesOf = (id: string) => questions.find((q) => q.id === id)?.choices?.map((c) => c.id) ?? [];
  expect(choicesOf('natural_teeth')).toEqual(['has-teeth', 'none', 'implants-only', 'overdenture-roots', 'none-yet']);
  expect(choicesOf('appliance')).toEqual(expect.arrayContaining(['fixed-brace', 'bonded-retainer']));
  expect(choicesOf('tooth_wear')).toEqual(['none', 'acid', 'other', 'acid-and-other']);
  expect(choicesOf('conditions')).toEqual(expect.arrayContaining(['sjogren', 'head-neck-radiotherapy', 'salivary-glands-lost']));
});
