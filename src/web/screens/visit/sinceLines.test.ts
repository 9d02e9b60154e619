import { expect, test } from 'vitest';
import { sayDropped, sinceField, sinceLines } from './sinceLines.ts';

const paste = { shelfItemId: 'paste', name: 'Paste', since: '2026-05-09' };
const rinse = {
  shelfItemId: 'rinse',
  name: 'Rinse',
  since: '2026-05-09',
  until: '2026-07-01',
  adherence: 'stopped',
  stopReason: 'taste',
} as const;
const gum = { shelfItemId: 'gum', name: 'Gum', since: '2026-05-09', turnedDown: 'declined', stopReason: 'time' } as const;
const goal = { id: 'g1', text: 'keep my own teeth', since: '2026-05-09' };

test('nothing was agreed before: nothing is asked', () => {
  expect(sinceLines({}, ['a'])).toEqual([]);
  expect(sinceLines({ pastCare: [rinse, gum] }, ['a'])).toEqual([]);
});

test('each item and each goal wants one key, and less than agreed also a reason', () => {
  const lines = sinceLines({ pastCare: [paste], pastGoals: [goal], used: { paste: { adherence: 'less-often' } } }, ['a', 'b']);
  expect(lines.map(({ id, letter, text, wanted }) => [id, letter, text, wanted])).toEqual([
    ['used paste', 'a', 'less often', false],
    ['used-why paste', '', 'not asked', true],
    ['goal g1', 'b', 'not asked', true],
  ]);
  expect(sinceLines({ pastCare: [paste], used: { paste: { adherence: 'as-agreed' } } }, ['a'])).toHaveLength(1);
  expect(sinceLines({ pastCare: [paste], used: { paste: { adherence: 'does-not-know' } } }, ['a'])[0]).toMatchObject({
    text: 'does not know',
  });
});

test('"other" asks for its words, and words of the person stand as they are', () => {
  const whyOf = (why: string) => sinceLines({ pastCare: [paste], used: { paste: { adherence: 'stopped', why } } }, [])[1];
  expect(whyOf('other')).toMatchObject({ entry: { kind: 'text' }, wanted: true });
  expect(whyOf('my sister said so')).toMatchObject({ entry: { kind: 'text' }, text: 'my sister said so', wanted: false });
  expect(whyOf('taste')).toMatchObject({ entry: { kind: 'choice' }, text: 'taste' });
});

test('what is saved', () => {
  const used = { gum: { adherence: 'as-agreed' } } as const;
  const asked = (value: string) => ({ how: 'asked', value }) as const;
  expect(sinceField('used paste', asked('stopped'), { used })).toEqual({
    path: 'used',
    value: { ...used, paste: { adherence: 'stopped' } },
  });
  expect(sinceField('used-why gum', asked('taste'), { used })?.value).toEqual({ gum: { adherence: 'as-agreed', why: 'taste' } });
  expect(sinceField('used-why paste', asked('taste'), { used })).toBeNull();
  expect(sinceField('goal g1', asked('reached'), {})).toEqual({ path: 'goalsSince', value: { g1: 'reached' } });
});

test('what was dropped or turned down is said beside the item', () => {
  const visit = { pastCare: [paste, rinse, gum] };
  expect(sayDropped('rinse', visit)).toBe('stopped in July 2026: taste');
  expect(sayDropped('gum', visit)).toBe('declined in May 2026: time');
  expect(sayDropped('paste', visit)).toBeUndefined();
  expect(sayDropped('paste', { ...visit, used: { paste: { adherence: 'not-begun' } } })).toBe('not begun since last time');
  expect(sayDropped('floss', visit)).toBeUndefined();
});
