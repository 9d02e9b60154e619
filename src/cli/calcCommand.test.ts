import { describe, expect, test } from 'vitest';
import { cliIoOf } from '../../test/cliIo.ts';
import { calculators } from '../calculators/index.ts';
import { calcCommand } from './calcCommand.ts';

const good = { readingRlu: 4_400, cutoffRlu: 4_200, cv: 0.25 };
const json = (lines: readonly string[]) => lines.map((line) => JSON.parse(line) as Record<string, unknown>);

test('--list names every calculator with one line each', async () => {
  const io = cliIoOf();
  expect(await calcCommand(undefined, { list: true }, io)).toBe(0);
  expect(io.out).toHaveLength(calculators.length);
  expect(io.out[0]).toMatch(/^[a-z-]+ {2,}\S.+\S$/);
  expect(io.out.map((line) => line.split(' ')[0])).toContain('reading-interpretation');
});

test.each(calculators.map(({ name }) => name))('%s --schema prints both schemas', async (name) => {
  const io = cliIoOf();
  expect(await calcCommand(name, { schema: true }, io)).toBe(0);
  const [schemas] = json(io.out);
  expect(schemas).toMatchObject({ input: { $schema: expect.any(String) }, output: { $schema: expect.any(String) } });
});

test('one object in, one object out', async () => {
  const io = cliIoOf(JSON.stringify(good));
  expect(await calcCommand('reading-interpretation', {}, io)).toBe(0);
  expect(json(io.out)[0]).toMatchObject({ verdict: 'too-close' });
  expect(io.err).toEqual([]);
});

describe('bad input is one sentence, exit 2', () => {
  test.each<[string, string, RegExp, string]>([
    ['a letter for a number', JSON.stringify({ ...good, readingRlu: 'x' }), /^readingRlu: must be a number$/, 'readingRlu'],
    ['a negative reading', JSON.stringify({ ...good, readingRlu: -5 }), /^readingRlu: must be at least 0$/, 'readingRlu'],
    ['an unknown field', JSON.stringify({ ...good, colour: 1 }), /^colour: is not a known field$/, 'colour'],
    ['a missing field', JSON.stringify({ readingRlu: 1, cv: 0.2 }), /^cutoffRlu: is missing$/, 'cutoffRlu'],
    ['no JSON', '{"readingRlu": 4400', /^The input is not valid JSON/, ''],
    ['nothing', '', /^The input is empty/, ''],
    ['a list', '[]', /^The input must be an object$/, ''],
  ])('%s', async (_, input, sentence, path) => {
    const io = cliIoOf(input);
    expect(await calcCommand('reading-interpretation', {}, io)).toBe(2);
    expect(io.err).toHaveLength(1);
    expect(io.err[0]).toMatch(sentence);
    expect(json(io.out)).toEqual([{ error: { code: 'INPUT_INVALID', message: expect.any(String), path } }]);
  });
});

test('an unknown name says where the names are', async () => {
  const io = cliIoOf();
  expect(await calcCommand('horoscope', {}, io)).toBe(2);
  expect(io.err.join()).toMatch(/There is no calculator "horoscope".*--list/);
  expect(await calcCommand(undefined, {}, cliIoOf())).toBe(2);
});

describe('--lines', () => {
  test('gives one line for each line, in order, and goes on after a bad one', async () => {
    const lines = Array.from({ length: 1_000 }, (_, i) => JSON.stringify({ ...good, readingRlu: 1_000 + i }));
    lines[499] = '{"readingRlu": 4400, ';
    const io = cliIoOf(`${lines.join('\n')}\n`);
    expect(await calcCommand('reading-interpretation', { lines: true }, io)).toBe(1);
    expect(io.out).toHaveLength(1_000);
    const answers = json(io.out);
    expect(answers[499]).toEqual({
      error: { code: 'INPUT_INVALID', message: expect.stringMatching(/not valid JSON/), path: '' },
      line: 500,
    });
    const lows = answers.flatMap((a) => ('intervalRlu' in a ? [(a.intervalRlu as { low: number }).low] : []));
    expect(lows).toHaveLength(999);
    expect(lows).toEqual([...lows].sort((a, b) => a - b));
    expect(io.err).toHaveLength(1);
    expect(io.err[0]).toMatch(/^Line 500 is not valid JSON \(.*\), so it got no answer\. 999 of 1000 lines were answered\.$/);
  });

  test('names the field of the first bad line, and counts the others', async () => {
    const io = cliIoOf([JSON.stringify({ ...good, cv: 'x' }), '\n', 'null', '\n\n', JSON.stringify(good)]);
    expect(await calcCommand('reading-interpretation', { lines: true }, io)).toBe(1);
    expect(json(io.out).map((line) => ('error' in line ? 'error' : 'answer'))).toEqual(['error', 'error', 'error', 'answer']);
    expect(io.err).toEqual([
      'Line 1, cv: must be a number, so it got no answer. Nor did 2 more, each named in its place in the output. 1 of 4 lines was answered.',
    ]);
  });

  test('no lines in, none out', async () => {
    const io = cliIoOf('');
    expect(await calcCommand('reading-interpretation', { lines: true }, io)).toBe(0);
    expect([io.out, io.err]).toEqual([[], []]);
  });
});
