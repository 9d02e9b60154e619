import { expect, test } from 'vitest';
import { stepsToExit } from './stepsToExit.ts';

const chain = (moves: readonly (readonly number[])[], leaves: readonly number[]) =>
  stepsToExit({ size: leaves.length, moves: Float64Array.from(moves.flat()), leaves: Float64Array.from(leaves) });

test('one state: the mean of a geometric distribution', () => {
  expect(chain([[0]], [0.25])).toBe(4);
  expect(chain([[0]], [0])).toBe(Number.POSITIVE_INFINITY);
});

// A coin until `run` heads in a row: 2 (2^run - 1) throws, 2^(run + 1) - 2. Tolerance: 1e-13 relative, however long it takes.
test.each([1, 2, 5, 10, 40, 400])('%i heads in a row', (run) => {
  const moves = Array.from({ length: run }, (_, i) => Array.from({ length: run }, (_, j) => (j === 0 || j === i + 1 ? 0.5 : 0)));
  const leaves = Array.from({ length: run }, (_, i) => (i === run - 1 ? 0.5 : 0));
  expect(chain(moves, leaves) / (2 ** (run + 1) - 2)).toBeCloseTo(1, 13);
});

test('a state without a way out makes the mean infinite only for whoever can get there', () => {
  expect(
    chain(
      [
        [0, 0.5],
        [0, 0],
      ],
      [0.5, 0],
    ),
  ).toBe(Number.POSITIVE_INFINITY);
  expect(
    chain(
      [
        [0, 0],
        [0, 0],
      ],
      [0.5, 0],
    ),
  ).toBe(2);
});
