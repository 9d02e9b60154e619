import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { versions } from '../src/content/versions.ts';

test('results are stamped with the version of the package', () => {
  expect(versions.code).toBe(JSON.parse(readFileSync('package.json', 'utf8')).version);
});
