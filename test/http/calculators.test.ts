import { afterAll, beforeAll, expect, test } from 'vitest';
import { runCalculator } from '../../src/calculators/calculator.ts';
import { calculators, findCalculator } from '../../src/calculators/index.ts';
import { startPractice, type TestPractice } from './practice.ts';

let practice: TestPractice;
beforeAll(async () => {
  practice = await startPractice();
});
afterAll(() => practice.close());

const ask = (name: string, payload: unknown) =>
  practice.app.inject({ method: 'POST', url: `/api/calculators/${name}`, payload: payload as object });

test('the same answer over HTTP as in code', async () => {
  const input = { readingRlu: 1720, cutoffRlu: 1500, cv: 0.3, risk: 0.05 };
  const calculator = findCalculator('reading-interpretation');
  const expected = calculator && runCalculator(calculator, input);
  expect((await ask('reading-interpretation', input)).json()).toEqual((expected as { output: unknown }).output);
});

test('an unknown field is refused by name', async () => {
  const refused = await ask('reading-change', { firstRlu: 1, secondRlu: 2, sdLogSingle: 0.3, colour: 'red' });
  expect([refused.statusCode, refused.json().error]).toEqual([
    400,
    { code: 'INPUT_INVALID', message: 'is not a known field', path: 'colour' },
  ]);
});

test('every calculator stands in the served description, OpenAPI 3.1', async () => {
  const description = (await practice.app.inject('/api/openapi.json')).json();
  expect(description.openapi).toBe('3.1.0');
  for (const { name } of calculators) expect(Object.keys(description.paths)).toContain(`/api/calculators/${name}`);
});
