import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';

// WCAG 2.2, success criteria 1.4.3 (text, 4.5 to 1) and 1.4.11 (lines and shapes that carry meaning, 3 to 1).
const TEXT = 4.5;
const LINE = 3;

const css = readFileSync(new URL('./base.css', import.meta.url), 'utf8');
const normal = tokensIn(css.slice(0, css.indexOf('@media')));
const more = { ...normal, ...tokensIn(css.slice(css.indexOf('prefers-contrast'))) };

type Scheme = 'light' | 'dark';
type Tokens = Readonly<Record<string, Readonly<Record<Scheme, string>>>>;

function tokensIn(text: string): Tokens {
  const found = [...text.matchAll(/--([a-z0-9-]+): light-dark\((#[0-9a-f]{6}), (#[0-9a-f]{6})\)/g)];
  return Object.fromEntries(found.map(([, name, light, dark]) => [name, { light, dark }])) as Tokens;
}

/** Relative luminance of a colour, as WCAG defines it. */
function luminance(hex: string): number {
  const [r = 0, g = 0, b = 0] = [1, 3, 5].map((i) => {
    const part = Number.parseInt(hex.slice(i, i + 2), 16) / 255;
    return part <= 0.04045 ? part / 12.92 : ((part + 0.055) / 1.055) ** 2.4;
  });
  return 0.2126 * r + 0.7152 * g + 0.0722 * b;
}

function contrast(a: string, b: string): number {
  const [low = 0, high = 0] = [luminance(a), luminance(b)].sort((x, y) => x - y);
  return (high + 0.05) / (low + 0.05);
}

test('every token is there in both schemes, and black on white is 21 to 1', () => {
  expect(Object.keys(normal).sort()).toEqual(['ink', 'ink-2', 'ochre', 'paper', 'rule', 'shade', 'violet', 'violet-light']);
  expect(contrast('#000000', '#ffffff')).toBeCloseTo(21, 6);
});

const pairs = [
  ['ink', 'paper', TEXT],
  ['ink', 'shade', TEXT],
  ['ink-2', 'paper', TEXT],
  ['ink-2', 'shade', TEXT],
  ['violet', 'paper', TEXT],
  ['violet', 'shade', TEXT],
  ['ochre', 'paper', TEXT],
  ['ochre', 'shade', TEXT],
  ['paper', 'violet', TEXT],
  ['ink', 'violet-light', TEXT],
  ['violet', 'violet-light', LINE],
] as const;

for (const [name, tokens, floor] of [
  ['normal', normal, 1],
  ['more', more, 1.5],
] as const) {
  for (const scheme of ['light', 'dark'] as const) {
    test.each(pairs)(`${name} contrast, ${scheme}: %s on %s`, (front, back, least) => {
      const colours = [tokens[front]?.[scheme], tokens[back]?.[scheme]] as const;
      if (!colours[0] || !colours[1]) throw new Error(`no token ${front} or ${back}`);
      const wanted = back === 'violet-light' && front === 'violet' ? least : least * floor;
      expect(contrast(colours[0], colours[1])).toBeGreaterThanOrEqual(wanted);
    });
  }
}

test('no colour outside the tokens in the other style sheets, but black and white on paper that is printed', () => {
  for (const file of ['shell', 'parts', 'visit', 'charts', 'screens', 'swab', 'studies']) {
    const text = readFileSync(new URL(`./${file}.css`, import.meta.url), 'utf8');
    expect([...text.matchAll(/#[0-9a-f]{3,8}\b/gi)].map(([colour]) => colour)).toEqual([]);
  }
});
