const EN_SMALL =
  'zero one two three four five six seven eight nine ten eleven twelve thirteen fourteen fifteen sixteen seventeen eighteen nineteen'.split(
    ' ',
  );
const EN_TENS = 'zero ten twenty thirty forty fifty sixty seventy eighty ninety'.split(' ');
const ES_SMALL =
  'cero uno dos tres cuatro cinco seis siete ocho nueve diez once doce trece catorce quince dieciséis diecisiete dieciocho diecinueve veinte veintiuno veintidós veintitrés veinticuatro veinticinco veintiséis veintisiete veintiocho veintinueve'.split(
    ' ',
  );
const ES_TENS = 'cero diez veinte treinta cuarenta cincuenta sesenta setenta ochenta noventa'.split(' ');
const ES_HUNDREDS = 'cero ciento doscientos trescientos cuatrocientos quinientos seiscientos setecientos ochocientos novecientos'.split(
  ' ',
);

/** A whole number below ten thousand in words, as it is read aloud. */
export function sayNumber(n: number, language: 'en' | 'es' | 'fr'): string {
  if (!(Number.isInteger(n) && n >= 0 && n < 10_000)) throw new RangeError(`only whole numbers from 0 to 9999: ${n}`);
  return { en: sayEnglish, es: saySpanish, fr: sayFrench }[language](n);
}

function sayEnglish(n: number): string {
  if (n < 20) return EN_SMALL[n] ?? '';
  if (n < 100) return join(EN_TENS[Math.floor(n / 10)], n % 10, sayEnglish);
  return n < 1000
    ? join(`${sayEnglish(Math.floor(n / 100))} hundred`, n % 100, sayEnglish)
    : join(`${sayEnglish(Math.floor(n / 1000))} thousand`, n % 1000, sayEnglish);
}

function saySpanish(n: number): string {
  if (n < 30) return ES_SMALL[n] ?? '';
  if (n < 100) return join(ES_TENS[Math.floor(n / 10)], n % 10, (rest) => `y ${saySpanish(rest)}`);
  if (n < 1000) return n === 100 ? 'cien' : join(ES_HUNDREDS[Math.floor(n / 100)], n % 100, saySpanish);
  const thousands = Math.floor(n / 1000);
  return join(thousands === 1 ? 'mil' : `${saySpanish(thousands)} mil`, n % 1000, saySpanish);
}

const FR_SMALL =
  'zéro un deux trois quatre cinq six sept huit neuf dix onze douze treize quatorze quinze seize dix-sept dix-huit dix-neuf'.split(' ');
const FR_TENS = 'zéro dix vingt trente quarante cinquante soixante soixante quatre-vingt quatre-vingt'.split(' ');

function sayFrench(n: number): string {
  if (n < 20) return FR_SMALL[n] ?? '';
  const tens = Math.floor(n / 10);
  if (n < 100) return join(FR_TENS[tens], tens === 7 || tens === 9 ? (n % 10) + 10 : n % 10, sayFrench);
  if (n < 1000) return join(n < 200 ? 'cent' : `${sayFrench(Math.floor(n / 100))} cent`, n % 100, sayFrench);
  return join(n < 2000 ? 'mille' : `${sayFrench(Math.floor(n / 1000))} mille`, n % 1000, sayFrench);
}

function join(head: string | undefined, rest: number, say: (n: number) => string): string {
  return rest === 0 ? `${head}` : `${head} ${say(rest)}`;
}
