import { describe, expect, it } from 'vitest';
import { dayTables } from '../../../content/plaque/dayTables.ts';
import { mouthPresets } from '../../../content/plaque/presets.ts';
import { readyDays } from '../../../content/readyDays.ts';
import { seededUniform } from '../../stats/seededUniform.ts';
import { acidLines } from './acidLines.ts';
import { bandOf, intervalOf, joinSamples, sampleDay } from './dayBand.ts';
import { buildDayModel } from './dayModel.ts';
import { drawModels, spreadAt } from './drawModels.ts';

const draws = (seed: number, count = 40) => drawModels(mouthPresets.highAcid, dayTables, count, seededUniform(seed));

describe('drawModels', () => {
  it('gives the same draws for the same seed, and others for another', () => {
    expect(draws(7)).toEqual(draws(7));
    expect(draws(7)).not.toEqual(draws(8));
    expect(draws(7, 50).slice(0, 40)).toEqual(draws(7));
  });

  it('varies what is tuned within its range, and nothing else', () => {
    const usual = buildDayModel(mouthPresets.highAcid, dayTables);
    for (const { constants, eating, mouth } of draws(3)) {
      for (const [rows, values, plain] of [
        [dayTables.constants, constants, usual.constants],
        [dayTables.eating, eating, usual.eating],
      ] as const) {
        for (const [name, { low, high }] of Object.entries(rows)) {
          const value = (values as Record<string, number>)[name] ?? Number.NaN;
          if (low === undefined || high === undefined) expect(value).toBe((plain as Record<string, number>)[name]);
          else expect(value >= low && value <= high).toBe(true);
        }
      }
      expect(mouth.plaque.aciduricShare).toBeLessThanOrEqual(1);
      expect(mouth.saliva.swallowVolumeMl).toBeGreaterThan(mouth.saliva.residualVolumeMl);
    }
    const thick = draws(3, 400).map(({ mouth }) => mouth.plaque.thicknessMm);
    const below = thick.filter((mm) => mm < mouthPresets.highAcid.plaque.thicknessMm).length;
    expect(below).toBeGreaterThan(160);
    expect(below).toBeLessThan(240);
  });

  it('puts the ends of a range at the ends of the stream, the usual value in the middle', () => {
    expect([0, 0.5, 1].map((share) => spreadAt(share, 2, [1, 8]))).toEqual([1, 2, 8]);
    expect(spreadAt(0.75, 2, [1, 8])).toBeCloseTo(4, 12);
  });

  it.each([0, 1.5, 10_001, Number.NaN])('refuses %f draws', (count) => {
    expect(() => draws(1, count)).toThrow('count must be 1 to 10000');
  });
});

describe('the band', () => {
  const { foods } = dayTables;
  const lines = acidLines(dayTables);
  const day = { ...readyDays[0]?.day, wakeMinute: 420, sleepMinute: 1380, events: readyDays[0]?.day.events.slice(0, 3) ?? [] };

  it('is the same whole or in parts, and lies around the curve in most minutes', () => {
    const models = draws(5, 6);
    const whole = sampleDay(day, models, { foods, lines });
    const parts = joinSamples([sampleDay(day, models.slice(0, 2), { foods, lines }), sampleDay(day, models.slice(2), { foods, lines })]);
    expect(parts).toEqual(whole);
    const band = bandOf(whole);
    expect(band.samples).toBe(6);
    expect(band.lowPh.every((low, minute) => low <= (band.highPh[minute] ?? 0))).toBe(true);
    expect(band.minutesBelow.saliva.low).toBeLessThan(band.minutesBelow.saliva.high);
    expect(bandOf(sampleDay(day, draws(5, 6), { foods, lines }))).toEqual(band);
  });

  // Quantiles of type 7 of 0 to 100 at 2.5 and 97.5 in 100 are 2.5 and 97.5; to 1e-9.
  it('takes 95 in 100', () => {
    expect(intervalOf(Float64Array.from({ length: 101 }, (_, i) => 100 - i))).toEqual({
      low: expect.closeTo(2.5, 9),
      high: expect.closeTo(97.5, 9),
    });
  });

  it('needs a part', () => {
    expect(() => joinSamples([])).toThrow('parts');
  });
});
