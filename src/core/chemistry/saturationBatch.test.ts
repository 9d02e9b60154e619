import { describe, expect, it, test } from 'vitest';
import { seededUniform } from '../stats/seededUniform.ts';
import { saturation } from './saturation.ts';
import { FLUID_STATE, newBatchResult, saturationBatch } from './saturationBatch.ts';
import { COMPONENTS, MINERALS, type Totals } from './types.ts';

const FLUIDS = 40;

function drawBatch(seed: number) {
  const random = seededUniform(seed);
  return {
    pH: Float64Array.from({ length: FLUIDS }, () => 3 + 8 * random()),
    totalsMmolPerKg: Float64Array.from({ length: FLUIDS * COMPONENTS.length }, () => 20 * random() ** 3),
  };
}

const totalsOf = (batch: ReturnType<typeof drawBatch>, fluid: number): Totals =>
  Object.fromEntries(COMPONENTS.map((name, i) => [name, batch.totalsMmolPerKg[fluid * COMPONENTS.length + i]]));

describe('saturationBatch', () => {
  it('gives each fluid what it gets alone', () => {
    const batch = drawBatch(1);
    const result = saturationBatch(batch, newBatchResult(FLUIDS));
    for (let fluid = 0; fluid < FLUIDS; fluid += 1) {
      const alone = saturation(totalsOf(batch, fluid), batch.pH[fluid] ?? 0);
      expect(result.ionicStrength[fluid]).toBe(alone.ionicStrength);
      expect(result.chargeImbalanceMmolPerKg[fluid]).toBe(alone.chargeImbalanceMmolPerKg);
      expect(Math.log10(result.activity[4 * fluid + 3] ?? 0)).toBe(alone.logActivity.carbonate);
      expect(MINERALS.map((_, i) => result.saturationIndex[MINERALS.length * fluid + i])).toEqual(
        MINERALS.map((mineral) => alone.saturationIndex[mineral]),
      );
    }
  });

  it('ends at the same place from a start that is near, in fewer steps', () => {
    const batch = drawBatch(2);
    const cold = saturationBatch(batch, newBatchResult(FLUIDS));
    const warm = saturationBatch(drawBatch(2), newBatchResult(FLUIDS));
    for (let at = 0; at < batch.totalsMmolPerKg.length; at += 1) batch.totalsMmolPerKg[at] = (batch.totalsMmolPerKg[at] ?? 0) * 1.003;
    const fresh = saturationBatch(batch, newBatchResult(FLUIDS));
    saturationBatch(batch, warm, { warm: true });
    for (const [i, index] of fresh.saturationIndex.entries()) expect(warm.saturationIndex[i]).toBeCloseTo(index, 8);
    expect(warm.calciumSteps).toBeLessThan(cold.calciumSteps);
  });

  it('marks the fluid that is strong and the one that is too strong, and goes on', () => {
    const totalsMmolPerKg = new Float64Array(3 * COMPONENTS.length);
    const sodium = COMPONENTS.indexOf('sodium');
    for (const [fluid, amount] of [800, 900, 10].entries()) totalsMmolPerKg[fluid * COMPONENTS.length + sodium] = amount;
    const result = newBatchResult(3);
    saturationBatch({ pH: Float64Array.of(7, 7, 7), totalsMmolPerKg }, result);
    // Sodium alone: the ionic strength is half of it.
    expect([...result.state]).toEqual([FLUID_STATE.strong, FLUID_STATE.strong, FLUID_STATE.good]);
    totalsMmolPerKg[COMPONENTS.indexOf('potassium')] = 900;
    saturationBatch({ pH: Float64Array.of(7, 7, 7), totalsMmolPerKg }, result, { warm: true });
    expect([...result.state]).toEqual([FLUID_STATE.refused, FLUID_STATE.strong, FLUID_STATE.good]);
    expect([result.ionicStrength[0], result.saturationIndex[0]]).toEqual([Number.NaN, Number.NaN]);
    expect(result.ionicStrength[2]).toBeCloseTo(0.005, 5);
    // And is solved again from nothing once it can be.
    totalsMmolPerKg[COMPONENTS.indexOf('potassium')] = 0;
    saturationBatch({ pH: Float64Array.of(7, 7, 7), totalsMmolPerKg }, result, { warm: true });
    expect(result.ionicStrength[0]).toBeCloseTo(0.4, 5);
  });

  test.each([
    { at: 3, value: -1, says: /^totalsMmolPerKg.0.carbonate must be 0..1000/ },
    { at: 11, value: Number.NaN, says: /^totalsMmolPerKg.1.phosphate must/ },
  ])('names the row and the component', ({ at, value, says }) => {
    const totalsMmolPerKg = new Float64Array(20);
    totalsMmolPerKg[at] = value;
    expect(() => saturationBatch({ pH: Float64Array.of(7, 7), totalsMmolPerKg }, newBatchResult(2))).toThrow(says);
  });

  it('refuses a pH outside its range, and lengths that do not fit', () => {
    const totalsMmolPerKg = new Float64Array(20);
    const run = (pH: Float64Array, room: number) => () => saturationBatch({ pH, totalsMmolPerKg }, newBatchResult(room));
    expect(run(Float64Array.of(7, 13), 2)).toThrow(/^pH.1 must be 2..12: 13/);
    expect(run(Float64Array.of(7), 1)).toThrow(/^totalsMmolPerKg must hold 10 numbers/);
    expect(run(Float64Array.of(7, 7), 1)).toThrow(/^into must have room/);
  });
});
