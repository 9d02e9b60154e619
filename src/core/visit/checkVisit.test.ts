import { describe, expect, test } from 'vitest';
import type { AcidDay, Food } from '../plaque/day/types.ts';
import { checkVisit } from './checkVisit.ts';
import type { Question } from './question.ts';
import type { VisitInput } from './types.ts';

const question = (over: Partial<Question> & Pick<Question, 'id' | 'kind'>): Question => ({
  group: 'food',
  label: over.id,
  prompt: over.id,
  fills: [],
  sources: [],
  ...over,
});

const questions: readonly Question[] = [
  question({ id: 'can_spit', kind: 'yes-no' }),
  question({ id: 'snacks', kind: 'count', min: 0, max: 24 }),
  question({ id: 'weight', kind: 'measure', unit: 'kg', min: 2, max: 300 }),
  question({
    id: 'smokes',
    kind: 'choice',
    choices: [
      { id: 'never', label: 'Never' },
      { id: 'daily', label: 'Daily' },
    ],
  }),
  question({ id: 'allergies', kind: 'list', choices: [{ id: 'milk-protein', label: 'Milk' }] }),
  question({ id: 'notes', kind: 'list' }),
  question({ id: 'bitewings', kind: 'date', choices: [{ id: 'never', label: 'never' }] }),
];

const foods: ReadonlyMap<string, Food> = new Map([
  [
    'cola',
    {
      id: 'cola',
      name: { en: 'Cola', es: 'Cola' },
      unit: 'mL',
      sugarsGPer100: 10,
      starchGPer100: 0,
      waterGPer100: 90,
      retention: 'clears',
      usualAmount: 330,
      usualMinutes: 10,
      source: { key: 'project', status: 'proposal' },
    },
  ],
]);

const cola = {
  id: 'e1',
  kind: 'eating',
  occasion: 'between-meals',
  startMinute: 900,
  minutes: 10,
  portions: [{ food: 'cola', amount: 330 }],
} as const;
const day: AcidDay = { wakeMinute: 400, sleepMinute: 1380, events: [cola] };

const fine: VisitInput = {
  practice: {
    name: 'Test practice',
    invented: true,
    timeZone: 'UTC',
    settings: {
      jurisdiction: 'UK',
      methodByAge: [],
      bitewingMonths: null,
      lowSalivaMeansExtreme: false,
      stimulatedFlowLowAtMostMlPerMin: 0.7,
    },
    meters: [
      {
        id: 'm1',
        name: 'Meter 1',
        lowestRlu: 40,
        highestRlu: 60_000,
        cutoffRlu: 4_200,
        countdownS: 25,
        cvAnalytical: 0.25,
        cvAnalyticalAssumed: true,
        cvWithinPerson: 0.35,
        cvWithinPersonAssumed: true,
      },
    ],
    lots: [{ id: 'lot-1', name: 'Lot 1', expiresOn: '2020-01-01' }],
    shelf: [],
  },
  person: { name: 'Test Person', birthDate: '1990-05-04', newPatient: false },
  visit: {
    onDate: '2026-11-25',
    language: 'en',
    answers: {
      can_spit: { how: 'asked', value: true },
      snacks: { how: 'carried', value: 24, askedOn: '2026-06-01' },
      weight: { how: 'asked', value: 2 },
      smokes: { how: 'asked', value: 'daily', askedOn: '2026-11-25' },
      allergies: { how: 'asked', value: [] },
      notes: { how: 'declined' },
    },
    findings: [],
    meterId: 'm1',
    reading: { takenAt: '2026-11-25T10:36:00Z', rlu: 60_000, bound: 'at-least', lotId: 'lot-1' },
    pastReadings: [{ takenAt: '2026-05-01T09:00:00Z', rlu: 40, bound: 'exact', state: 'valid', meterId: 'an older meter' }],
    signed: [],
    acidDay: { days: [day], changed: { of: 0, day } },
  },
};

const withVisit = (visit: Partial<VisitInput['visit']>): VisitInput => ({ ...fine, visit: { ...fine.visit, ...visit } });
const withPerson = (person: Partial<VisitInput['person']>): VisitInput => ({ ...fine, person: { ...fine.person, ...person } });
const withReading = (reading: NonNullable<VisitInput['visit']['reading']>) => withVisit({ reading });

test('a visit in order has no problem, on every limit; an expired lot is none', () => {
  expect(checkVisit(fine, questions, foods)).toEqual([]);
});

