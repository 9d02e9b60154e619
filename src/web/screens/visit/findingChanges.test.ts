import { describe, expect, test } from 'vitest';
import { FindingSchema } from '../../../api/visitSchema.ts';
import type { Finding } from '../../../core/visit/types.ts';
import { findingLines, findingsAfter } from './findingChanges.ts';
import { replyOfKey } from './keys.ts';

const spot: Finding = { tooth: '13', surface: 'facial', kind: 'white-spot', activity: 'active', isNew: false };
const filling: Finding = { tooth: '36', surface: 'distal', kind: 'restoration', isNew: false };
const after = (finding: Finding, change: string) => findingsAfter([filling, finding], 'finding 1', change)?.slice(1);

describe('what became of a finding', () => {
  test.each<[string, Finding, string, readonly Finding[]]>([
    ['arrested', spot, 'inactive', [{ ...spot, activity: 'inactive' }]],
    [
      'now a cavity: new, and its activity is not taken over',
      spot,
      'cavity',
      [{ ...spot, kind: 'cavity', activity: 'not-assessed', isNew: true }],
    ],
    ['restored: a recent restoration', spot, 'restored', [{ tooth: '13', surface: 'facial', kind: 'restoration', isNew: true }]],
    ['new after all', spot, 'newness', [{ ...spot, isNew: true }]],
    ['entered in error', spot, 'out', []],
    ['a restoration fails', filling, 'defective', [{ ...filling, kind: 'restoration-defective', isNew: true }]],
    [
      'decay beside a restoration: both stand',
      filling,
      'decay-beside',
      [filling, { ...filling, kind: 'cavity', activity: 'not-assessed', isNew: true }],
    ],
  ])('%s', (_, finding, change, becomes) => {
    expect(after(finding, change)).toEqual(becomes);
  });

  test('the others stay; another line or a change that does not fit changes nothing', () => {
    expect(findingsAfter([filling, spot], 'finding 1', 'out')).toEqual([filling]);
    expect(findingsAfter([filling, spot], 'plaque_heavy', 'out')).toBeUndefined();
    expect(findingsAfter([filling, spot], 'finding 0', 'cavity')).toBeUndefined();
    expect(findingsAfter([filling], 'finding 1', 'out')).toBeUndefined();
  });
});

const KINDS = FindingSchema.shape.kind.options;

test.each(KINDS)('%s: each change has a key, gives findings that can be saved, and the way out is among them', (kind) => {
  const finding: Finding = { tooth: '36', surface: 'distal', kind, isNew: false };
  const [line] = findingLines([finding], ['a']);
  if (line?.entry.kind !== 'choice') throw new Error('not a choice');
  expect(line.entry.choices.length).toBeLessThanOrEqual(10);
  line.entry.choices.forEach((choice, i) => {
    expect(replyOfKey(i === 9 ? '0' : String(i + 1), line)).toEqual({ how: 'asked', value: choice.id });
    for (const one of findingsAfter([finding], 'finding 0', choice.id) ?? [null]) expect(FindingSchema.safeParse(one).success).toBe(true);
  });
  expect(line.entry.choices.at(-1)?.label).toMatch(/take it out/);
});

test('letters go to what is looked at, not to old restorations; when they run out the tooth still finds it', () => {
  expect(findingLines([filling, spot, { ...spot, tooth: '14' }], ['a']).map((l) => l.letter)).toEqual(['', 'a', '']);
});
