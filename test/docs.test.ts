import { existsSync, readFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { expect, test } from 'vitest';
import { listFiles } from './prose.ts';

const pages = listFiles('.', new Set(['.md'])).filter((file) => !file.startsWith('test'));
const textOf = (file: string) => readFileSync(file, 'utf8');

test.each(pages)('%s links only to what is there', (file) => {
  const links = [...textOf(file).matchAll(/\]\(([^)#\s]+)(?:#[^)]*)?\)/g)]
    .map(([, target = '']) => target)
    .filter((target) => !/^[a-z]+:/.test(target));
  expect(links.filter((target) => !existsSync(join(dirname(file), target)))).toEqual([]);
});

const decisions = pages.filter((file) => /^docs.adr.\d{4}-/.test(file));

test('decisions are numbered without a gap', () => {
  expect(decisions.map((file) => Number(file.slice('docs/adr/'.length, 'docs/adr/'.length + 4)))).toEqual(decisions.map((_, i) => i + 1));
});

test.each(decisions)('%s has the form of a decision, in at most 40 lines', (file) => {
  const text = textOf(file);
  const heads = [...text.matchAll(/^#+ (.*)$/gm)].map(([, head = '']) => head);
  expect(heads.slice(1)).toEqual(['Context', 'Decision', 'Refused', 'Consequences', 'What would change our mind']);
  expect(heads[0]).toMatch(/^\d{4}\. /);
  expect(text).toMatch(/^(Accepted|Superseded by \d{4}), \d{4}-\d{2}-\d{2}\.$/m);
  expect(text.trimEnd().split('\n').length).toBeLessThanOrEqual(40);
});
