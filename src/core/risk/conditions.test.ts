import fc from 'fast-check';
import { expect, it, test } from 'vitest';
import { conditionHolds, isInClass, listValueClasses, nearestInClass } from './conditions.ts';
import type { Condition, ItemDefinition } from './protocol.ts';

const snacks: ItemDefinition = { id: 'snacks', label: '', group: 'diet', role: 'risk', valueType: 'count', changeable: 'person' };

test('an unknown value fits no condition, not even "no"', () => {
  expect(conditionHolds({ item: 'a', is: false }, {})).toBe(false);
  expect(conditionHolds({ item: 'a', from: 0, to: null }, { a: undefined })).toBe(false);
  expect(conditionHolds({ item: 'a', is: false }, { a: false })).toBe(true);
});

test('bands touch: 6 months is high, 7 moderate, 23 moderate, 24 neither', () => {
  const bands: readonly Condition[] = [
    { item: 'snacks', from: 0, to: 6 },
    { item: 'snacks', from: 7, to: 23 },
  ];
  expect(listValueClasses(snacks, bands)).toEqual([
    { from: 0, to: 6 },
    { from: 7, to: 23 },
    { from: 24, to: null },
  ]);
});

const ranges = fc.array(
  fc
    .tuple(fc.nat(6), fc.oneof(fc.constant(null), fc.constant(0), fc.nat(5)))
    .map(([from, width]): Condition => ({ item: 'snacks', from, to: width === null ? null : from + width })),
  { maxLength: 4 },
);
const value = fc.oneof(fc.constantFrom(0, 1, 6, 7, 11, 12), fc.nat(40));

it('every value lies in one class, no class is split by a condition, and nearest stays in its class', () => {
  fc.assert(
    fc.property(ranges, value, value, (conditions, a, b) => {
      const classes = listValueClasses(snacks, conditions);
      const own = classes.filter((c) => isInClass(c, a));
      expect(own).toHaveLength(1);
      const [first] = own;
      if (first && isInClass(first, b)) {
        for (const c of conditions) expect(conditionHolds(c, { snacks: a })).toBe(conditionHolds(c, { snacks: b }));
      }
      for (const c of classes) {
        const near = nearestInClass(c, a);
        expect(isInClass(c, near)).toBe(true);
        expect(isInClass(c, nearestInClass(c, undefined))).toBe(true);
        if (isInClass(c, b)) expect(Math.abs(Number(near) - a)).toBeLessThanOrEqual(Math.abs(b - a));
      }
    }),
  );
});
