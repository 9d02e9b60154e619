import fc from 'fast-check';
import { expect, it, test } from 'vitest';
import { hatchBox, layOutDayStrip, shapeOfAmount } from './stripLayout.ts';
import type { DaySlot, DayStep } from './types.ts';

const step = (when: DaySlot, text = 'Brush.'): DayStep => ({ when, text });

test('two times of the day share the width evenly; the night starts at bedtime', () => {
  const { columns, night, besides } = layOutDayStrip(
    [step('morning'), step('bedtime', 'A much longer text for this time.'), step('at-visit')],
    174,
    4,
  );
  expect(columns.map(({ when, xMm, widthMm }) => [when, xMm, widthMm])).toEqual([
    ['morning', 0, 85],
    ['bedtime', 89, 85],
  ]);
  expect(night).toEqual({ xMm: 89, widthMm: 85 });
  expect(besides.map(({ when }) => when)).toEqual(['at-visit']);
});

test('of three, the one with most text is widest, and none is narrower than a brush', () => {
  const { columns } = layOutDayStrip([step('morning'), step('after-meals', 'A much longer text for this time.'), step('bedtime')], 174);
  const widths = columns.map(({ widthMm }) => widthMm);
  expect(Math.max(...widths)).toBe(widths[1]);
  expect(Math.min(...widths)).toBeGreaterThan(36);
});

test('nothing to do gives an empty strip without night', () => {
  expect(layOutDayStrip([], 174)).toEqual({ widthMm: 174, columns: [], night: null, besides: [] });
});

test('a strip narrower than its gutters is refused', () => {
  expect(() => layOutDayStrip([step('morning'), step('bedtime')], 5, 6)).toThrow('too narrow');
  expect(() => layOutDayStrip([], Number.NaN)).toThrow('too narrow');
});

const slot = fc.constantFrom<DaySlot[]>('morning', 'after-meals', 'evening', 'bedtime', 'weekly', 'at-visit');
const steps = fc.array(fc.record({ when: slot, text: fc.oneof(fc.constantFrom('', 'x'.repeat(400)), fc.string({ maxLength: 80 })) }), {
  maxLength: 12,
});
it('columns fill the width in the order of the day, and hold every step once', () => {
  fc.assert(
    fc.property(steps, fc.oneof(fc.constantFrom(100, 174, 179.9), fc.double({ min: 60, max: 400, noNaN: true })), (some, widthMm) => {
      const { columns, besides } = layOutDayStrip(some, widthMm, 6);
      columns.forEach(({ xMm, widthMm: columnMm }, i) => {
        const next = columns[i + 1];
        expect(columnMm).toBeGreaterThan(0);
        expect(xMm + columnMm).toBeCloseTo(next === undefined ? widthMm : next.xMm - 6, 6);
      });
      expect([...columns, ...besides].flatMap((part) => part.steps)).toHaveLength(some.length);
      const order = ['morning', 'after-meals', 'evening', 'bedtime'];
      expect(columns.map(({ when }) => when)).toEqual(order.filter((when) => some.some((s) => s.when === when)));
    }),
  );
});

// A grain of rice about 6 mm, a pea 6 to 8 mm, a ribbon its own length: the sizes that advice on paste names. Exact.
test.each([
  ['smear', undefined, 6],
  ['pea', undefined, 7],
  ['ribbon', 1, 10],
  ['ribbon', 2, 20],
] as const)('%s %s is %i mm long, on a brush that holds it', (kind, value, lengthMm) => {
  const shape = shapeOfAmount({ kind, value, text: '' });
  if (shape?.kind !== 'brush') throw new Error('expected a brush');
  expect(shape.paste.widthMm).toBe(lengthMm);
  expect(shape.paste.xMm).toBeGreaterThan(0);
  expect(shape.paste.xMm + shape.paste.widthMm).toBeLessThan(shape.head.widthMm);
  expect(shape.head.widthMm + shape.handle.widthMm).toBe(shape.widthMm);
});

// Volume of a straight cup, 30 mm wide: 10 mL = 10,000 mm3 stand 10,000 / (pi * 15^2) = 14.147 mm high. To 0.001 mm.
test('10 mL stand 14.1 mm high in a cup 30 mm wide', () => {
  const shape = shapeOfAmount({ kind: 'mL', value: 10, text: '' });
  expect(shape).toMatchObject({ kind: 'cup', widthMm: 30 });
  expect(shape?.kind === 'cup' && shape.levelMm).toBeCloseTo(14.147, 3);
});

test('nothing is drawn without a true size', () => {
  expect(shapeOfAmount({ kind: 'piece', value: 2, text: '' })).toBeUndefined();
  expect(shapeOfAmount({ kind: 'mL', value: 240, text: '' })).toBeUndefined();
  expect(shapeOfAmount({ kind: 'mL', text: '' })).toBeUndefined();
  expect(shapeOfAmount({ kind: 'ribbon', text: '' })).toBeUndefined();
  expect(shapeOfAmount({ kind: 'pea', isOnFinger: true, text: '' })).toBeUndefined();
});

it('hatching stays inside its box and rises at 45 degrees', () => {
  const size = fc.oneof(fc.constantFrom(1, 3, 200), fc.double({ min: 0.5, max: 200, noNaN: true }));
  fc.assert(
    fc.property(size, size, fc.double({ min: 0.5, max: 5, noNaN: true }), (widthMm, heightMm, stepMm) => {
      const strokes = hatchBox({ xMm: 10, yMm: 20, widthMm, heightMm }, stepMm);
      expect(strokes.length).toBeGreaterThan((widthMm + heightMm) / stepMm - 3);
      for (const { x1, y1, x2, y2 } of strokes) {
        expect(Math.min(x1, x2)).toBeGreaterThanOrEqual(10 - 1e-9);
        expect(Math.max(x1, x2)).toBeLessThanOrEqual(10 + widthMm + 1e-9);
        expect(Math.min(y1, y2)).toBeGreaterThanOrEqual(20 - 1e-9);
        expect(Math.max(y1, y2)).toBeLessThanOrEqual(20 + heightMm + 1e-9);
        expect(x2 - x1).toBeCloseTo(y1 - y2, 6);
      }
    }),
  );
  expect(() => hatchBox({ xMm: 0, yMm: 0, widthMm: 1, heightMm: 1 }, 0)).toThrow('stepMm');
});
