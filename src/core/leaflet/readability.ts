/** Counts that every readability formula here is built on. */
export interface TextCounts {
  readonly sentences: number;
  readonly words: number;
  readonly syllables: number;
}

const OPEN = 'aeoáéó';
const CLOSED = 'iuüíú';
const ACCENTED_CLOSED = 'íú';
const VOWEL_RUN = new RegExp(`[${OPEN}${CLOSED}]+`, 'g');

/**
 * Number of syllables of one Spanish word by the orthographic rules of diphthong, hiatus and triphthong.
 * Two open vowels, two equal vowels, and an open vowel beside an accented closed one are separate; every other pair is one
 * syllable. `h` between vowels does not separate them; `y` counts as a vowel at the end of a word or before a consonant.
 * The orthographic rule is taken, not the pronunciation, so that the count does not depend on the region ("guion" is one syllable).
 * @param word  one word without digits; upper or lower case, accents as written
 * @returns     whole number, at least 1 (a word without a vowel is read as one syllable)
 * @source rae-ortografia-2010
 */
export function countSpanishSyllables(word: string): number {
  const spoken = toSpokenVowels(word.normalize('NFC').toLowerCase());
  let count = 0;
  for (const [run] of spoken.matchAll(VOWEL_RUN)) count += countNuclei(run);
  return Math.max(1, count);
}

/** `y` where it sounds as a vowel becomes one, and h between vowels goes. The silent u of que and gui needs no care: it never adds a syllable. */
function toSpokenVowels(word: string): string {
  return word.replace(/y(?![aeiouáéíóúü])/g, 'i').replace(/(?<=[aeiouáéíóúü])h(?=[aeiouáéíóúü])/g, '');
}

/** Syllables in a run of vowels: open vowels and accented closed vowels that touch an open one; a run of closed vowels is one, or two if equal. */
function countNuclei(run: string): number {
  const vowels = [...run];
  const isOpen = (v: string | undefined) => v !== undefined && OPEN.includes(v);
  let nuclei = 0;
  vowels.forEach((v, i) => {
    const beside = isOpen(vowels[i - 1]) || isOpen(vowels[i + 1]);
    if (isOpen(v) || (ACCENTED_CLOSED.includes(v) && beside)) nuclei += 1;
  });
  if (nuclei > 0) return nuclei;
  return /([iuíúü])\1|ií|íi|uú|úu/.test(run) ? 2 : 1;
}

/**
 * Fernández Huerta's reading ease for Spanish, in the corrected reading: words per sentence, not sentences per 100 words.
 * @param counts  all at least 1
 * @returns       about 0 (hard) to 100 (easy); may pass both ends
 * @throws RangeError when a count is not positive
 * @source fernandez-huerta-1959, law-2011
 */
export function fernandezHuerta(counts: TextCounts): number {
  requirePositive(counts);
  return 206.84 - 60 * (counts.syllables / counts.words) - 1.02 * (counts.words / counts.sentences);
}

/**
 * Flesch-Szigriszt index, the number that the INFLESZ scale grades for Spanish readers.
 * @param counts  all at least 1
 * @returns       about 0 (hard) to 100 (easy)
 * @throws RangeError when a count is not positive
 * @source szigriszt-1993, barrio-2008
 */
export function szigrisztPazos(counts: TextCounts): number {
  requirePositive(counts);
  return 206.835 - 62.3 * (counts.syllables / counts.words) - counts.words / counts.sentences;
}

const FRENCH_VOWELS = 'aeiouyàâäéèêëîïôöùûüœæ';
const FRENCH_RUN = new RegExp(`[${FRENCH_VOWELS}]+`, 'g');
/** Letters that sound as one vowel, the longest first; what is left of a run counts letter by letter. */
const FRENCH_NUCLEI = /eau|œu|oui|oue|oin|ai|aî|au|ei|eu|eû|oi|oî|ou|où|oû|œ|æ|ui|iè|ié|ia|io|ie|ye|yé|ya|yo|[aeiouyàâäéèêëîïôöùûüœæ]/g;

/**
 * Number of syllables of one French word as it is spoken in ordinary speech: a last e, es or ent of a verb is silent after a consonant,
 * letters that sound as one vowel count once. A rule of spelling, made to err towards more syllables, so towards harder.
 * @param word  one word without digits; an elided "l’" belongs to the word after it
 * @returns     whole number, at least 1
 */
export function countFrenchSyllables(word: string): number {
  const spoken = word
    .normalize('NFC')
    .toLowerCase()
    .replace(/qu/g, 'q')
    .replace(/gu(?=[eéèêiîy])/g, 'g')
    .replace(/ge(?=[aoâô])/g, 'j')
    .replace(/(?<=[^aeiouyàâäéèêëîïôöùûüœæ])es?$/, (end, at: number, all: string) => (hasVowel(all.slice(0, at)) ? '' : end))
    .replace(/(?<=[iuéy])es?$/, '');
  let count = 0;
  for (const [run] of spoken.matchAll(FRENCH_RUN)) count += run.match(FRENCH_NUCLEI)?.length ?? 0;
  return Math.max(1, count);
}

const hasVowel = (text: string): boolean => text.search(FRENCH_RUN) >= 0;

/**
 * Kandel and Moles's adaptation of Flesch's reading ease to French.
 * @param counts  all at least 1
 * @returns       about 0 (hard) to 100 (easy); may pass both ends
 * @throws RangeError when a count is not positive
 * @source kandel-moles-1958
 */
export function kandelMoles(counts: TextCounts): number {
  requirePositive(counts);
  return 207 - 1.015 * (counts.words / counts.sentences) - 73.6 * (counts.syllables / counts.words);
}

function requirePositive(counts: TextCounts): void {
  for (const name of ['sentences', 'words', 'syllables'] as const) {
    if (!(counts[name] > 0)) throw new RangeError(`${name} must be above 0: ${counts[name]}`);
  }
}