test('a birth on the day of the visit is possible', () => {
  const newborn = withVisit({ answers: {}, pastReadings: [] });
  expect(checkVisit({ ...newborn, person: { ...newborn.person, birthDate: '2026-11-25' } }, questions, foods)).toEqual([]);
});

test('a visit without a reading is complete', () => {
  const { reading: _, meterId: __, ...visit } = fine.visit;
  expect(checkVisit({ ...fine, visit }, questions, foods)).toEqual([]);
});

describe('each problem names its field', () => {
  test.each<[string, VisitInput, string, RegExp]>([
    [
      'birthday tomorrow',
      { ...withVisit({ answers: {}, pastReadings: [] }), person: { ...fine.person, birthDate: '2026-11-26' } },
      'person.birthDate',
      /2026-11-26 is after the visit on 2026-11-25/,
    ],
    [
      'visit before birth',
      { ...withVisit({ onDate: '1989-01-01', answers: {}, pastReadings: [], reading: {} }) },
      'person.birthDate',
      /after the visit on 1989-01-01/,
    ],
    ['too old', withPerson({ birthDate: '1890-01-01' }), 'person.birthDate', /older than 120 years/],
    ['next visit in the past', withVisit({ nextOn: '2026-11-24' }), 'visit.nextOn', /before the visit/],
    ['unknown question', withVisit({ answers: { shoe_size: { how: 'asked', value: 44 } } }), 'visit.answers.shoe_size', /not a question/],
    [
      'number for yes-no',
      withVisit({ answers: { can_spit: { how: 'asked', value: 1 } } }),
      'visit.answers.can_spit.value',
      /true or false/,
    ],
    [
      'half a snack',
      withVisit({ answers: { snacks: { how: 'asked', value: 1.5 } } }),
      'visit.answers.snacks.value',
      /must be a whole number/,
    ],
    ['too many snacks', withVisit({ answers: { snacks: { how: 'asked', value: 25 } } }), 'visit.answers.snacks.value', /25 is above 24/],
    ['letter for a weight', withVisit({ answers: { weight: { how: 'asked', value: 'x' } } }), 'visit.answers.weight.value', /be a number/],
    ['too light', withVisit({ answers: { weight: { how: 'asked', value: 1.9 } } }), 'visit.answers.weight.value', /1.9 is below 2 kg/],
    [
      'not a choice',
      withVisit({ answers: { smokes: { how: 'asked', value: 'yes' } } }),
      'visit.answers.smokes.value',
      /"yes" is not one of/,
    ],
    [
      'unknown allergen',
      withVisit({ answers: { allergies: { how: 'asked', value: ['milk-protein', 'dust'] } } }),
      'visit.answers.allergies.value',
      /"dust" is not one of: milk-protein/,
    ],
    [
      'asked tomorrow',
      withVisit({ answers: { can_spit: { how: 'asked', value: true, askedOn: '2026-11-26' } } }),
      'visit.answers.can_spit.askedOn',
      /after the visit/,
    ],
    [
      'asked before birth',
      withVisit({ answers: { can_spit: { how: 'carried', value: true, askedOn: '1990-05-03' } } }),
      'visit.answers.can_spit.askedOn',
      /before the birth/,
    ],
    ['unknown meter', withVisit({ meterId: 'm2', reading: {} }), 'visit.meterId', /"m2" is not one of: m1/],
    [
      'number without a meter',
      (() => {
        const { meterId: _, ...visit } = fine.visit;
        return { ...fine, visit };
      })(),
      'visit.meterId',
      /needs the meter/,
    ],
    ['above the meter', withReading({ rlu: 60_001 }), 'visit.reading.rlu', /60001 is outside what Meter 1 can show, 40 to 60000 RLU/],
    ['below the meter', withReading({ rlu: 39.9 }), 'visit.reading.rlu', /outside/],
    ['not a number at all', withReading({ rlu: Number.NaN }), 'visit.reading.rlu', /outside/],
    ['unknown lot', withReading({ lotId: 'lot-9' }), 'visit.reading.lotId', /"lot-9" is not one of: lot-1/],
    ['number of a swab not taken', withReading({ rlu: 900, notTaken: 'declined' }), 'visit.reading.rlu', /not taken/],
    ['number of a failed swab', withReading({ rlu: 900, failed: true }), 'visit.reading.rlu', /failed/],
    ['bound without a number', withReading({ bound: 'at-most' }), 'visit.reading.bound', /without a number/],
    ['reading of another day', withReading({ takenAt: '2026-11-27T00:00:00Z' }), 'visit.reading.takenAt', /not on the day/],
    [
      'past reading in the future',
      withVisit({ pastReadings: [{ takenAt: '2026-11-27T00:00:00Z', rlu: 50, bound: 'exact', state: 'valid', meterId: 'm1' }] }),
      'visit.pastReadings.0.takenAt',
      /after the visit/,
    ],
    [
      'past reading before birth',
      withVisit({ pastReadings: [{ takenAt: '1990-05-02T00:00:00Z', rlu: 50, bound: 'exact', state: 'valid', meterId: 'm1' }] }),
      'visit.pastReadings.0.takenAt',
      /before the birth/,
    ],
    [
      'study swab in the future',
      withVisit({ studySwabs: [{ takenAt: '2026-11-27T00:00:00Z' }] }),
      'visit.studySwabs.0.takenAt',
      /after the visit/,
    ],
    [
      'signed item off the shelf',
      withVisit({ signed: [{ shelfItemId: 'gone', by: 'Dr Test', at: '2026-11-25T10:00:00Z' }] }),
      'visit.signed.0.shelfItemId',
      /"gone" is not on the practice's shelf/,
    ],
    ['agreed item off the shelf', withVisit({ agreed: { items: { gone: 'agreed' } } }), 'visit.agreed.items.gone', /not on/],
    [
      'changed level without a reason',
      withVisit({
        confirmed: { level: 'high', changedFrom: 'low', protocol: 'p', edition: 'e', by: 'x', at: '2026-11-25T10:00:00Z', reason: ' ' },
      }),
      'visit.confirmed.reason',
      /needs a reason/,
    ],
    [
      'a food of no table in a described day',
      withVisit({ acidDay: { days: [day, { ...day, events: [{ ...cola, portions: [{ food: 'nectar', amount: 1 }] }] }] } }),
      'visit.acidDay.days.1.events.0.portions.0.food',
      /not in the table/,
    ],
    [
      'an event of 25 hours in the changed day',
      withVisit({ acidDay: { days: [day], changed: { of: 0, day: { ...day, events: [{ ...cola, startMinute: 0, minutes: 1500 }] } } } }),
      'visit.acidDay.changed.day.events.0.minutes',
      /must be 0.1 to 720/,
    ],
    [
      'two meters of one id',
      { ...fine, practice: { ...fine.practice, meters: [...fine.practice.meters, ...fine.practice.meters] } },
      'practice.meters.1.id',
      /twice/,
    ],
  ])('%s', (_, input, path, message) => {
    const problems = checkVisit(input, questions, foods);
    expect(problems.map((p) => p.path)).toEqual([path]);
    expect(problems[0]?.message).toMatch(message);
  });
});

