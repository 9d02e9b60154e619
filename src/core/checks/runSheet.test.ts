import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { seededUniform } from '../stats/seededUniform.ts';
import { daysSheet, handsSheet, lotsSheet, sizesOfSheet } from './runSheet.ts';

const names = (prefix: string, count: number) => Array.from({ length: count }, (_, i) => `${prefix} ${i + 1}`);
const upTo = (most: number) => fc.oneof(fc.constantFrom(1, 2, most), fc.integer({ min: 1, max: most }));

describe('run sheets', () => {
  it('let every hand swab every solution once in each round, whatever the order', () => {
    fc.assert(
      fc.property(upTo(6), upTo(5), upTo(4), fc.integer(), (p, o, repeats, seed) => {
        const parts = names('Solution', p);
        const operators = names('Member', o);
        const sheet = handsSheet({ parts, operators, repeats }, seededUniform(seed));
        expect(sizesOfSheet(sheet)).toEqual({ parts: p, operators: o, repeats });
        for (let round = 0; round < repeats; round += 1) {
          const inRound = sheet.slice(round * p * o, (round + 1) * p * o);
          expect(new Set(inRound.map((run) => `${run.part} ${run.operator}`)).size).toBe(p * o);
          expect(new Set(inRound.map((run) => run.replicate))).toEqual(new Set([round + 1]));
        }
        expect(handsSheet({ parts, operators, repeats }, seededUniform(seed))).toEqual(sheet);
      }),
    );
  });

  it('leave the order to chance', () => {
    const input = { parts: names('Solution', 4), operators: names('Member', 3), repeats: 2 };
    const orders = new Set(names('', 50).map((_, seed) => JSON.stringify(handsSheet(input, seededUniform(seed)))));
    expect(orders.size).toBe(50);
    const firsts = new Set(names('', 50).map((_, seed) => handsSheet(input, seededUniform(seed))[0]?.operator));
    expect(firsts.size).toBe(3);
  });

  it('take one swab of each lot in a round, and the first day of all people before the second', () => {
    const lots = lotsSheet(['a', 'b', 'c'], 4, seededUniform(7));
    expect(lots).toHaveLength(12);
    for (let round = 0; round < 4; round += 1) {
      expect(new Set(lots.slice(3 * round, 3 * round + 3).map(({ lotId }) => lotId)).size).toBe(3);
    }
    expect(daysSheet(2)).toEqual([
      { part: 'Person 1', replicate: 1 },
      { part: 'Person 2', replicate: 1 },
      { part: 'Person 1', replicate: 2 },
      { part: 'Person 2', replicate: 2 },
    ]);
  });
});
