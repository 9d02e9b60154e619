import { readdirSync, readFileSync } from 'node:fs';
import { dirname, normalize, sep } from 'node:path';
import { describe, expect, test } from 'vitest';

/** Each folder of src may import itself and the folders listed. This table is the architecture. */
const MAY_IMPORT: Record<string, readonly string[]> = {
  core: [],
  content: ['core'],
  api: ['core'],
  store: ['core'],
  fhir: ['core', 'content'],
  calculators: ['core', 'content', 'api'],
  actions: ['core', 'content', 'api', 'store'],
  server: ['core', 'content', 'api', 'calculators', 'store', 'actions', 'fhir'],
  cli: ['core', 'content', 'api', 'calculators', 'store', 'actions', 'fhir'],
  web: ['core', 'content', 'api'],
};

/** Packages open to the two folders that run anywhere; the other folders may import any package. */
const PACKAGES: Record<string, readonly RegExp[]> = {
  core: [/^@lingui\/(core|message-utils\/)/, /^@stdlib\//, /^yalps$/, /^date-fns$/, /^d3-array$/],
  content: [],
};

/** `from '…'`, `import '…'`, `import('…')`, with either quote; group 1 is the path. */
const IMPORTS = /(?:\bfrom\s*|\bimport\s*\(?\s*)(?:'([^'\n]+)'|"([^"\n]+)")|\bimport\s*\(\s*`([^`\n]+)`/g;

/** One sentence for each import of the file that the table forbids. `file` is relative to src. */
function findForbiddenImports(file: string, text: string): string[] {
  const folder = file.split(sep)[0] ?? '';
  const allowed = MAY_IMPORT[folder];
  if (!allowed) return [`src/${folder} is not in the table of folders`];
  return [...text.matchAll(IMPORTS)].flatMap(([, single, double, template]) => {
    const path = single ?? double ?? template ?? '';
    if (!path.startsWith('.')) {
      const isOpen = PACKAGES[folder]?.some((pattern) => pattern.test(path)) ?? true;
      return isOpen ? [] : [`${folder} may not import the package ${path}`];
    }
    const target = normalize(`${dirname(file)}/${path}`).split(sep);
    const targetFolder = target[0] ?? '';
    // The name and version of the program come from package.json, which stands beside src.
    if (targetFolder === '..' && target[1] === 'package.json') return [];
    if (targetFolder !== folder && !allowed.includes(targetFolder)) return [`${folder} may not import ${path}`];
    const isStoreWrite = targetFolder === 'store' && target[1]?.replace(/\.ts$/, '') === 'write';
    return isStoreWrite && folder !== 'actions' && folder !== 'store' ? [`only actions may import store/write, not ${folder}`] : [];
  });
}

const files = readdirSync('src', { recursive: true, encoding: 'utf8' }).filter((f) => /\.tsx?$/.test(f) && !/\.test\.tsx?$/.test(f));

test.each(files)('src/%s imports only downwards', (file) => {
  expect(findForbiddenImports(file, readFileSync(`src/${file}`, 'utf8'))).toEqual([]);
});

describe('figures of benefit never reach a leaflet', () => {
  const ofLeaflets = files.filter((file) => /leaflet/i.test(file) || file.startsWith(`content${sep}texts${sep}`));
  const OF_FIGURES = /\/(benefit\/|benefits\.ts|agentFacts\.ts|sayEffect\.ts|BenefitLines)/;

  test('there are files to look at', () => expect(ofLeaflets.length).toBeGreaterThan(30));
  test.each(ofLeaflets)('src/%s', (file) => {
    const text = readFileSync(`src/${file}`, 'utf8');
    const imported = [...text.matchAll(IMPORTS)].map(([, single, double, template]) => single ?? double ?? template ?? '');
    expect(imported.filter((path) => OF_FIGURES.test(path))).toEqual([]);
    expect(text).not.toMatch(/\.(evidence|effect|benefit)\b/);
  });
});

describe('the rule itself', () => {
  test.each([
    ['core/stats/a.ts', `import { b } from '../../server/b.ts';`],
    ['core/a.ts', `import { b } from "../server/b.ts";`],
    ['core/a.ts', `export * from '../content/b.ts';`],
    ['core/a.ts', `const b = await import('../store/read/b.ts');`],
    ['core/a.ts', `import '../web/b.ts';`],
    ['core/a.ts', `import {\n  b,\n} from '../api/b.ts';`],
    ['core/a.ts', `import { readFileSync } from 'node:fs';`],
    ['core/a.ts', `import { z } from 'zod';`],
    ['content/a.ts', `import data from 'csv-parse';`],
    ['server/a.ts', `import { b } from '../store/write/b.ts';`],
    ['server/a.ts', `import { b } from '../web/b.ts';`],
    ['web/a.tsx', `import { b } from '../store/read/b.ts';`],
    ['helpers/a.ts', ''],
  ])('refuses in %s: %s', (file, text) => {
    expect(findForbiddenImports(file, text)).toHaveLength(1);
  });

  test.each([
    ['core/stats/a.ts', `import cdf from '@stdlib/stats-base-dists-normal-cdf';`],
    ['core/a.ts', `import { addDays } from 'date-fns';`],
    ['core/risk/a.ts', `import { b } from '../stats/b.ts';`],
    ['content/a.ts', `import type { Band } from '../core/risk/findBand.ts';`],
    ['actions/a.ts', `import { b } from '../store/write/b.ts';`],
    ['store/read/a.ts', `import { b } from '../write/b.ts';`],
    ['cli/main.ts', `import packageJson from '../../package.json' with { type: 'json' };`],
    ['server/a.ts', `import Fastify from 'fastify';`],
  ])('allows in %s: %s', (file, text) => {
    expect(findForbiddenImports(file, text)).toEqual([]);
  });
});
