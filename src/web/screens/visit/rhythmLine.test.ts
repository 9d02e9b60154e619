import { expect, test } from 'vitest';
import type { SaidRhythm } from '../../../core/visit/rhythmSaid.ts';
import { replyOfKey } from './keys.ts';
import { rhythmLine, rhythmOfReply } from './rhythmLine.ts';

const past = { rhythm: 'night', askedOn: '2026-03-04' } as const;
const line = (said?: SaidRhythm, before?: typeof past) =>
  rhythmLine({ said, past: before, source: { key: 'project', status: 'proposal' } });

test('one digit says how the days run', () => {
  expect(line()).toMatchObject({ text: 'not asked', tone: 'unknown', reconfirmable: false, wanted: false });
  const reply = replyOfKey('6', line());
  expect(reply?.how === 'asked' && rhythmOfReply(String(reply.value))).toBe('night');
  expect(rhythmOfReply('on the moon')).toBeUndefined();
});

test.each([
  [{ ...past, how: 'carried' }, 'night shift', 'carried', 'asked March 2026', true],
  [{ ...past, how: 'out-of-date' }, 'out of date', 'unknown', 'was night shift, March 2026', true],
  [{ rhythm: 'night', how: 'asked', askedOn: '2026-06-04' }, 'night shift', 'confirmed', 'asked today, no change', false],
  [{ rhythm: 'early', how: 'asked', askedOn: '2026-06-04' }, 'early shift', 'new', 'was night shift, March 2026', false],
] as const)('%o is said as %s', (said, text, tone, note, reconfirmable) => {
  expect(line(said, past)).toMatchObject({ text, tone, note, reconfirmable, wanted: false });
});
