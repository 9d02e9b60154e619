import { readFileSync } from 'node:fs';
import { beforeAll, describe, expect, test } from 'vitest';
import { buildSourcesPage, indexSources, PAGE_FILE, type SourceIndex } from '../scripts/sourcesPage.ts';

let index: SourceIndex;
beforeAll(async () => {
  index = await indexSources();
});

test('every source that is named stands in a table of sources', () => {
  const unknown = index.mentions.filter(({ key }) => !index.sources.has(key)).map(({ key, file }) => `${key} in ${file}`);
  expect([...new Set(unknown)]).toEqual([]);
});

test('no key stands in two tables', () => {
  expect(index.twice).toEqual([]);
});

test('every source is cited, and says how much of it was read', () => {
  const bare = [...index.sources].filter(([, { cite, read }]) => !(cite.length > 10 && read.length > 3)).map(([key]) => key);
  expect(bare).toEqual([]);
});

test('docs/sources.md is up to date (npm run docs:sources writes it)', () => {
  expect(readFileSync(PAGE_FILE, 'utf8')).toBe(buildSourcesPage(index));
});

describe('the index itself', () => {
  test('sees references in tables and tags in docstrings', () => {
    expect(index.mentions.some(({ status, file }) => status === 'proposal' && file.includes('swabConditions'))).toBe(true);
    expect(index.mentions.some(({ status, file }) => status === undefined && file.includes('core'))).toBe(true);
    expect(index.sources.size).toBeGreaterThan(20);
  });
});