test('several problems are all said', () => {
  const input = withVisit({ nextOn: '2020-01-01', reading: { rlu: -5, lotId: 'lot-9' }, answers: { a: { how: 'asked', value: 1 } } });
  expect(checkVisit(input, questions, foods).map((p) => p.path)).toEqual([
    'visit.nextOn',
    'visit.answers.a',
    'visit.reading.rlu',
    'visit.reading.lotId',
  ]);
});

describe('a date as an answer', () => {
  const problemsOf = (value: string) =>
    checkVisit(withVisit({ answers: { bitewings: { how: 'asked', value } } }), questions, foods).map(
      ({ path, message }) => `${path} ${message}`,
    );

  test.each(['2026-11-25', '2026-11', '1990-05-04', '1990-05', '2024-02-29', 'never'])('%s is one', (value) => {
    expect(problemsOf(value)).toEqual([]);
  });

  test.each([
    ['2026-11-26', 'is after the visit on 2026-11-25'],
    ['2026-12', 'is after the visit on 2026-11-25'],
    ['1990-05-03', 'is before the birth on 1990-05-04'],
    ['1990-04', 'is before the birth on 1990-05-04'],
    ['2026-02-30', 'must be a date'],
    ['2025', 'must be a date'],
    ['last year', 'must be a date'],
  ])('%s %s', (value, words) => {
    expect(problemsOf(value)).toEqual([expect.stringMatching(new RegExp(`^visit\\.answers\\.bitewings\\.value .*${words}`))]);
  });

  test('a number is none', () => {
    const answers = { bitewings: { how: 'asked', value: 2025 } } as const;
    expect(checkVisit(withVisit({ answers }), questions, foods)).toHaveLength(1);
  });
});
