import { describe, expect, test } from 'vitest';
import { questions } from '../../content/questions.ts';
import type { AnswerValue } from '../visit/answer.ts';
import type { Finding } from '../visit/types.ts';
import { decideMouth } from './mouthFirst.ts';

const decide = (known: Record<string, AnswerValue>, findings: readonly Finding[] = []) => decideMouth({ known, findings });
const charted: Finding = { tooth: '36', kind: 'white-spot', isNew: true };

describe('natural teeth', () => {
  test.each([
    ['has-teeth', 'level-applies', []],
    ['none', 'level-does-not-apply', ['no-natural-teeth']],
    ['implants-only', 'level-does-not-apply', ['implants-only']],
    ['none-yet', 'level-does-not-apply', ['no-teeth-yet']],
    ['overdenture-roots', 'level-with-note', ['overdenture-roots']],
  ])('%s: %s', (teeth, kind, reasons) => {
    const decision = decide({ natural_teeth: teeth });
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
    expect(decide({}, [charted])).toEqual({ kind: 'level-applies', reasons: [], sentences: [] });
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

test('every id that it looks for can be answered', () => {
  const choicesOf = (id: string) => questions.find((q) => q.id === id)?.choices?.map((c) => c.id) ?? [];
  expect(choicesOf('natural_teeth')).toEqual(['has-teeth', 'none', 'implants-only', 'overdenture-roots', 'none-yet']);
  expect(choicesOf('appliance')).toEqual(expect.arrayContaining(['fixed-brace', 'bonded-retainer']));
  expect(choicesOf('conditions')).toEqual(expect.arrayContaining(['sjogren', 'head-neck-radiotherapy', 'salivary-glands-lost']));
});
