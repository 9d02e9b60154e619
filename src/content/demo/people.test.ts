import { describe, expect, test } from 'vitest';
import { ageOn } from '../../core/visit/ageOn.ts';
import { checkVisit } from '../../core/visit/checkVisit.ts';
import { questions } from '../questions.ts';
import { demoNames } from './names.ts';
import { buildDemoPeople } from './people.ts';
import { buildDemoPractice, DEMO_METER_SCALE } from './practice.ts';

const TODAY = '2026-11-25';
const people = buildDemoPeople(2_611, TODAY);
const visits = people.flatMap((person) => person.visits.map((visit) => ({ person, visit })));
const practice = buildDemoPractice(TODAY);

test('thirty people, every one with a name of his or her own, 2 to 88 years old', () => {
  expect(people).toHaveLength(30);
  expect(new Set(people.map(({ name }) => name)).size).toBe(30);
  const ages = people.map(({ birthDate }) => ageOn(birthDate, TODAY).ageYears);
  expect(ages).toEqual(demoNames.map(({ ageYears }) => ageYears));
  expect([Math.min(...ages), Math.max(...ages)]).toEqual([2, 88]);
});

test('the same seed and day give the same people, another seed others', () => {
  expect(buildDemoPeople(2_611, TODAY)).toEqual(people);
  expect(buildDemoPeople(2_612, TODAY)).not.toEqual(people);
});

test('no more than four visits, in order, within two years, on working days, none today', () => {
  expect(people.filter(({ visits: none }) => none.length === 0).map(({ name }) => name)).toEqual(['Theo Quillon', 'Lucan Petrossian']);
  for (const { visits: own } of people) {
    const dates = own.map(({ onDate }) => onDate);
    expect(dates.length).toBeLessThanOrEqual(4);
    expect(dates).toEqual([...new Set(dates)].sort());
    for (const date of dates) {
      expect(date < TODAY && date > '2024-11-25').toBe(true);
      expect([0, 6]).not.toContain(new Date(date).getUTCDay());
    }
  }
});

test('a tooth gets a new lesion once, and a cavity is filled by the next visit', () => {
  for (const { visits: own } of people) {
    const newTeeth = own.flatMap(({ findings }) => findings.filter(({ isNew }) => isNew).map(({ tooth }) => tooth));
    expect(newTeeth).toEqual([...new Set(newTeeth)]);
    for (const [i, { findings }] of own.entries()) {
      const cavities = findings.filter(({ kind }) => kind === 'cavity').map(({ tooth }) => tooth);
      const filledNext = own[i + 1]?.findings.filter(({ kind }) => kind === 'restoration').map(({ tooth }) => tooth);
      if (filledNext) expect(filledNext).toEqual(expect.arrayContaining(cavities));
    }
  }
  expect(visits.some(({ visit }) => visit.findings.some(({ kind }) => kind === 'cavity'))).toBe(true);
});

/** A visit as it would have been checked on its day. */
const problemsOf = ({ person, visit }: (typeof visits)[number]) => {
  const { onDate, answers, findings, allExamined, meterId, reading } = visit;
  return checkVisit(
    {
      practice,
      person: { name: person.name, birthDate: person.birthDate, newPatient: false },
      visit: { onDate, language: person.language, answers, findings, allExamined, meterId, reading, pastReadings: [], signed: [] },
    },
    questions,
  );
};

test('every visit would pass the checks of a visit file', () => {
  expect(visits.flatMap(problemsOf)).toEqual([]);
});

test.each([1, 2, 3, 4, 5])('so would the visits of seed %i, on 29 February', (seed) => {
  const others = buildDemoPeople(seed, '2028-02-29').flatMap((person) => person.visits.map((visit) => ({ person, visit })));
  expect(others.flatMap(problemsOf)).toEqual([]);
});

describe('readings', () => {
  const taken = visits.flatMap(({ visit }) => (visit.reading.rlu === undefined ? [] : [visit.reading]));

  test('most visits have one, within the meter, bounds only at its limits', () => {
    expect(taken.length / visits.length).toBeGreaterThan(0.6);
    for (const { rlu = Number.NaN, bound } of taken) {
      expect(rlu >= DEMO_METER_SCALE.lowestRlu && rlu <= DEMO_METER_SCALE.highestRlu).toBe(true);
      expect(bound === 'exact').toBe(rlu > DEMO_METER_SCALE.lowestRlu && rlu < DEMO_METER_SCALE.highestRlu);
    }
  });

  test('are on both sides of the cut-off, and differ more between people than within one', () => {
    const above = taken.filter(({ rlu = 0 }) => rlu > DEMO_METER_SCALE.cutoffRlu).length / taken.length;
    expect(above).toBeGreaterThan(0.25);
    expect(above).toBeLessThan(0.75);
    const logs = people
      .map(({ visits: own }) => own.flatMap(({ reading }) => (reading.rlu === undefined ? [] : [Math.log(reading.rlu)])))
      .filter((own) => own.length > 1);
    const withinSd = Math.sqrt(meanOf(logs.map(varianceOf)));
    const betweenSd = Math.sqrt(varianceOf(logs.map(meanOf)));
    expect(betweenSd).toBeGreaterThan(withinSd);
    // cv 0.25 and 0.35 together are an sd of 0.41 on the logarithm; 30 people leave it between half and twice that.
    expect(withinSd).toBeGreaterThan(0.2);
    expect(withinSd).toBeLessThan(0.8);
  });
});

test('people who lean towards decay eat more between meals than others: snacks and lesions go together', () => {
  const lesions = ({ visit }: (typeof visits)[number]) => visit.findings.filter(({ isNew }) => isNew).length;
  const snacks = ({ visit }: (typeof visits)[number]) => Number(visit.answers.snacks_per_day?.value ?? 0);
  const few = visits.filter((one) => snacks(one) <= 2);
  const many = visits.filter((one) => snacks(one) >= 4);
  expect(Math.min(few.length, many.length)).toBeGreaterThan(8);
  expect(meanOf(many.map(lesions))).toBeGreaterThan(meanOf(few.map(lesions)));
});

function meanOf(values: readonly number[]): number {
  return values.reduce((sum, value) => sum + value, 0) / values.length;
}

function varianceOf(values: readonly number[]): number {
  const mean = meanOf(values);
  return values.reduce((sum, value) => sum + (value - mean) ** 2, 0) / (values.length - 1);
}
