import { expect, test } from 'vitest';
import { content } from '../../content/allContent.ts';
import { listPackTraits } from './listPackTraits.ts';

const traits = listPackTraits(content.regimen);

test('holds what a rule, an interaction, an allergy and a caution ask for', () => {
  expect(traits).toEqual(expect.arrayContaining(['colophony', 'aspartame', 'tannins', 'acrylate', 'xylitol', 'sodium lauryl sulfate']));
});

test('leaves out what follows from form, compound, strength and pH', () => {
  for (const worked of [
    'gum',
    'lozenge',
    'spray',
    'contains fluoride',
    'stannous fluoride',
    'sodium monofluorophosphate',
    'pH below 7',
    'pH unknown',
  ]) {
    expect(traits).not.toContain(worked);
  }
});

test('each once, by name', () => {
  expect(traits).toEqual([...new Set(traits)].sort((a, b) => a.localeCompare(b, 'en')));
});
