import { expect, test } from 'vitest';
import { demoPractice } from '../content/demo/practice.ts';
import { readyDays } from '../content/readyDays.ts';
import type { DaysRecord } from '../core/visit/dayRecord.ts';
import type { DescribedDays } from '../core/visit/describedDays.ts';
import type { VisitInput } from '../core/visit/types.ts';
import { listDayResults } from './dayResults.ts';

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

test('one result for all days, each with its sentence and a band that holds the usual value, and what a change was said to do', async () => {
  const eaten = ready.day.events.find((event) => event.kind === 'eating');
  const beer = { ...ready.day, events: eaten?.kind === 'eating' ? [{ ...eaten, label: 'Beer' }] : [] };
  const changed = { ...beer, events: beer.events.filter((event) => event.kind !== 'eating') };
  const [result, ...others] = await listDayResults(input({ days: [beer], changed: { of: 0, day: changed } }), 'digest');
  expect(others).toEqual([]);
  expect(result).toMatchObject({ kind: 'day', inputDigest: 'digest', codeVersion: expect.any(String), contentVersion: expect.any(String) });
  const body = result?.body as DaysRecord | undefined;
  const [told] = body?.days ?? [];
  expect(body?.draws).toBe(40);
  expect(body?.sentence.en).toBe(body?.days[0]?.headline);
  expect(body?.sentence.es).toMatch(/^En el modelo, .* al día en el lado ácido/);
  expect(told?.headline).toMatch(/^In the model, roughly .* a day on the acid side/);
  const saliva = told?.below.saliva;
  expect(saliva && saliva.low <= saliva.minutes && saliva.minutes <= saliva.high).toBe(true);
  expect(body?.changed?.sentence).toMatch(/as told, .* with the change: .* less\.$/);
  expect(told?.headline).toMatch(/mostly beer/i);
  expect(told?.openHeadline).toMatch(/^In the model, .* acid side/);
  expect(told?.openHeadline).not.toMatch(/beer/i);
  expect(body?.openSentence?.en).toBe(told?.openHeadline);
  expect(body?.openSentence?.es).not.toMatch(/beer/i);
});
