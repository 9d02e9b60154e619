import { expect, test } from 'vitest';
import { content } from '../../content/allContent.ts';
import { demoPractice } from '../../content/demo/practice.ts';
import { readyDays } from '../../content/readyDays.ts';
import { assessParts } from './assessVisit.ts';
import type { DescribedDays } from './describedDays.ts';
import type { VisitInput } from './types.ts';

const ready = readyDays.find(({ id }) => id === 'sipped-cola');
if (!ready) throw new Error('no ready-made day');
const { day } = ready;
const without = { ...day, events: day.events.filter((event) => event.kind !== 'eating' || event.occasion === 'meal') };

const asked = (value: string | boolean | readonly string[]) => ({ how: 'asked', value }) as const;
/** Nothing that speaks against a word about food. */
const SAFE = {
  medicines: asked([]),
  conditions: asked([]),
  private_conditions: asked([]),
  allergies: asked([]),
  pregnant: asked('no'),
  can_spit: asked(true),
};

const stripOf = (acidDay: DescribedDays, answers: VisitInput['visit']['answers'] = {}, language: 'en' | 'es' = 'en') =>
  assessParts(
    {
      practice: demoPractice,
      person: { name: 'Ana Thorn', birthDate: '1984-03-02', newPatient: false },
      visit: { onDate: '2026-11-25', language, answers, findings: [], pastReadings: [], signed: [], acidDay },
    },
    content,
    ['leaflet'],
  ).leaflet?.strip;

test('no strip unless a professional chose one', () => {
  expect(stripOf({ days: [day] })).toBeUndefined();
});

test('the chosen day, with words in the language of the leaflet and no figure', () => {
  const strip = stripOf({ days: [without, day], onLeaflet: 1 }, {}, 'es');
  expect(strip?.rows.map(({ of }) => of)).toEqual(['told']);
  expect(strip?.rows[0]?.eaten).toHaveLength(day.events.filter(({ kind }) => kind === 'eating').length);
  expect(strip?.rows[0]?.eaten.map(({ name }) => name)).toContain('Refresco de cola');
  expect(strip?.rows[0]?.acid.length).toBeGreaterThan(0);
  expect(strip?.words.caution).toMatch(/No mide sus dientes/);
  expect(JSON.stringify(strip?.words)).not.toMatch(/\d/);
});

test('the changed day only where what was changed may be suggested to this person', () => {
  const tried: DescribedDays = { days: [day], changed: { of: 0, day: without }, onLeaflet: 0 };
  expect(stripOf(tried)?.rows.map(({ of }) => of)).toEqual(['told']);
  expect(stripOf(tried, SAFE)?.rows.map(({ of }) => of)).toEqual(['told', 'changed']);
  expect(stripOf(tried, { ...SAFE, medicines: asked(['insulin']) })?.rows.map(({ of }) => of)).toEqual(['told']);
});

test('beer and wine are a drink on paper, in the language of the leaflet', () => {
  const beer = {
    id: 'b',
    kind: 'eating',
    occasion: 'between-meals',
    startMinute: 1300,
    minutes: 20,
    portions: [{ food: 'beer', amount: 330 }],
  } as const;
  const names = stripOf({ days: [{ ...day, sleepMinute: 1400, events: [beer] }], onLeaflet: 0 }, {}, 'es')?.rows[0]?.eaten.map(
    ({ name }) => name,
  );
  expect(names).toEqual(['Una bebida']);
});
