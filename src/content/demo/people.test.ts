import { describe, expect, test } from 'vitest';
import { ageOn } from '../../core/visit/ageOn.ts';
import { checkVisit } from '../../core/visit/checkVisit.ts';
import { foodsById } from '../foods.ts';
import { questions } from '../questions.ts';
import { ageAt } from './drawFindings.ts';
import { demoNames } from './names.ts';
import { buildDemoPeople } from './people.ts';
import { buildDemoPractice, DEMO_METER_SCALE } from './practice.ts';

const TODAY = '2026-11-25';
const people = buildDemoPeople(2_611, TODAY);
const visits = people.flatMap((person) => person.visits.map((visit) => ({ person, visit })));
const practice = buildDemoPractice(TODAY);

test('eighty people, every one with a name and a chart number of his or her own, 2 to 88 years old', () => {
  expect(people).toHaveLength(80);
  expect(new Set(people.map(({ name }) => name)).size).toBe(80);
  expect(new Set(people.map(({ chartNumber }) => chartNumber)).size).toBe(80);
  expect(people.filter(({ chartNumber }) => !/^TQ-1\d{3}$/.test(chartNumber))).toEqual([]);
  const ages = people.map(({ birthDate }) => ageOn(birthDate, TODAY).ageYears);
  expect(ages).toEqual(demoNames.map(({ ageYears }) => ageYears));
  expect([Math.min(...ages), Math.max(...ages)]).toEqual([2, 88]);
});

describe('the people a day of work brings', () => {
  const oneWith = (isOne: (person: (typeof people)[number]) => boolean) => people.filter(isOne).map(({ name }) => name);
  const answered =
    (id: string, value: string) =>
    ({ visits: own }: (typeof people)[number]) => {
      const said = own.at(-1)?.answers[id]?.value;
      return said === value || (Array.isArray(said) && said.includes(value));
    };

  test('every child under 16 has somebody who may say yes, a few have more than one, two have two homes', () => {
    const children = people.filter(({ birthDate }) => ageOn(birthDate, TODAY).ageYears < 16);
    expect(children.filter(({ guardians }) => !guardians.some(({ mayConsent }) => mayConsent))).toEqual([]);
    expect(children.filter(({ guardians }) => guardians.length > 1).length).toBeGreaterThan(2);
    expect(oneWith(({ homes }) => homes.length > 1)).toHaveLength(2);
    for (const { guardians, visits: own } of children) {
      for (const { speaker } of own) expect(guardians.map(({ name }) => name)).toContain(speaker.name);
    }
  });

  test('names in another script and with an apostrophe, people who speak Spanish, interpreters', () => {
    expect(oneWith(({ name }) => /\p{Script=Arabic}/u.test(name))).toHaveLength(1);
    expect(oneWith(({ name }) => name.includes("'"))).toHaveLength(1);
    expect(oneWith(({ language }) => language === 'es').length).toBeGreaterThan(4);
    expect(oneWith(({ interpreter }) => interpreter !== undefined).length).toBeGreaterThan(2);
  });

  test.each([
    ['natural_teeth', 'none'],
    ['natural_teeth', 'implants-only'],
    ['natural_teeth', 'overdenture-roots'],
    ['appliance', 'fixed-brace'],
    ['appliance', 'bonded-retainer'],
    ['conditions', 'sjogren'],
    ['conditions', 'salivary-glands-lost'],
    ['conditions', 'diabetes-glucose-lowering'],
    ['private_conditions', 'eating-disorder'],
    ['pregnant', 'pregnant'],
    ['allergies', 'milk-protein'],
  ])('somebody with %s: %s', (id, value) => expect(oneWith(answered(id, value)).length).toBeGreaterThan(0));

  test('somebody who declines each swab', () => {
    const decliner = ({ visits: own }: (typeof people)[number]) =>
      own.length > 0 && own.every(({ reading }) => reading.notTaken === 'declined');
    expect(oneWith(decliner).length).toBeGreaterThan(0);
  });

  test('ten are expected today at times of their own, among them a child of 15, one who is new and one without teeth', () => {
    const expected = people.flatMap((person) => (person.today ? [{ ...person.today, person }] : []));
    expect(expected).toHaveLength(10);
    expect(new Set(expected.map(({ atTime }) => atTime)).size).toBe(10);
    expect(expected.filter(({ onDate }) => onDate !== TODAY)).toEqual([]);
    expect(expected.map(({ person }) => ageOn(person.birthDate, TODAY).ageYears)).toContain(15);
    expect(expected.filter(({ person }) => person.visits.length === 0)).toHaveLength(1);
    expect(expected.filter(({ person }) => answered('natural_teeth', 'none')(person))).toHaveLength(1);
  });
});

test('the same seed and day give the same people, another seed others', () => {
  expect(buildDemoPeople(2_611, TODAY)).toEqual(people);
  expect(buildDemoPeople(2_612, TODAY)).not.toEqual(people);
});

