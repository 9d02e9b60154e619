import { expect, test } from 'vitest';
import { agreeField, agreeLines, allAgreed } from './agreeLines.ts';

const planLines = [
  { shelfItemId: 'varnish', name: 'Varnish' },
  { shelfItemId: 'paste', name: 'Paste' },
];
const proposed = { keep: 'paste twice a day', tryThis: null, nextDate: 'in 3 to 4 months' };
const visit = { language: 'en' } as const;

test('a line not talked about is unknown, not agreed', () => {
  const lines = agreeLines({ planLines, visit, proposed });
  expect(lines[0]).toMatchObject({ label: 'Varnish', text: 'not talked about', tone: 'unknown', wanted: true });
  expect(lines.find((l) => l.id === 'keep')).toMatchObject({ text: 'paste twice a day', note: 'proposed', tone: 'carried' });
});

test('a declined line asks why', () => {
  const agreed = { items: { paste: 'declined' } } as const;
  const lines = agreeLines({ planLines, visit: { ...visit, agreed }, proposed });
  expect(lines.map((l) => l.id).slice(0, 3)).toEqual(['item varnish', 'item paste', 'why paste']);
  expect(lines[2]).toMatchObject({ text: 'reason not noted', tone: 'unknown', wanted: true });
});

test('a closed visit shows what is on record, and nothing as still to talk about', () => {
  const lines = agreeLines({ planLines, visit: { ...visit, agreed: { items: { paste: 'agreed' } } }, proposed, isClosed: true });
  expect(lines.map((l) => l.id).slice(0, 2)).toEqual(['item paste', 'keep']);
  expect(lines.some((l) => l.note === 'proposed' || l.wanted)).toBe(false);
});

test('all agreed leaves what was declined', () => {
  expect(allAgreed(planLines, { keep: 'k', items: { paste: 'declined' } })).toEqual({
    keep: 'k',
    items: { varnish: 'agreed', paste: 'declined' },
  });
});

test('fields to save', () => {
  const agreed = { items: { varnish: 'agreed' } } as const;
  expect(agreeField('item paste', { how: 'asked', value: 'not-affordable' }, { ...visit, agreed })).toEqual({
    path: 'agreed',
    value: { items: { varnish: 'agreed', paste: 'not-affordable' } },
  });
  expect(agreeField('why paste', { how: 'asked', value: 'taste' }, visit)).toEqual({
    path: 'agreed',
    value: { declinedWhy: { paste: 'taste' } },
  });
  expect(agreeField('stopUsing', { how: 'asked', value: 'rinse; ; gel ' }, visit)).toEqual({ path: 'stopUsing', value: ['rinse', 'gel'] });
  expect(agreeField('nextOn', { how: 'asked', value: '2027-02-25' }, visit)).toEqual({ path: 'nextOn', value: '2027-02-25' });
  expect(agreeField('nextOn', { how: 'declined' }, visit)).toBeNull();
});
