import { expect, test } from 'vitest';
import type { PersonRecord } from '../../../api/bundles.ts';
import { withoutOwnWords } from './withoutOwnWords.ts';

test('no word that somebody typed freely is left, and everything else is', () => {
  const OWN = 'own words 4711';
  const record = {
    name: 'P',
    visits: [
      {
        id: 'v',
        confirmed: { level: 'high', by: 'Ines Marrow', reason: OWN },
        voided: [{ finding: { tooth: '13' }, reason: OWN }],
        corrections: [
          { on: '2026-11-25', by: 'Ines Marrow', reason: OWN, changes: [{ path: 'answers.pregnant', before: OWN, after: null }] },
        ],
        goals: [OWN],
      },
    ],
    courses: [{ name: 'Paste', reason: OWN }],
    notTaken: [{ onDate: '2026-11-25', reason: OWN }],
  } as unknown as PersonRecord;
  const shown = withoutOwnWords(record);
  expect(JSON.stringify(shown)).not.toContain(OWN);
  expect(shown).toMatchObject({ name: 'P', visits: [{ confirmed: { level: 'high', by: 'Ines Marrow' } }], courses: [{ name: 'Paste' }] });
});
