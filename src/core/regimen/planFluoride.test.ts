import { describe, expect, it, test } from 'vitest';
import { demoShelf } from '../../content/demo/shelf.ts';
import { regimenTables as tables } from '../../content/regimenTables.ts';
import { amountAtAge } from './amountAtAge.ts';
import { fluorideMgPerDay, type PlannedUse, planFluoride } from './planFluoride.ts';
import type { PersonFacts } from './types.ts';

const child: PersonFacts = {
  ageYears: 4,
  ageMonths: 50,
  weightKg: 16,
  waterFluorideMgPerL: 0,
  otherFluoride: [],
  varnishDaysPerYear: 0,
};
const planned = (id: string, facts = child): PlannedUse => {
  const item = demoShelf.find((i) => i.id === id);
  if (!item) throw new Error(`no ${id} on the demo shelf`);
  return { item, use: amountAtAge(item, facts, 'UK', tables).use, state: 'proposed' };
};
const paste = planned('paste-naf-1450');
const varnish = planned('varnish-naf-plain');
const read = (more: Partial<PersonFacts>, uses: readonly PlannedUse[] = [paste]) => planFluoride(uses, { ...child, ...more }, tables);

// 1,448 ppm by the pack's percentage, reckoned here with 1,450: tolerance 0.005 mg.
describe('the sum is whole when every source is known, or asked and none', () => {
  it('pea of 1,450 ppm twice a day, all swallowed, and nothing else', () => {
    const { intake, sentence } = read({});
    expect(intake).toMatchObject({ complete: true, unknownSources: [] });
    expect(intake.mgPerDay).toBeCloseTo(0.725, 2);
    expect(sentence).toBe('0.045 mg/kg a day from paste and water');
  });

  it('salt by its label and the grams a day; tablets by their mg; the rinse that is used already', () => {
    const salt = { otherFluoride: ['fluoridated-salt'] as const, saltFluorideMgPerKg: 250, saltGPerDay: 3 };
    expect(read(salt).intake.mgPerDay).toBeCloseTo(0.725 + 0.75, 2);
    expect(read(salt).sentence).toBe('0.092 mg/kg a day from paste, water and salt with fluoride');
    const tablets = { otherFluoride: ['fluoride-tablets-or-drops'] as const, supplementFluorideMgPerDay: 0.25 };
    expect(read(tablets).intake).toMatchObject({ complete: true, mgPerDay: expect.closeTo(0.975, 2) });
    const rinse = read({ otherFluoride: ['naf-rinse-daily'] }).intake;
    expect(rinse.mgPerDay).toBeCloseTo(0.725 + 2.26, 2);
    expect(rinse.parts?.find((p) => p.name === 'the rinse used already')?.sources[0]).toMatchObject({ key: 'rinseLabels', status: 'read' });
  });

  it('varnish days averaged over the year, and each on its own day', () => {
    const { intake, sentence } = read({ varnishDaysPerYear: 2 });
    expect(intake.mgPerDay).toBeCloseTo(0.725 + (5.65 * 2) / 365, 2);
    expect(intake.parts?.at(-1)).toEqual({
      name: 'varnish at the practice',
      mgPerDay: expect.closeTo(0.03096, 4),
      onItsDay: { mg: expect.closeTo(5.65, 9), mgPerKg: expect.closeTo(0.353, 3), daysPerYear: 2 },
      sources: [expect.objectContaining({ key: 'varnishMonographs', status: 'read' })],
    });
    expect(sentence).toBe(
      '0.047 mg/kg a day from paste, water and varnish at the practice (varnish at the practice averaged over the year)',
    );
  });
});

describe('what is missing is named, and the sum is "at least"', () => {
  test.each([
    [{ otherFluoride: undefined }, ['other fluoride at home']],
    [{ otherFluoride: ['fluoridated-salt'] }, ['salt with fluoride']],
    [{ otherFluoride: ['fluoridated-salt'], saltFluorideMgPerKg: 250 }, ['amount of salt eaten']],
    [{ otherFluoride: ['fluoridated-salt'], saltGPerDay: 3 }, ['fluoride in the salt']],
    [{ otherFluoride: ['fluoride-tablets-or-drops', 'other'] }, ['fluoride tablets or drops', 'something else used at home']],
    [{ otherFluoride: ['professional-gel'] }, ['gel or foam at the practice']],
    [{ varnishDaysPerYear: undefined }, ['varnish at the practice']],
    [{ waterFluorideMgPerL: undefined }, ['water']],
    [{ waterFluorideMgPerL: 0.7 }, ['amount of water drunk']],
  ] as const)('%j: %j', (more, names) => {
    const { intake, sentence } = read(more as Partial<PersonFacts>);
    expect(intake).toMatchObject({ complete: false, unknownSources: names });
    expect(intake.limits.every(({ share }) => share === null)).toBe(true);
    expect(intake.mgPerDay).toBeCloseTo(0.725, 2);
    expect(sentence).toMatch(/^At least 0\.045 mg\/kg a day from paste/);
    for (const name of names) expect(sentence).toContain(name);
  });

  it('without a product too, what is known is in it', () => {
    const salt = { otherFluoride: ['fluoridated-salt'] as const, saltFluorideMgPerKg: 250, saltGPerDay: 3, varnishDaysPerYear: undefined };
    expect(read(salt, []).sentence).toBe(
      'No fluoride product in this plan; at least 0.047 mg/kg a day from water and salt with fluoride (varnish at the practice not known)',
    );
    expect(read({}, []).sentence).toBe('No fluoride product in this plan');
  });
});

describe('what the plan takes the place of is not counted twice', () => {
  it('varnish of the plan, up to four days a year, in the place of last year’s', () => {
    expect(read({ varnishDaysPerYear: 2 }, [paste, varnish]).intake.mgPerDay).toBeCloseTo(0.725 + (5.65 * 4) / 365, 2);
    expect(read({ varnishDaysPerYear: undefined }, [paste, varnish]).intake.complete).toBe(true);
  });

  it('a pack adds what it brings beyond what was there, so that the choice adds up to the plan', () => {
    const facts: PersonFacts = {
      ...child,
      ageYears: 8,
      ageMonths: 100,
      weightKg: 26,
      otherFluoride: ['naf-rinse-daily'],
      varnishDaysPerYear: 2,
    };
    const uses = ['paste-naf-1450', 'rinse-naf-005', 'varnish-naf-plain'].map((id) => planned(id, facts));
    const anyway = planFluoride([], facts, tables).intake.mgPerDay;
    const added = uses.reduce((sum, use) => sum + fluorideMgPerDay(use, facts, tables), anyway);
    expect(added).toBeCloseTo(planFluoride(uses, facts, tables).intake.mgPerDay, 9);
  });

  it('what is put on at the practice is no part of a swallowing at home', () => {
    expect(read({ varnishDaysPerYear: 4 }).intake.acute.mgIfAllSwallowed).toBeCloseTo(0.725, 2);
    expect(read({}, [paste, varnish]).intake.acute.mgIfAllSwallowed).toBeCloseTo(0.725, 2);
  });
});

it('weight assumed for the daily line alone, and said', () => {
  const { weightKg: _, ...unweighed } = child;
  const { intake, sentence } = planFluoride([paste], unweighed, tables);
  expect(intake).toMatchObject({ weightAssumed: true, weightKg: 13, acute: { mgPerKg: null } });
  expect(sentence).toContain('weight assumed 13 kg, light for the age, for this line alone');
});
