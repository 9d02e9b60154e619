import { expect, test } from 'vitest';
import { LEAFLET_LANGUAGES } from '../../core/leaflet/languages.ts';
import { catalogOf } from '../../core/leaflet/leafletTable.ts';
import { questions } from '../questions.ts';
import { leafletTable } from './leafletTable.ts';

const NOTHING_TO_SAY: readonly string[] = ['no'];

test.each(LEAFLET_LANGUAGES)(
  '%s: every choice of a private question has words for a deliberate release, and no other question has',
  (language) => {
    const worded = Object.keys(catalogOf(leafletTable, language)).filter((id) => id.startsWith('private.'));
    const choices = questions
      .filter((q) => q.private)
      .flatMap(({ id, choices: all = [] }) =>
        all
          .map((c) => c.id)
          .filter((c) => !NOTHING_TO_SAY.includes(c))
          .map((c) => `private.${id}.${c}`),
      );
    expect(choices.length).toBeGreaterThan(0);
    expect(worded.sort()).toEqual(choices.sort());
  },
);
