import { describe, expect, test } from 'vitest';
import { ratioScale, ratioTicks } from './ratioAxis.ts';

const plot = { left: 0, right: 100, top: 10, bottom: 210 };
const ticks = (ratios: readonly number[]) => ratioTicks(ratioScale(ratios, plot));

describe('the axis of ratios', () => {
  test('has all together in the middle, and half as far below as double above', () => {
    const y = ratioScale([0.5, 1.3], plot);
    expect(y(1)).toBeCloseTo(110, 9);
    expect(y(2) - y(1)).toBeCloseTo(y(1) - y(0.5), 9);
    expect(y(0.5)).toBeLessThan(plot.bottom);
  });

  test.each([
    { what: 'nothing', ratios: [] },
    { what: 'hands alike', ratios: [1, 1] },
    { what: 'a tenth', ratios: [0.9, 1.1] },
    { what: 'one far above', ratios: [1, 30] },
  ])('has few ticks, all within, one of them "as all": $what', ({ ratios }) => {
    const found = ticks(ratios);
    expect(found.filter(({ says }) => says === 'as all')).toHaveLength(1);
    expect(found.length).toBeLessThanOrEqual(7);
    expect(new Set(found.map(({ says }) => says)).size).toBe(found.length);
    for (const { at } of found) {
      expect(at).toBeGreaterThanOrEqual(plot.top);
      expect(at).toBeLessThanOrEqual(plot.bottom);
    }
  });

  test('says a tenth by its sign', () => {
    expect(ticks([0.87, 1.1]).map(({ says }) => says)).toEqual(['−10 %', '−5 %', 'as all', '+5 %', '+10 %', '+15 %']);
  });
});
