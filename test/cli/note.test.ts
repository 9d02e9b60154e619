import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { runCli } from '../../src/cli/runCli.ts';
import { cliIoOf } from '../cliIo.ts';

test('note prints the chart note of a visit file, and names a wrong field', async () => {
  const io = cliIoOf();
  expect(await runCli(['note', 'examples/01-returning-adult.json'], io)).toBe(0);
  const { person } = JSON.parse(readFileSync('examples/01-returning-adult.json', 'utf8')) as { person: { name: string } };
  expect(io.out.join('\n').startsWith(`${person.name}, born `)).toBe(true);
  expect(io.out.join('\n')).toMatch(/\nLevel: /);
  expect(io.out.join('\n')).toMatch(/\nWaiting for a signature: /);
  expect(await runCli(['note', 'package.json'], cliIoOf())).toBe(2);
});
