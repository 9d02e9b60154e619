import { describe, expect, test } from 'vitest';
import { afterFindingReply, type FindingDraft, newFindingLine, sayFinding, sayPlace } from './findings.ts';
import type { Reply } from './line.ts';

const asked = (value: string | boolean): Reply => ({ how: 'asked', value });

function run(values: readonly (string | boolean)[]) {
  let draft: FindingDraft = {};
  const prompts: (string | undefined)[] = [];
  for (const value of values) {
    prompts.push(newFindingLine(draft).prompt);
    const next = afterFindingReply(draft, asked(value));
    if (!('draft' in next)) return { next, prompts };
    draft = next.draft;
  }
  return { next: { draft }, prompts };
}

describe('a finding, step by step', () => {
  test('white spot', () => {
    const { next } = run(['13', 'white-spot', 'facial', 'active', true]);
    expect(next).toEqual({ finding: { tooth: '13', kind: 'white-spot', surface: 'facial', activity: 'active', isNew: true } });
  });

  test('a surface not noted is absent; a restoration is not asked for activity', () => {
    const { next } = run(['46', 'restoration', 'not-noted', false]);
    expect(next).toEqual({ finding: { tooth: '46', kind: 'restoration', isNew: false } });
  });

  test('a root showing is asked for neither', () => {
    expect(run(['31', 'root-exposed', false]).next).toEqual({ finding: { tooth: '31', kind: 'root-exposed', isNew: false } });
  });
});

test.each(['19', '5', '56', '90', '131', ''])('%s is no tooth', (tooth) => {
  expect(afterFindingReply({}, asked(tooth))).toHaveProperty('problem');
});

test('said in words', () => {
  expect(sayPlace({ tooth: '13', surface: 'facial', kind: 'white-spot', isNew: true })).toBe('13, facial');
  expect(sayFinding({ tooth: '13', kind: 'white-spot', activity: 'active', isNew: true })).toBe('white spot, active');
  expect(sayFinding({ tooth: '13', kind: 'white-spot', isNew: true })).toBe('white spot');
});
