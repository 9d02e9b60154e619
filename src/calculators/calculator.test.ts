import fc from 'fast-check';
import { describe, expect, it, test } from 'vitest';
import { z } from 'zod';
import { type Calculator, inputJsonSchema, NotDefinedError, outputJsonSchema, runCalculator } from './calculator.ts';
import { calculators, findCalculator } from './index.ts';

const dummy = (run: (input: { size: number }) => unknown): Calculator<{ size: number }> => ({
  name: 'dummy',
  summary: '',
  input: z.strictObject({ size: z.number() }),
  output: z.unknown(),
  run,
});
const errorOf = (calculator: Calculator, input: unknown) => {
  const result = runCalculator(calculator, input);
  if (result.ok) throw new Error('expected an error');
  return result.error;
};
const get = (name: string) => {
  const calculator = findCalculator(name);
  if (calculator === undefined) throw new Error(`no calculator ${name}`);
  return calculator;
};

describe('runCalculator', () => {
  it('refuses an unknown field by its name, wherever it stands', () => {
    expect(errorOf(get('reading-change'), { firstRlu: 1, secondRlu: 2, sdLogSingle: 1, cutoff: 3 })).toEqual({
      code: 'INPUT_INVALID',
      message: 'is not a known field',
      path: 'cutoff',
    });
    expect(errorOf(get('censored-summary'), { readings: [{ rlu: 5 }, { rlu: 6, unit: 'RLU' }] }).path).toBe('readings.1.unit');
  });

  test.each([
    ['reading-interpretation', { cutoffRlu: 4200, cv: 0.3 }, 'readingRlu'],
    ['reading-interpretation', { readingRlu: '5150', cutoffRlu: 4200, cv: 0.3 }, 'readingRlu'],
    ['reading-interpretation', { readingRlu: 0, cutoffRlu: 4200, cv: 0.3 }, 'readingRlu'],
    ['reading-interpretation', { readingRlu: 5150, cutoffRlu: 4200, cv: 30 }, 'cv'],
    ['reading-interpretation', { readingRlu: 5150, cutoffRlu: 4200, cv: 0.3, prior: { geometricMeanRlu: 5 } }, 'prior.sdLog'],
    ['reading-change', { firstRlu: 1, secondRlu: null, sdLogSingle: 1 }, 'secondRlu'],
    ['change-limits', { cvAnalytical: 0.1, cvWithinPerson: 0.2, assaysPerSample: 1.5 }, 'assaysPerSample'],
    ['censored-summary', { readings: [] }, 'readings'],
    ['censored-summary', { readings: [{ rlu: 5 }, { rlu: -1 }] }, 'readings.1.rlu'],
    ['censored-summary', [], ''],
    ['censored-summary', null, ''],
    ['reading-change', JSON.parse('{"firstRlu":1e999,"secondRlu":1,"sdLogSingle":1}'), 'firstRlu'],
  ])('%s %j: INPUT_INVALID at %s', (name, input, path) => {
    const error = errorOf(get(name), input);
    expect(error).toMatchObject({ code: 'INPUT_INVALID', path });
    expect(error.message).not.toBe('');
  });

  it('turns a RangeError of the core into INPUT_INVALID at the field that it names', () => {
    const throwing = dummy(() => {
      throw new RangeError('size must be smaller');
    });
    expect(errorOf(throwing, { size: 1 })).toEqual({ code: 'INPUT_INVALID', message: 'size must be smaller', path: 'size' });
    const elsewhere = dummy(() => {
      throw new RangeError('something must be smaller');
    });
    expect(errorOf(elsewhere, { size: 1 }).path).toBe('');
  });

  it('never lets NaN or Infinity out', () => {
    expect(
      errorOf(
        dummy(() => ({ a: [{ b: 1 }, { b: Number.NaN }] })),
        { size: 1 },
      ),
    ).toMatchObject({ code: 'NOT_DEFINED', path: 'a.1.b' });
    expect(
      errorOf(
        dummy(() => ({ a: null, b: -Infinity })),
        { size: 1 },
      ),
    ).toMatchObject({ code: 'NOT_DEFINED', path: 'b' });
    expect(errorOf(get('change-limits'), { cvAnalytical: 10, cvWithinPerson: 10, z: 1e6 })).toMatchObject({
      code: 'NOT_DEFINED',
      path: 'riseFraction',
    });
    expect(
      runCalculator(
        dummy(() => ({ a: null })),
        { size: 1 },
      ),
    ).toEqual({ ok: true, output: { a: null } });
  });

  it('says what is not defined, and lets our own faults through', () => {
    const undefinedAnswer = dummy(() => {
      throw new NotDefinedError('no solution');
    });
    expect(errorOf(undefinedAnswer, { size: 1 })).toEqual({ code: 'NOT_DEFINED', message: 'no solution', path: '' });
    const broken = dummy(() => {
      throw new TypeError('bug');
    });
    expect(() => runCalculator(broken, { size: 1 })).toThrow('bug');
  });
});

