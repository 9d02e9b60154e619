import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { runCalculator } from '../calculator.ts';
import { detectionLimit } from './detectionLimit.ts';
import { dilutionLinearity } from './dilutionLinearity.ts';

/** Half of the readings are few whole numbers, so that equal ones are common. */
const rlu = fc.oneof(fc.constantFrom(0, 1), fc.integer({ min: 0, max: 60 }));
const level = fc.constantFrom(1, 10, 100, 1000);

describe('detection-limit', () => {
  it('answers every proper input with an output that fits its own schema, each null with its reason', () => {
    const inputs = fc.record({
      blanksRlu: fc.array(rlu, { minLength: 1, maxLength: 25 }),
      lows: fc.array(fc.record({ level, rlu }), { maxLength: 8 }),
    });
    fc.assert(
      fc.property(inputs, (input) => {
        const result = runCalculator(detectionLimit, input);
        expect(result).toMatchObject({ ok: true });
        const output = detectionLimit.output.parse(result.ok && result.output);
        for (const limit of ['limitOfBlankRlu', 'limitOfBlankRankRlu', 'limitOfDetectionRlu'] as const) {
          expect(output[limit] === null).toBe(output.notDefined[limit] !== null);
        }
      }),
    );
  });

  it('names a reading below 0', () => {
    const result = runCalculator(detectionLimit, { blanksRlu: [1, -1], lows: [] });
    expect(result).toMatchObject({ ok: false, error: { code: 'INPUT_INVALID', path: 'blanksRlu.1' } });
  });
});

describe('dilution-linearity', () => {
  it('answers with an output that fits its own schema, or says why there is no line', () => {
    const value = fc.oneof(fc.constantFrom(1, 2), fc.integer({ min: 1, max: 5000 }));
    fc.assert(
      fc.property(fc.array(fc.record({ level, value }), { maxLength: 12 }), (points) => {
        const result = runCalculator(dilutionLinearity, { points });
        if (!result.ok) {
          expect(result.error).toMatchObject({ code: 'NOT_DEFINED', message: expect.stringMatching(/line/) });
          return;
        }
        const output = dilutionLinearity.output.parse(result.output);
        for (const test of ['lackOfFit', 'quadratic'] as const) expect(output[test] === null).toBe(output.notDefined[test] !== null);
      }),
    );
  });

  it('names a zero, whose log does not exist', () => {
    const points = [1, 10, 0].map((amount) => ({ level: amount, value: 5 }));
    const result = runCalculator(dilutionLinearity, { points });
    expect(result).toMatchObject({ ok: false, error: { code: 'INPUT_INVALID', path: 'points.2.level' } });
  });
});
