import { expect, test } from 'vitest';
import { bandPath, curvePath, curvePieces } from './curvePath.ts';

const scale = { x: (minute: number) => minute, y: (ph: number) => 10 * ph };
const bent = Float64Array.of(7, 7, 7, 6, 5, 5);

test('a line keeps its bends and drops what lies on the way', () => {
  expect(curvePath(bent, scale)).toBe('M0.0 70.0L2.0 70.0L4.0 50.0L5.0 50.0');
});

test('a straight line needs two points, a dip of one minute three more', () => {
  const flat = Float64Array.from({ length: 1441 }, () => 6.8);
  expect(curvePath(flat, scale)).toBe('M0.0 68.0L1440.0 68.0');
  flat[700] = 5;
  expect(curvePath(flat, scale)).toBe('M0.0 68.0L699.0 68.0L700.0 50.0L701.0 68.0L1440.0 68.0');
});

test('in pieces, each begins where the one before it ends, and only what changed is another one', () => {
  expect(curvePieces(bent, scale, 2)).toEqual(['M0.0 70.0L2.0 70.0', 'M2.0 70.0L4.0 50.0', 'M4.0 50.0L5.0 50.0']);
  const day = Float64Array.from({ length: 1441 }, (_, minute) => 6.5 + 0.5 * Math.cos(minute / 50));
  const other = day.slice();
  other[700] = 5;
  const [before, after] = [curvePieces(day, scale, 180), curvePieces(other, scale, 180)];
  expect(before).toHaveLength(8);
  expect(after.filter((piece, i) => piece !== before[i])).toHaveLength(1);
});

test('a band goes there on the upper line and back on the lower', () => {
  expect(bandPath(Float64Array.of(5, 5, 5), Float64Array.of(7, 7, 7), scale)).toBe('M0.0 70.0L2.0 70.0L2.0 50.0L0.0 50.0Z');
});

test('a slow curve is followed: nowhere further than a hundredth off', () => {
  const slow = Float64Array.from({ length: 1441 }, (_, minute) => 6.5 + 0.5 * Math.cos(minute / 200));
  const points = [...curvePath(slow, scale).matchAll(/([\d.]+) ([\d.]+)/g)].map(([, x, y]) => [Number(x), Number(y) / 10] as const);
  expect(points.length).toBeLessThan(150);
  for (let minute = 0; minute <= 1440; minute += 1) {
    const after = Math.max(
      1,
      points.findIndex(([x]) => x >= minute),
    );
    const [[from, low] = [0, 0], [to, high] = [0, 0]] = [points[after - 1], points[after]];
    const drawn = low + ((high - low) * (minute - from)) / (to - from || 1);
    expect(Math.abs(drawn - (slow[minute] ?? 0))).toBeLessThan(0.01);
  }
});
