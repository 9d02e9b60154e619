import { expect, test } from 'vitest';
import type { Row, Terms } from './row.ts';
import { solveInOrder } from './solveInOrder.ts';

/** "2*x y" as 2 of x and 1 of y. */
const termsOf = (text: string): Terms =>
  text.split(' ').map((term) => {
    const [name = '', coefficient = '1'] = term.split('*').toReversed();
    return [name, Number(coefficient)] as const;
  });

/** Of a person from 40 packs: in this order of its rows the branches of yalps' own search go in a circle. */
const circling: readonly Row[] = [
  { terms: termsOf('s0 x4 x5'), atLeast: 1 },
  { terms: termsOf('s1 x0 x6 x7 x8'), atLeast: 1 },
  { terms: termsOf('s2 x1 x9'), atLeast: 1 },
  { terms: termsOf('s3 x2 x3'), atLeast: 1 },
  { terms: termsOf('x1 x9'), atMost: 1 },
  { terms: termsOf('x0 x6'), atMost: 1 },
  { terms: termsOf('x0 x7'), atMost: 1 },
  { terms: termsOf('x6 x7'), atMost: 1 },
  { terms: termsOf('1.5*x2 1.5*x3 x4 x5 0.5*x8'), atMost: 1.000000001 },
  { terms: termsOf('0.5*x0 1.5*x2 1.5*x3 x6 x7 0.5*x8'), atMost: 1.000000001 },
  { terms: termsOf('-7.5*x0 1.5*x2 1.5*x3 x4 x5 -7*x6 -7*x7 0.5*x8'), atMost: 1.000000001 },
  { terms: termsOf('8*s0 4*s1 2*s2 s3'), atMost: 1 },
  { terms: termsOf('a b c'), atLeast: 1 },
  { terms: termsOf('a x4'), atMost: 1 },
  { terms: termsOf('a x5'), atMost: 1 },
  { terms: termsOf('b x0'), atMost: 1 },
  { terms: termsOf('b x7'), atMost: 1 },
  { terms: termsOf('c x9'), atMost: 1 },
  { terms: termsOf('6*x0 130*x1 130*x2 5*x3 30*x4 5*x5 130*x6 5*x7 255*x8 5*x9'), atMost: 140.000001 },
];

test('a programme on which the branches of yalps go in a circle is solved', () => {
  expect(solveInOrder(circling, [termsOf('30*x1 495*x2 940*x3 186*x4 174*x5 290*x6 1153*x7 252*x8 180*x9')])?.optima).toEqual([644]);
});

test('where no whole numbers keep the rows, there is no answer', () => {
  const rows = [{ terms: termsOf('2*x'), atLeast: 1, atMost: 1 }];
  expect(solveInOrder(rows, [termsOf('x')])).toBe(undefined);
});
