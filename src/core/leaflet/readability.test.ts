import fc from 'fast-check';
import { expect, it, test } from 'vitest';
import { countFrenchSyllables, countSpanishSyllables, fernandezHuerta, kandelMoles, szigrisztPazos } from './readability.ts';

// Syllable division by the orthographic rules of the Spanish academies (Ortografía 2010): diphthong, hiatus, triphthong, silent u,
// h between vowels, final y. Divisions are written out so that a reader can check them; exact.
const DIVIDED = [
  // diphthongs
  'cui-da-do',
  'ciu-dad',
  'hue-so',
  'pei-ne',
  'au-to',
  'a-gua',
  'puer-ta',
  'vein-te',
  'bui-tre',
  'es-ta-dou-ni-den-se',
  'dien-tes',
  'lim-pie',
  'cuí-da-te',
  'a-cuí-fe-ro',
  'des-pués',
  'ahu-mar',
  'de-sahu-ciar',
  'cohi-bi-do',
  'prohi-bir',
  're-su-men',
  // hiatus: open + open, equal vowels, accented closed
  'le-er',
  'te-a-tro',
  'ca-er',
  'o-es-te',
  'po-e-ta',
  'al-co-hol',
  'a-za-har',
  'chi-i-ta',
  'pa-ís',
  'ba-úl',
  'o-ír',
  'dí-a',
  'tí-o',
  'bú-ho',
  'pro-hí-ben',
  'a-hí',
  've-hí-cu-lo',
  'a-é-re-o',
  'ca-í-a',
  'lí-ne-a',
  'en-cí-as',
  'to-da-ví-a',
  'cre-ó',
  'Sa-a-ve-dra',
  're-hén',
  'hé-ro-e',
  'le-í-ais',
  // triphthongs
  'buey',
  'Pa-ra-guay',
  'U-ru-guay',
  'cam-biáis',
  'a-ve-ri-güéis',
  'miau',
  'des-pre-ciéis',
  // silent u and sounded ü, y, x, ll, rr
  'que-so',
  'gue-rra',
  'gui-so',
  'pin-güi-no',
  'lin-güís-ti-ca',
  'hoy',
  'y',
  'ley',
  'yo',
  'a-yu-da',
  'muy',
  'guion',
  'en-jua-gue',
  'en-juá-gue-se',
  'flú-or',
  'pa-ra-noi-a',
  'en-ví-e',
  // words of the leaflet
  'pas-ta',
  'mé-di-co',
  'a-gua',
  'car-pe-ta',
  'le-jí-a',
  'bar-niz',
  'chi-cle',
  'ce-pí-lle-se',
  'es-cu-pa',
  'em-ba-ra-zo',
  'clo-rhe-xi-di-na',
  'xi-li-tol',
  'bi-car-bo-na-to',
  'ni-ño',
  'ba-ñe-ra',
];
test.each(DIVIDED)('%s', (divided) => {
  expect(countSpanishSyllables(divided.replaceAll('-', ''))).toBe(divided.split('-').length);
});

test('capital letters and decomposed accents count alike', () => {
  expect(countSpanishSyllables('PAÍS')).toBe(2);
  expect(countSpanishSyllables('pai\u0301s')).toBe(2);
});

// Computed by hand from the formulas as printed at legible.es (read): 100 words, 200 syllables, 10 sentences give
// 206.84 - 60 * 2 - 1.02 * 10 = 76.64 and 206.835 - 62.3 * 2 - 10 = 72.235. Tolerance: rounding of doubles.
test('Fernández Huerta and Flesch-Szigriszt', () => {
  const counts = { sentences: 10, words: 100, syllables: 200 };
  expect(fernandezHuerta(counts)).toBeCloseTo(76.64, 10);
  expect(szigrisztPazos(counts)).toBeCloseTo(72.235, 10);
});

const counts = fc
  .record({
    sentences: fc.oneof(fc.constant(1), fc.nat(50)),
    wordsPerSentence: fc.oneof(fc.constantFrom(1, 60), fc.integer({ min: 1, max: 60 })),
    syllablesPerWord: fc.integer({ min: 1, max: 6 }),
  })
  .map(({ sentences, wordsPerSentence, syllablesPerWord }) => {
    const words = (sentences + 1) * wordsPerSentence;
    return { sentences: sentences + 1, words, syllables: words * syllablesPerWord };
  });
it('is harder with more syllables or longer sentences', () => {
  fc.assert(
    fc.property(counts, (a) => {
      const moreSyllables = { ...a, syllables: a.syllables + 1 };
      const fewerSentences = { ...a, sentences: a.sentences / 2 };
      for (const score of [fernandezHuerta, szigrisztPazos]) {
        expect(score(moreSyllables)).toBeLessThan(score(a));
        expect(score(fewerSentences)).toBeLessThan(score(a));
      }
    }),
  );
});

test.each(['sentences', 'words', 'syllables'])('no text, no score: %s', (name) => {
  for (const bad of [0, -1, Number.NaN]) expect(() => fernandezHuerta({ sentences: 1, words: 1, syllables: 1, [name]: bad })).toThrow(name);
});

// Counted by hand as the words are spoken in ordinary speech; exact.
test.each([
  ['brossez', 2],
  ['toutes', 1],
  ['les', 1],
  ['puis', 1],
  ['crachez', 2],
  ['dentifrice', 3],
  ['eau', 1],
  ['bouche', 1],
  ['après', 2],
  ['journée', 2],
  ['visite', 2],
  ['médecin', 3],
  ['millilitres', 3],
  ['guérir', 2],
  ['mangeons', 2],
  ['quatre', 1],
  ['poison', 2],
  ['le', 1],
  ['n', 1],
])('%s: %i', (word, syllables) => {
  expect(countFrenchSyllables(word)).toBe(syllables);
});

test('Kandel and Moles: longer sentences and longer words are harder; counts must be positive', () => {
  // 10 words in a sentence of 15 syllables, by hand: 207 - 1.015 * 10 - 73.6 * 1.5 = 86.45.
  expect(kandelMoles({ sentences: 1, words: 10, syllables: 15 })).toBeCloseTo(86.45, 10);
  expect(() => kandelMoles({ sentences: 0, words: 10, syllables: 15 })).toThrow('sentences');
});
