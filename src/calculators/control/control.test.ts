import fc from 'fast-check';
import { describe, expect, it, test } from 'vitest';
import { inputJsonSchema, runCalculator } from '../calculator.ts';
import { controlChart } from './controlChart.ts';
import { runLength } from './runLength.ts';

/** Half of the values are few whole numbers, so that ties and constant charts are common. */
const values = fc.array(fc.oneof(fc.integer({ min: 6, max: 8 }), fc.double({ min: -20, max: 20, noNaN: true })), {
  minLength: 1,
  maxLength: 30,
});

describe('control-chart', () => {
  const optional = {
    cusum: fc.option(fc.record({ k: fc.constantFrom(0, 0.5), h: fc.constantFrom(0.1, 5) }), { nil: undefined }),
    ewma: fc.option(fc.record({ lambda: fc.constantFrom(0.2, 1), limit: fc.constantFrom(0.5, 3) }), { nil: undefined }),
  };
  const inputs = fc.oneof(
    fc.record({ z: values, ...optional }),
    fc.record({ values, target: fc.record({ mean: fc.constantFrom(-1, 7), sd: fc.constantFrom(1e-3, 1) }), ...optional }),
    fc.record({ values, ...optional }),
  );

  it('answers with an output that fits its own schema, or says why the values give no limits', () => {
    fc.assert(
      fc.property(inputs, (input) => {
        const result = runCalculator(controlChart, JSON.parse(JSON.stringify(input)));
        if (result.ok) expect(controlChart.output.safeParse(result.output).error).toBe(undefined);
        else expect(result.error).toMatchObject({ code: 'NOT_DEFINED', message: expect.stringContaining('add a target') });
      }),
      { numRuns: 150 },
    );
  });

  it('takes its target from the values when none is given', () => {
    const result = runCalculator(controlChart, { values: [1, 2, 1, 2, 9] });
    expect(result).toMatchObject({ ok: true, output: { target: { mean: 3 }, individuals: { mean: 3 }, cusum: null, ewma: null } });
  });

  test.each([
    { input: {}, path: 'values' },
    { input: { values: [1], z: [1] }, path: 'values' },
    { input: { z: [1], target: { mean: 0, sd: 1 } }, path: 'target' },
    { input: { values: [1], target: { mean: 0, sd: 0 } }, path: 'target.sd' },
    { input: { z: [1], ewma: { lambda: 2, limit: 3 } }, path: 'ewma.lambda' },
    { input: { z: [1], rules: [] }, path: 'rules' },
  ])('names $path', ({ input, path }) => {
    expect(runCalculator(controlChart, input)).toMatchObject({ ok: false, error: { code: 'INPUT_INVALID', path } });
  });
});

describe('run-length', () => {
  it('gives one length for each shift, of every chart', () => {
    const lengths = (input: object) => {
      const result = runCalculator(runLength, { shiftsSd: [0, 1], ...input });
      return result.ok ? (result.output as { averageRunLength: (number | null)[] }).averageRunLength : result;
    };
    // Three digits: the values themselves are tested beside the functions.
    expect(lengths({ chart: 'cusum', k: 0.5, h: 5, sides: 2 })).toEqual([expect.closeTo(465.4, 1), expect.closeTo(10.38, 2)]);
    expect(lengths({ chart: 'ewma', lambda: 0.1, limit: 2.814, sides: 2 })).toEqual([expect.closeTo(499.6, 1), expect.closeTo(10.33, 2)]);
    expect(lengths({ chart: 'shewhart', limit: 3, sides: 1 })).toEqual([expect.closeTo(740.8, 1), expect.closeTo(43.96, 2)]);
    expect(lengths({ chart: 'multi-rules', rules: ['1-3s'] })).toEqual([expect.closeTo(370.4, 1), expect.closeTo(43.89, 2)]);
    expect(lengths({ chart: 'shewhart', limit: 50, sides: 1 })).toEqual([null, null]);
  });

  test.each([
    { input: { chart: 'cusum', k: 0.5, h: 0, sides: 2, shiftsSd: [0] }, path: 'h' },
    { input: { chart: 'cusum', k: 0.5, h: 4, sides: 3, shiftsSd: [0] }, path: 'sides' },
    { input: { chart: 'ewma', lambda: 0.1, limit: 3, h: 4, sides: 2, shiftsSd: [0] }, path: 'h' },
    { input: { chart: 'multi-rules', rules: [], shiftsSd: [0] }, path: 'rules' },
    { input: { chart: 'shewhart', limit: 3, sides: 1, shiftsSd: [] }, path: 'shiftsSd' },
    { input: { chart: 'p', shiftsSd: [0] }, path: 'chart' },
  ])('names $path of $input.chart', ({ input, path }) => {
    expect(runCalculator(runLength, input)).toMatchObject({ ok: false, error: { code: 'INPUT_INVALID', path } });
  });

  it('shows the fields of each chart in its schema', () => {
    expect(JSON.stringify(inputJsonSchema(runLength))).toContain('multi-rules');
  });
});
