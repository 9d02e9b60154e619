import { leafletWordsEn } from '../../src/content/texts/en.ts';
import { leafletWordsEs } from '../../src/content/texts/es.ts';
import { measureEnglish, measureSpanish } from './measureReading.ts';

const flat = (o: unknown, p = ''): [string, string][] =>
  typeof o === 'string' ? [[p, o]] : Object.entries(o as object).flatMap(([k, v]) => flat(v, `${p}.${k}`));
const items = {
  en: [
    'Fluoride toothpaste',
    'Strong fluoride toothpaste',
    'Fluoride mouth rinse',
    'Xylitol gum',
    'Chlorhexidine rinse',
    'Baking soda',
    'Fluoride varnish',
    'Silver liquid',
    'Germ rinse',
  ],
  es: [
    'Pasta dental con flúor',
    'Pasta con mucho flúor',
    'Enjuague con flúor',
    'Chicle con xilitol',
    'Enjuague de clorhexidina',
    'Bicarbonato',
    'Barniz de flúor',
  ],
};
const rows: string[] = [];
for (const [p, t] of flat(leafletWordsEn)) {
  if (/labels|slots|amounts|foot|title|signed|language/.test(p)) continue;
  const x = t
    .replace(/\{item\}/g, 'Strong fluoride paste')
    .replace(/\{n\}/g, '3')
    .replace(/\{\w+\}/g, 'April');
  const m = measureEnglish(x);
  if (m.fleschKincaidGrade > 5) rows.push(`${m.fleschKincaidGrade.toFixed(1)} ${p} ${x}`);
}
for (const [p, t] of flat(leafletWordsEs)) {
  if (/labels|slots|amounts|foot|title|signed/.test(p)) continue;
  const x = t
    .replace(/\{item\}/g, 'Pasta con mucho flúor')
    .replace(/\{n\}/g, '3')
    .replace(/\{\w+\}/g, 'abril');
  const m = measureSpanish(x);
  if (m.fernandezHuerta < 75) rows.push(`${m.fernandezHuerta.toFixed(0)} ${m.szigrisztPazos.toFixed(0)} ${p} ${x}`);
}
console.log(rows.join('\n'));
