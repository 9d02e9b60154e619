import { describe, expect, it, test } from 'vitest';
import { chooseDaysSizes, chooseHandsSizes, chooseLotsSizes } from './chooseSizes.ts';
import { predictDays, predictHands } from './predictWidths.ts';

const noise = { repeatability: 0.0225, operator: 0.008, lot: 0.01, withinPerson: 0.22 };

describe('chooseHandsSizes', () => {
  const wanted = { of: 'swabs', width: 0.08, mostSwabs: 150, noise } as const;

  it('takes the fewest swabs whose interval is narrow enough', () => {
    const { reached, study } = chooseHandsSizes(3, wanted);
    expect(reached).toBe(true);
    expect(study.widths.swabs).toBeLessThanOrEqual(0.08);
    expect(study.widths).toEqual(predictHands(study.sizes, noise));
    const { parts, repeats } = study.sizes;
    expect(study.swabs).toBe(3 * parts * repeats);
    for (let p = 2; p <= 10; p += 1) {
      for (const r of [2, 5]) {
        const sizes = { parts: p, operators: 3, repeats: r };
        if (3 * p * r < study.swabs) expect(predictHands(sizes, noise, 5).swabs).toBeGreaterThan(0.075);
      }
    }
  });

  it('says what is the best within the limits where the wish is out of reach: more swabs do not tell hands apart', () => {
    const { reached, study } = chooseHandsSizes(2, { ...wanted, of: 'hands', width: 0.1 });
    expect(reached).toBe(false);
    expect(study.swabs).toBeLessThanOrEqual(150);
    expect(study.widths.hands).toBeGreaterThan(1);
  });

  test.each([
    [1, wanted, /operators/],
    [2, { ...wanted, width: 0 }, /width/],
    [2, { ...wanted, width: Number.NaN }, /width/],
    [2, { ...wanted, mostSwabs: 7 }, /mostSwabs must be at least 8/],
  ] as const)('refuses %s hands, %j', (operators, input, message) => {
    expect(() => chooseHandsSizes(operators, input)).toThrow(message);
  });
});

describe('chooseLotsSizes and chooseDaysSizes', () => {
  it('need more of the same for a narrower interval', () => {
    const lots = [0.2, 0.1, 0.06].map((width) => chooseLotsSizes(3, { of: 'swabs', width, mostSwabs: 200, noise }));
    expect(lots.map(({ reached }) => reached)).toEqual([true, true, true]);
    const days = [1, 0.5, 0.3].map((width) => chooseDaysSizes({ of: 'days', width, mostSwabs: 200, noise }));
    for (const list of [lots, days]) {
      const swabs = list.map(({ study }) => study.swabs);
      expect(swabs).toEqual([...swabs].sort((a, b) => a - b));
      expect(new Set(swabs).size).toBe(3);
    }
    const { study } = chooseDaysSizes({ of: 'days', width: 0.5, mostSwabs: 200, noise });
    expect(predictDays({ people: study.sizes.people - 1 }, noise).days).toBeGreaterThan(0.5);
  });

  it('refuse one lot', () => expect(() => chooseLotsSizes(1, { of: 'lots', width: 1, mostSwabs: 50, noise })).toThrow(/lots/));
});