test('some 280 visits in order, within two years, on working days, none today, each on an appointment that was kept', () => {
  expect(visits.length).toBeGreaterThanOrEqual(250);
  expect(visits.length).toBeLessThanOrEqual(320);
  const newcomers = ['Theo Quillon', 'Lucan Petrossian', 'Cosmo Ytterberg', 'Efraim Colquitt'];
  expect(people.filter(({ visits: none }) => none.length === 0).map(({ name }) => name)).toEqual(newcomers);
  for (const { visits: own, appointments } of people) {
    const dates = appointments.map(({ onDate }) => onDate);
    expect(dates).toEqual([...new Set(dates)].sort());
    expect(own.map(({ onDate }) => onDate)).toEqual(appointments.filter(({ state }) => state === 'planned').map(({ onDate }) => onDate));
    for (const date of dates) {
      expect(date < TODAY && date > '2024-11-25').toBe(true);
      expect([0, 6]).not.toContain(new Date(date).getUTCDay());
    }
  }
});

test('a tooth shows one new thing at a time, and a cavity is filled by the next visit', () => {
  for (const { visits: own } of people) {
    for (const [i, { findings }] of own.entries()) {
      const newTeeth = findings.filter(({ isNew }) => isNew).map(({ tooth }) => tooth);
      expect(newTeeth).toEqual([...new Set(newTeeth)]);
      const cavities = findings.filter(({ kind }) => kind === 'cavity').map(({ tooth }) => tooth);
      const next = own[i + 1]?.findings.filter(({ kind, isNew }) => kind === 'restoration' || isNew).map(({ tooth }) => tooth);
      if (next) expect(next).toEqual(expect.arrayContaining(cavities));
    }
  }
  expect(visits.some(({ visit }) => visit.findings.some(({ kind }) => kind === 'cavity'))).toBe(true);
});

test('a tooth that is gone shows nothing', () => {
  const gone = people.flatMap(({ past, visits: own }) =>
    own.flatMap(({ findings }) => findings.filter(({ tooth }) => past.missing.includes(tooth))),
  );
  expect(people.some(({ past }) => past.missing.length > 0)).toBe(true);
  expect(gone).toEqual([]);
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
    foodsById,
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
  });
});

describe('what is seen on looking', () => {
  const dates = people.map(({ visits: own }) => own.map(({ onDate, answers }) => ({ onDate, said: answers.bitewings_last })));

  test('bitewings are dated before the visit or on it, never go back, and are of the day where they showed something new', () => {
    for (const own of dates) {
      const known = own.flatMap(({ onDate, said }) => (said?.value && said.value !== 'never' ? [{ onDate, on: String(said.value) }] : []));
      for (const { onDate, on } of known) expect(on <= onDate).toBe(true);
      expect(known.map(({ on }) => on)).toEqual(known.map(({ on }) => on).sort());
    }
    const shown = visits.filter(({ visit }) => visit.findings.some(({ kind, isNew }) => isNew && kind.endsWith('-radiograph')));
    expect(shown.length).toBeGreaterThan(10);
    for (const { visit } of shown) expect(visit.answers.bitewings_last?.value).toBe(visit.onDate);
  });

  test('most are known at the last visit, some are not, and nobody without teeth has any', () => {
    const last = dates.flatMap((own) => own.slice(-1));
    const known = last.filter(({ said }) => said?.value !== undefined).length / last.length;
    expect(known).toBeGreaterThan(0.6);
    expect(known).toBeLessThan(0.97);
    const toothless = visits.filter(({ visit }) => ['none', 'implants-only'].includes(String(visit.answers.natural_teeth?.value)));
    expect(toothless.length).toBeGreaterThan(0);
    expect(toothless.filter(({ visit }) => 'bitewings_last' in visit.answers || 'tooth_wear' in visit.answers)).toEqual([]);
  });

  test('wear comes with the years and is not noted everywhere', () => {
    const worn = (from: number, below: number) => {
      const noted = visits.filter(({ person, visit }) => {
        const ageYears = ageAt(person, visit.onDate);
        return ageYears >= from && ageYears < below && visit.answers.tooth_wear;
      });
      return noted.filter(({ visit }) => visit.answers.tooth_wear?.value !== 'none').length / noted.length;
    };
    expect(worn(50, 100)).toBeGreaterThan(worn(0, 30));
    expect(visits.some(({ visit }) => !visit.answers.tooth_wear && visit.answers.natural_teeth?.value === 'has-teeth')).toBe(true);
  });
});

test('most people were asked whether they need an interpreter, some need one, and nobody who is new was asked', () => {
  const asked = people.filter(({ interpreter }) => interpreter !== undefined);
  expect(asked.length / people.length).toBeGreaterThan(0.75);
  expect(asked.length).toBeLessThan(people.length);
  expect(asked.filter(({ interpreter }) => interpreter !== '').length).toBeGreaterThan(2);
  expect(people.filter((person) => person.visits.length === 0 && person.interpreter === '')).toEqual([]);
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
