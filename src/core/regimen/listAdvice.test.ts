import { describe, expect, test } from 'vitest';
import { advice } from '../../content/advice.ts';
import { conditions } from '../../content/conditions.ts';
import { questions } from '../../content/questions.ts';
import { leafletTable } from '../../content/texts/leafletTable.ts';
import type { MouthReason } from '../visit/mouthReason.ts';
import { listAdvice } from './listAdvice.ts';
import type { FoodLimit } from './types.ts';

const idsOf = (reason: MouthReason, allowed: FoodLimit['allowed'] = 'any', ageYears = 30, noted: readonly string[] = []) =>
  listAdvice({ reasons: [reason], ageYears, noted, diet: { allowed }, table: advice }).map(({ id }) => id);

test('an ordinary mouth gets none', () => {
  expect(listAdvice({ reasons: [], ageYears: 30, noted: [], diet: { allowed: 'any' }, table: advice })).toEqual([]);
});

describe('acid wear and food', () => {
  test('where food may be limited, drinks with meals and a straw; nobody to ask first', () => {
    expect(idsOf('acid-wear')).toEqual(expect.arrayContaining(['acid-rinse', 'acid-with-meals', 'acid-straw', 'acid-ask-doctor']));
    expect(idsOf('acid-wear')).not.toContain('ask-before-food');
  });

  test.each(['after-only', 'sweet-bottle-only'] as const)('%s: only what to do afterwards, and whom to ask', (allowed) => {
    const ids = idsOf('acid-wear', allowed);
    expect(ids).toEqual(expect.arrayContaining(['acid-rinse', 'acid-brush-later', 'ask-before-food']));
    expect(advice.filter(({ id, family }) => ids.includes(id) && family === 'food')).toEqual([]);
  });

  test('a child under 6 is given water and does not rinse', () => {
    expect(idsOf('acid-wear', 'any', 5)).toEqual(expect.arrayContaining(['acid-water']));
    expect(idsOf('acid-wear', 'any', 5)).not.toContain('acid-rinse');
    expect(idsOf('acid-wear', 'any', 6)).not.toContain('acid-water');
  });
});

test('no teeth yet: to the carer; what is in a bottle only where that may be said; late only after the first birthday', () => {
  expect(idsOf('no-teeth-yet', 'sweet-bottle-only', 0)).toEqual(['first-tooth', 'bottle-plain', 'carer-teeth']);
  expect(idsOf('no-teeth-yet', 'after-only', 0)).toEqual(['first-tooth', 'carer-teeth']);
  expect(idsOf('no-teeth-yet', 'after-only', 1)).toContain('late-first-tooth');
});

test('a denture line only where a denture is noted', () => {
  expect(idsOf('no-natural-teeth')).toEqual(['mouth-check']);
  expect(idsOf('no-natural-teeth', 'any', 80, ['full-denture'])).toEqual(['denture-night', 'mouth-check']);
});

describe('the table', () => {
  test('ids are unique; each line for a leaflet has words in each language, and no words stand without one', () => {
    const printed = advice.filter(({ onLeaflet }) => onLeaflet).map(({ id }) => id);
    expect(new Set(advice.map(({ id }) => id)).size).toBe(advice.length);
    for (const catalog of Object.values(leafletTable.catalogs))
      expect(
        Object.keys(catalog)
          .filter((id) => id.startsWith('advice.'))
          .sort(),
      ).toEqual(printed.map((id) => `advice.${id}`).sort());
  });

  test('every appliance or condition that a line waits for can be noted', () => {
    const known = [
      ...conditions.map(({ id }) => id),
      ...(questions.find(({ id }) => id === 'appliance')?.choices ?? []).map(({ id }) => id),
    ];
    for (const { onlyWith = [] } of advice) expect(known).toEqual(expect.arrayContaining([...onlyWith]));
  });

  test('what is printed names no private matter and holds no figure', () => {
    const said = Object.values(leafletTable.catalogs).flatMap((catalog) =>
      Object.entries(catalog).filter(([id]) => id.startsWith('advice.')),
    );
    for (const [, text] of said)
      expect(text).not.toMatch(
        /\d|vomi|v\u00f3mit|bulimi|eating disorder|alcool|alcohol|drug|drogue|pregnan|embaraz|grossesse|enceinte|قيء|كحول|مخدر|حمل|حامل/i,
      );
  });
});
