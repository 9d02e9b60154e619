import { expect, test } from 'vitest';
import { demoPractice } from '../content/demo/practice.ts';
import { readyDays } from '../content/readyDays.ts';
import type { DescribedDays } from '../core/visit/describedDays.ts';
import type { VisitInput } from '../core/visit/types.ts';
import { type DaysRecord, listDayResults } from './dayResults.ts';

const [ready] = readyDays;
if (!ready) throw new Error('no ready-made day');

const input = (acidDay?: DescribedDays): VisitInput => ({
  practice: demoPractice,
  person: { name: 'Ana Thorn', birthDate: '1984-03-02', newPatient: false },
  visit: { onDate: '2026-11-25', language: 'en', answers: {}, findings: [], pastReadings: [], signed: [], ...(acidDay && { acidDay }) },
});

test('where no day was told, nothing is kept of one', async () => {
  expect(await listDayResults(input(), 'digest')).toEqual([]);
});

test('one result for all days, each with its sentence and a band that holds the usual value', async () => {
  const [result, ...others] = await listDayResults(input({ days: [ready.day] }), 'digest');
  expect(others).toEqual([]);
  expect(result).toMatchObject({ kind: 'day', inputDigest: 'digest', codeVersion: expect.any(String), contentVersion: expect.any(String) });
  const body = result?.body as DaysRecord | undefined;
  expect(body?.draws).toBe(40);
  expect(body?.sentence.en).toBe(body?.days[0]?.headline);
  expect(body?.sentence.es).toMatch(/^En el modelo, .* al día en el lado ácido/);
  expect(body?.days[0]?.headline).toMatch(/^In the model, roughly .* a day on the acid side/);
  const saliva = body?.days[0]?.below.saliva;
  expect(saliva && saliva.low <= saliva.minutes && saliva.minutes <= saliva.high).toBe(true);
});
