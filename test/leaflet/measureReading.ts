import { fleschKincaid } from 'flesch-kincaid';
import { smogFormula } from 'smog-formula';
import { syllable } from 'syllable';
import {
  countFrenchSyllables,
  countSpanishSyllables,
  fernandezHuerta,
  kandelMoles,
  szigrisztPazos,
} from '../../src/core/leaflet/readability.ts';
import { sayNumber } from './sayNumber.ts';

type Language = 'en' | 'es' | 'fr';

/** Read aloud in full, as McLaughlin asks for numbers and abbreviations. */
const SPOKEN: Readonly<Record<Language, readonly (readonly [RegExp, string])[]>> = {
  en: [
    [/\bDr\./g, 'Doctor'],
    [/\bmL\b/g, 'milliliters'],
    [/\bcm\b/g, 'centimeters'],
    [/\$(\d+)\.(\d\d)/g, '$1 dollars $2'],
    [/£(\d+)\.(\d\d)/g, '$1 pounds $2'],
  ],
  es: [
    [/\bDra?\./g, 'doctora'],
    [/\bml\b/gi, 'mililitros'],
    [/\bcm\b/g, 'centímetros'],
    [/(?:USD|\$)\s?(\d+)[.,](\d\d)/g, '$1 dólares $2'],
    [/(\d+)[.,](\d\d)\s(?:GBP|£)/g, '$1 libras $2'],
  ],
  fr: [
    [/\bDr\./g, 'docteur'],
    [/\bml\b/gi, 'millilitres'],
    [/\bcm\b/g, 'centimètres'],
    [/(\d+),(\d\d)\s\$(?:US)?/g, '$1 dollars $2'],
    [/(\d+),(\d\d)\s£(?:GB)?/g, '$1 livres $2'],
  ],
};

const SYLLABLES: Readonly<Record<Language, (word: string) => number>> = {
  en: (word) => syllable(word),
  es: countSpanishSyllables,
  fr: countFrenchSyllables,
};

export interface ReadingMeasure {
  readonly sentences: number;
  readonly words: number;
  readonly syllables: number;
  /** Words of three syllables or more. */
  readonly longWords: number;
}

/**
 * Counts of a text as it is read aloud. A sentence ends at a full stop, question or exclamation mark, or at a line end; a colon or
 * comma does not end one. Numbers are counted as spoken words.
 */
export function countReading(text: string, language: Language): ReadingMeasure {
  const spoken = SPOKEN[language]
    .reduce((t, [pattern, words]) => t.replace(pattern, words), text)
    .replace(/\d+/g, (digits) => ` ${sayNumber(Number(digits), language)} `);
  const sentences = spoken.split(/[.!?]+(?:\s|$)|\n/).filter((s) => /\p{L}/u.test(s));
  const words = sentences.flatMap((s) => s.match(/\p{L}+(?:['’-]\p{L}+)*/gu) ?? []);
  const counts = words.map(SYLLABLES[language]);
  return {
    sentences: sentences.length,
    words: words.length,
    syllables: counts.reduce((sum, n) => sum + n, 0),
    longWords: counts.filter((n) => n >= 3).length,
  };
}

/** Flesch-Kincaid grade (Kincaid 1975) and SMOG grade (McLaughlin 1969). SMOG was made for 30 sentences: read it for whole leaflets only. */
export function measureEnglish(text: string): { readonly fleschKincaidGrade: number; readonly smogGrade: number } {
  const { sentences, words, syllables, longWords } = countReading(text, 'en');
  return {
    fleschKincaidGrade: fleschKincaid({ sentence: sentences, word: words, syllable: syllables }),
    smogGrade: smogFormula({ sentence: sentences, polysillabicWord: longWords }),
  };
}

/** Fernández Huerta (1959, corrected) and Flesch-Szigriszt (1993). */
export function measureSpanish(text: string): { readonly fernandezHuerta: number; readonly szigrisztPazos: number } {
  const counts = countReading(text, 'es');
  return { fernandezHuerta: fernandezHuerta(counts), szigrisztPazos: szigrisztPazos(counts) };
}

/** Kandel and Moles (1958). */
export function measureFrench(text: string): { readonly kandelMoles: number } {
  return { kandelMoles: kandelMoles(countReading(text, 'fr')) };
}

/** Words of the longest sentence and letters of a word. No formula: what is counted is what is held. */
export function measureArabic(text: string): { readonly longestSentence: number; readonly lettersPerWord: number } {
  const sentences = text.split(/[.؟!]+(?:\s|$)|\n/).map((sentence) => sentence.match(/[\p{L}\p{N}\p{M}]+/gu) ?? []);
  const words = sentences.flat();
  const letters = words.reduce((sum, word) => sum + [...word.normalize('NFC').replace(/\p{M}/gu, '')].length, 0);
  return { longestSentence: Math.max(...sentences.map(({ length }) => length)), lettersPerWord: letters / words.length };
}