describe('the list', () => {
  it('has one calculator per name, found by it', () => {
    expect(new Set(calculators.map((c) => c.name)).size).toBe(calculators.length);
    for (const c of calculators) expect(findCalculator(c.name)).toBe(c);
    expect(findCalculator('none')).toBe(undefined);
  });

  test.each(calculators.map((c) => [c.name, c] as const))(
    '%s has a summary of one line and schemas that refuse unknown fields',
    (_name, c) => {
      expect(c.summary).toMatch(/^[^\n]{10,120}$/);
      const schema = inputJsonSchema(c);
      // An input of several kinds is one of several objects.
      for (const kind of schema.oneOf ?? [schema]) expect(kind).toMatchObject({ type: 'object', additionalProperties: false });
      expect(outputJsonSchema(c)).toHaveProperty('$schema');
    },
  );
});

describe('the readings calculators', () => {
  const rlu = fc.oneof(fc.constantFrom(1, 40, 4200, 60_000), fc.integer({ min: 1, max: 60_000 }));
  const bound = fc.option(fc.constantFrom('exact', 'at-most', 'at-least'), { nil: undefined });
  const fraction = fc.oneof(fc.constantFrom(0.01, 1), fc.double({ min: 0.01, max: 1, noNaN: true }));
  const some = (input: Record<string, unknown>) => JSON.parse(JSON.stringify(input));
  const inputs: Readonly<Record<string, fc.Arbitrary<Record<string, unknown>>>> = {
    'reading-interpretation': fc.record({
      readingRlu: rlu,
      bound,
      cutoffRlu: rlu,
      cv: fraction,
      replicates: fc.option(fc.integer({ min: 1, max: 5 }), { nil: undefined }),
      prior: fc.option(fc.record({ geometricMeanRlu: rlu, sdLog: fraction }), { nil: undefined }),
    }),
    'reading-change': fc.record({ firstRlu: rlu, secondRlu: rlu, sdLogSingle: fraction }),
    'change-limits': fc.record({ cvAnalytical: fraction, cvWithinPerson: fraction }),
    'censored-summary': fc.record({
      readings: fc.array(fc.record({ rlu, bound }), { minLength: 1, maxLength: 8 }),
      thresholdRlu: fc.option(rlu, { nil: undefined }),
    }),
  };

  test.each(Object.entries(inputs))('%s answers every proper input with an output that fits its own schema', (name, arbitrary) => {
    fc.assert(
      fc.property(arbitrary, (input) => {
        const result = runCalculator(get(name), some(input));
        expect(result).toMatchObject({ ok: true });
        if (result.ok) expect(get(name).output.safeParse(result.output).error).toBe(undefined);
      }),
      { numRuns: 150 },
    );
  });

  it('counts bounds and gives null with the reason where there is no estimate', () => {
    const result = runCalculator(get('censored-summary'), {
      readings: [
        { rlu: 40, bound: 'at-most' },
        { rlu: 60, bound: 'at-most' },
      ],
    });
    expect(result).toMatchObject({ ok: true, output: { n: 2, nAtMost: 2, nAtLeast: 0, notDefined: 'all-at-most', meanLog: null } });
  });
});
