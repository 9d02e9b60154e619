import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, expect, test } from 'vitest';
import { runCli } from '../../src/cli/runCli.ts';
import { cliIoOf } from '../cliIo.ts';

const folder = mkdtempSync(join(tmpdir(), 'ebbline-documents-'));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

/** Every line of the documents that runs the command line without a practice's data. */
const commands = ['README.md', 'examples/README.md'].flatMap((file) =>
  [...readFileSync(file, 'utf8').matchAll(/^(?:echo '([^']+)' \| )?npm run --silent ebbline -- (.+)$/gm)]
    .map(([, input = '', words = '']) => ({ file, input, words }))
    .filter(({ words }) => !/^(backup|restore|verify|start)\b/.test(words)),
);

test('there are such lines', () => {
  expect(commands.length).toBeGreaterThanOrEqual(6);
});

test.each(commands)('$file: ebbline $words', async ({ input, words }) => {
  const argv = words.split(' ').map((word) => (/\.(pdf|svg)$/.test(word) ? join(folder, word) : word));
  const io = cliIoOf(input);
  expect({ code: await runCli(argv, io), err: io.err }).toEqual({ code: 0, err: [] });
  expect(io.out.join('\n').length).toBeGreaterThan(20);
});
