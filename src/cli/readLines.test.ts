import fc from 'fast-check';
import { expect, test } from 'vitest';
import { readLines } from './readLines.ts';

async function collect(chunks: readonly (Uint8Array | string)[]) {
  const lines: [number, string][] = [];
  for await (const together of readLines(streamOf(chunks)))
    lines.push(...together.map(({ number, text }): [number, string] => [number, text]));
  return lines;
}

async function* streamOf(chunks: readonly (Uint8Array | string)[]) {
  yield* chunks;
}

test.each<[string, string[], [number, string][]]>([
  ['nothing', [], []],
  ['one line without its end', ['{}'], [[1, '{}']]],
  [
    'both kinds of line end',
    ['a\r\nb\n'],
    [
      [1, 'a'],
      [2, 'b'],
    ],
  ],
  [
    'empty lines within count, those at the end do not',
    ['a\n\nb\n\n \n'],
    [
      [1, 'a'],
      [2, ''],
      [3, 'b'],
    ],
  ],
  [
    'empty lines first',
    ['\n\na'],
    [
      [1, ''],
      [2, ''],
      [3, 'a'],
    ],
  ],
])('%s', async (_, chunks, lines) => {
  expect(await collect(chunks)).toEqual(lines);
});

test('where the chunks are cut makes no difference, not even inside a letter', async () => {
  const cut = fc.oneof(fc.constantFrom(0, 1), fc.nat(40));
  await fc.assert(
    fc.asyncProperty(fc.array(fc.constantFrom('', 'a', 'ñ', '日本', '😀 x', ' '), { maxLength: 6 }), fc.array(cut), async (texts, cuts) => {
      const whole = Buffer.from(texts.join('\n'));
      const places = [...cuts.filter((c) => c <= whole.length), whole.length].sort((a, b) => a - b);
      const chunks = places.map((end, i) => whole.subarray(places[i - 1] ?? 0, end));
      expect(await collect(chunks)).toEqual(await collect([whole.toString()]));
    }),
  );
});

test('tells how many bytes were taken in', async () => {
  const seen: number[] = [];
  for await (const together of readLines(streamOf(['ñ\n', 'b\n']))) seen.push(...together.map(({ bytesRead }) => bytesRead));
  expect(seen).toEqual([3, 5]);
});
