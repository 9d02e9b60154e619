import { describe, expect, it } from 'vitest';
import { demoShelf } from '../../../content/demo/shelf.ts';
import { regimenTables as tables } from '../../../content/regimenTables.ts';
import { checkItem } from '../checkItem.ts';
import { mayLimitFood } from '../mayLimitFood.ts';
import { planFluoride } from '../planFluoride.ts';
import type { PersonFacts, ShelfItem } from '../types.ts';

const adult: PersonFacts = {
  ageYears: 30,
  ageMonths: 360,
  weightKg: 4,
  pregnant: false,
  breastfeeding: false,
  canSpit: true,
  allergies: [],
  medicines: [],
  conditions: [],
  dogAtHome: false,
  youngChildAtHome: false,
  dryMouth: false,
  dentures: false,
  braces: false,
  jawPain: false,
  waterFluorideMgPerL: 0,
};
const itemOf = (agentId: string): ShelfItem => {
  const item = demoShelf.find((i) => i.agentId === agentId);
  if (!item) throw new Error(`no ${agentId}`);
  return item;
};
const check = (item: ShelfItem, facts: PersonFacts) => checkItem({ item, facts, level: 'high', jurisdiction: 'US', tables });
const asks = (item: ShelfItem, facts: PersonFacts) => check(item, facts).asks.map((b) => b.ruleId);

describe('4 kg at 30 years', () => {
  it.each(['F_PASTE_5000', 'F_RINSE_005', 'F_VARNISH', 'SDF38', 'XYLITOL'])('%s waits, and the weight is asked', (agentId) => {
    const bar = check(itemOf(agentId), adult).asks.find((b) => b.ruleId === 'P18');
    expect(bar).toMatchObject({ because: '4 kg does not fit 30 years: weigh again, or correct the age', ask: ['weight_kg'] });
    expect(asks(itemOf(agentId), { ...adult, weightKg: 60 })).not.toContain('P18');
    expect(asks(itemOf(agentId), { ...adult, weightKg: undefined })).not.toContain('P18');
  });

  it('ordinary paste goes on; its line takes the light weight for the age and says so, and the typed one only raises the alarm', () => {
    const item = itemOf('F_PASTE_STD');
    expect(asks(item, adult)).not.toContain('P18');
    const { intake, sentence } = planFluoride([{ item, use: item.use, state: 'proposed' }], adult, tables);
    expect(intake).toMatchObject({ weightAssumed: true, weightKg: 46.3 });
    expect(sentence).toContain('weight assumed 46.3 kg');
    const much = { ...item.use, amountG: 15 };
    const { acute } = planFluoride([{ item, use: much, state: 'proposed' }], adult, tables).intake;
    expect(acute.action).toBe('emergency-care-now');
    expect(planFluoride([{ item, use: much, state: 'proposed' }], { ...adult, weightKg: 60 }, tables).intake.acute.action).toBe(
      'poison-centre-now',
    );
  });

  it('is an open question of the safety check of a child', () => {
    const child = { ...adult, ageYears: 8, ageMonths: 100 };
    expect(mayLimitFood(child, tables)).toMatchObject({ allowed: 'after-only', ask: ['weight_kg'] });
    expect(mayLimitFood({ ...child, weightKg: 25 }, tables).allowed).toBe('any');
  });
});

describe('what is given at the visit', () => {
  const gel = (amountG: number): ShelfItem => ({
    ...itemOf('F_VARNISH'),
    id: 'gel',
    agentId: 'F_GEL_APF',
    form: 'gel',
    compound: undefined,
    percent: undefined,
    fluoridePpm: 12_300,
    use: { timesPerDay: 1, amount: 'tray', amountG, atVisit: true },
  });
  const sixYears = { ...adult, ageYears: 6, ageMonths: 72, weightKg: undefined };

  it('asks for the weight where it would be an emergency at the least weight that fits the age', () => {
    // 4 g x 12.3 mg/g = 49.2 mg; the least weight not asked back at 6 years is 0.55 x 16.4 kg = 9.02 kg: 5.5 mg/kg.
    expect(check(gel(4), sixYears).asks.find((b) => b.ruleId === 'P14')).toMatchObject({ ask: ['weight_kg'] });
    expect(asks(gel(2), sixYears)).not.toContain('P14');
    expect(check(gel(4), { ...sixYears, weightKg: 16.4 }).stops.map((b) => b.ruleId)).not.toContain('P14');
    expect(check(gel(8), { ...sixYears, weightKg: 16.4 }).stops.map((b) => b.ruleId)).toContain('P14');
  });
});

describe('a course of chlorhexidine', () => {
  const course = (courseDays: number | undefined): ShelfItem => {
    const { courseDays: _, ...use } = itemOf('CHX_RINSE').use;
    return { ...itemOf('CHX_RINSE'), use: courseDays === undefined ? use : { ...use, courseDays } };
  };

  it('is not offered without an end, nor beyond about a month', () => {
    const facts = { ...adult, weightKg: 60 };
    expect(asks(course(undefined), facts)).toContain('P19');
    expect(asks(course(7), facts)).not.toContain('P19');
    expect(check(course(30), facts).stops.map((b) => b.ruleId)).not.toContain('P20');
    expect(check(course(31), facts).stops.find((b) => b.ruleId === 'P20')).toMatchObject({ overridable: true });
  });
});
