import fc from 'fast-check';
import { expect, it, test } from 'vitest';
import { hatchBox, shapeOfAmount } from './stripLayout.ts';

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
