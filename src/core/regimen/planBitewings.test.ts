import { describe, expect, test } from 'vitest';
import { oldBitewings } from '../../content/recall.ts';
import { type BitewingsInput, planBitewings } from './planBitewings.ts';

const months = { low: [24, 36], moderate: [12, 18], high: [6, 12], extreme: [6, 6] } as const;
const confirmed = { level: 'high', protocol: 'p', edition: 'e', by: 'Ines Marrow', at: '2026-11-25T10:00:00Z' } as const;
const plan = (change: Partial<BitewingsInput> = {}) =>
  planBitewings({
    confirmed,
    mouth: { kind: 'level-applies', reasons: [] },
    facts: { ageYears: 40 },
    settings: { jurisdiction: 'UK', bitewingMonths: months },
    tables: { oldBitewings },
    lastBitewings: { on: '2026-08-31' },
    onDate: '2026-11-25',
    ...change,
  });

describe('the last date is known', () => {
  test('next by the setting of the confirmed level, to the month', () => {
    const { bitewingsDue, bitewingsSentence } = plan();
    expect(bitewingsDue).toEqual({ last: '2026-08-31', fromMonth: '2027-02', toMonth: '2027-08', isDue: false });
    expect(bitewingsSentence).toBe(
      "Last bitewings: August 2026; next in February 2027 to August 2027, 6 to 12 months by the practice's own setting; the dentist decides.",
    );
  });

  // Half on the edge: due from the first day of the month on, not a month earlier.
  test.each([
    ['2026-05', true],
    ['2026-06', false],
    ['2026-05-31', true],
    ['2020-01', true],
  ])('last %s is due on 25 November 2026: %s', (on, isDue) => {
    expect(plan({ lastBitewings: { on } }).bitewingsDue?.isDue).toBe(isDue);
    expect(plan({ lastBitewings: { on } }).bitewingsSentence.includes('due since')).toBe(isDue);
  });
});

describe('what is not known is said as such, and nothing is due then', () => {
  test.each([
    ['not-asked', /date not known \(not asked\)/],
    ['does-not-know', /date not known \(not known to the patient\)/],
    ['declined', /date not known \(declined\)/],
    ['out-of-date', /date not known \(out of date\)/],
  ] as const)('%s', (unknown, words) => {
    expect(plan({ lastBitewings: { unknown } })).toMatchObject({ bitewingsDue: null, bitewingsSentence: expect.stringMatching(words) });
  });

  test('never taken is no date and no unknown', () => {
    expect(plan({ lastBitewings: { on: 'never' } })).toMatchObject({
      bitewingsDue: null,
      bitewingsSentence: expect.stringMatching(/^Bitewings: never taken; every 6 to 12 months/),
    });
  });

  test('no setting: the old table does not take its place', () => {
    const none = plan({ settings: { jurisdiction: 'UK', bitewingMonths: null } });
    expect(none).toMatchObject({ bitewings: null, bitewingsDue: null, bitewingsSentence: expect.stringMatching(/interval is not set\.$/) });
    expect(none.bitewingsOldTable?.label).toMatch(/replaced/);
  });

  test('no confirmed level', () => {
    expect(plan({ confirmed: undefined })).toMatchObject({
      bitewings: null,
      bitewingsSentence: expect.stringMatching(/not confirmed yet/),
    });
  });
});

test.each([
  { kind: 'level-does-not-apply', reasons: ['no-natural-teeth'] },
  { kind: 'level-with-note', reasons: ['overdenture-roots'] },
] as const)('%j: bitewings do not apply, and nothing is said of them', (mouth) => {
  expect(plan({ mouth })).toEqual({ bitewings: null, bitewingsDue: null, bitewingsSentence: '', bitewingsOldTable: null });
});
