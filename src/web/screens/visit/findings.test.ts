import { describe, expect, test } from 'vitest';
import type { Finding } from '../../../core/visit/types.ts';
import { afterFindingReply, type FindingDraft, isTooth, NO_TOOTH, newFindingLine, sayFinding, sayPlace } from './findings.ts';
import { replyOfKey } from './keys.ts';
import type { Reply } from './line.ts';

const asked = (value: string): Reply => ({ how: 'asked', value });

/** Keys as they are pressed after the one that opens the line: two digits for the tooth, then one key for each step. */
function press(keys: string, start: FindingDraft = {}, findings: readonly Finding[] = []) {
  let draft = start;
  let count = 1;
  const steps = draft.tooth === undefined ? [keys.slice(0, 2), ...keys.slice(2)] : [...keys];
  for (const step of steps) {
    count += step.length;
    const line = newFindingLine(draft, findings);
    const reply = line.entry.kind === 'tooth' ? asked(step) : replyOfKey(step, line);
    if (!reply) throw new Error(`${step} is no answer to "${line.prompt}"`);
    const next = afterFindingReply(draft, reply, findings);
    if (!('draft' in next)) return { next, count };
    draft = next.draft;
  }
  return { next: { draft }, count };
}

const MOST_KEYS = 6;

describe('six keys or fewer, the one that opens it among them', () => {
  test.each<[string, string, Finding]>([
    ['new white spot, active', '13411', { tooth: '13', surface: 'facial', kind: 'white-spot', activity: 'active', isNew: true }],
    ['new cavity, inactive', '36122', { tooth: '36', surface: 'occlusal', kind: 'cavity', activity: 'inactive', isNew: true }],
    ['lesion of a milk tooth', '85323', { tooth: '85', surface: 'distal', kind: 'cavity', activity: 'not-assessed', isNew: true }],
    ['seen before, inactive', '11415', { tooth: '11', surface: 'facial', kind: 'white-spot', activity: 'inactive', isNew: false }],
    [
      'in dentine on a radiograph',
      '26231',
      { tooth: '26', surface: 'mesial', kind: 'dentine-radiograph', activity: 'active', isNew: true },
    ],
    [
      'in enamel on a radiograph',
      '26343',
      { tooth: '26', surface: 'distal', kind: 'enamel-radiograph', activity: 'not-assessed', isNew: true },
    ],
    ['root lesion', '33651', { tooth: '33', surface: 'root', kind: 'root-lesion', activity: 'active', isNew: true }],
    ['recent restoration', '4626', { tooth: '46', surface: 'mesial', kind: 'restoration', isNew: true }],
    ['older restoration, surface not noted', '4677', { tooth: '46', kind: 'restoration', isNew: false }],
    ['defective restoration', '4618', { tooth: '46', surface: 'occlusal', kind: 'restoration-defective', isNew: true }],
    ['root showing', '3169', { tooth: '31', surface: 'root', kind: 'root-exposed', isNew: true }],
    ['acid wear of one tooth', '1150', { tooth: '11', surface: 'lingual', kind: 'acid-wear', isNew: true }],
  ])('%s: %s', (_, keys, finding) => {
    const { next, count } = press(keys);
    expect(next).toEqual({ finding });
    expect(count).toBeLessThanOrEqual(MOST_KEYS);
  });
});

test('every kind of finding can be keyed, and every surface', () => {
  const kinds = new Set(
    [...'1234567890'].map((kind) => press(`367${kind}1`).next).flatMap((n) => ('finding' in n ? [n.finding.kind] : [])),
  );
  expect(kinds.size).toBe(9);
  const surfaces = [...'123456'].map((surface) => press(`36${surface}6`).next);
  expect(surfaces.map((n) => 'finding' in n && n.finding.surface)).toEqual(['occlusal', 'mesial', 'distal', 'facial', 'lingual', 'root']);
});

test.each(['1', '4'])('on a root, what is seen in enamel is refused and nothing is lost (%s)', (kind) => {
  const draft = { tooth: '33', surface: 'root' };
  expect(press(kind, draft).next).toEqual({ problem: expect.stringMatching(/On a root: root lesion/) });
});

test.each(['19', '5', '56', '90', '131', '', '08', '49'])('%s is no tooth', (tooth) => {
  expect(isTooth(tooth)).toBe(false);
  expect(afterFindingReply({}, asked(tooth))).toEqual({ problem: NO_TOOTH });
});
test.each(['11', '18', '48', '51', '55', '85'])('%s is a tooth', (tooth) => expect(isTooth(tooth)).toBe(true));

describe('a finding that is there already, by its tooth', () => {
  const findings: readonly Finding[] = [
    { tooth: '36', surface: 'distal', kind: 'restoration', isNew: false },
    { tooth: '36', surface: 'mesial', kind: 'cavity', activity: 'active', isNew: true },
    { tooth: '13', surface: 'facial', kind: 'white-spot', isNew: false },
  ];

  test('one finding: opened at once; several: one more key', () => {
    expect(press('13', { isChange: true }, findings).next).toEqual({ open: 'finding 2' });
    expect(press('362', { isChange: true }, findings).next).toEqual({ open: 'finding 1' });
    expect(newFindingLine({ isChange: true, tooth: '36' }, findings).entry).toMatchObject({
      choices: [{ label: 'distal, restoration' }, { label: 'mesial, cavity, active' }],
    });
  });

  test('none: said, with what to do instead', () => {
    expect(press('11', { isChange: true }, findings).next).toEqual({ problem: expect.stringMatching(/Nothing is noted at 11/) });
  });
});

test('said in words', () => {
  expect(sayPlace({ tooth: '13', surface: 'facial', kind: 'white-spot', isNew: true })).toBe('13, facial');
  expect(sayFinding({ tooth: '13', kind: 'white-spot', activity: 'active', isNew: true })).toBe('white spot, active');
  expect(sayFinding({ tooth: '13', kind: 'white-spot', isNew: true })).toBe('white spot');
});
