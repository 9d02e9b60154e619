import { expect, test } from 'vitest';
import { questions } from '../questions.ts';
import { leafletTable } from './leafletTable.ts';

const NOTHING_TO_SAY: readonly string[] = ['no'];

test.each(['en', 'es'] as const)(
  '%s: every choice of a private question has words for a deliberate release, and no other question has',
  (language) => {
    const { privateChoices } = leafletTable.words[language];
    const privateQuestions = questions.filter((q) => q.private);
    expect(Object.keys(privateChoices).sort()).toEqual(privateQuestions.map(({ id }) => id).sort());
    for (const { id, choices = [] } of privateQuestions)
      expect(Object.keys(privateChoices[id] ?? {}).sort()).toEqual(
        choices
          .map((c) => c.id)
          .filter((c) => !NOTHING_TO_SAY.includes(c))
          .sort(),
      );
  },
);
