import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { content } from '../../content/allContent.ts';
import { demoPractice } from '../../content/demo/practice.ts';
import { foodsById } from '../../content/foods.ts';
import { questions } from '../../content/questions.ts';
import { assessVisit } from './assessVisit.ts';
import { checkVisit } from './checkVisit.ts';
import type { VisitInput } from './types.ts';

type Visit = VisitInput['visit'];
const file = JSON.parse(readFileSync('examples/08-pregnant-adult.json', 'utf8')) as Omit<VisitInput, 'practice'>;
const visitWith = (part: Partial<Visit>): VisitInput => ({
  practice: demoPractice,
  person: file.person,
  visit: { ...file.visit, ...part },
});
const planWith = (part: Partial<Visit>) => assessVisit(visitWith(part), content).plan;

test('the regimen that was taken is the plan, with its own packs, tasks and cost', () => {
  const [best, second] = planWith({}).regimens ?? [];
  if (!best || !second) throw new Error('two regimens are needed');
  const plan = planWith({ agreed: { regimen: second.id } });
  expect(plan.chosenRegimen).toBe(second.id);
  expect(plan.lines.map((line) => line.shelfItemId)).toEqual(second.lines.map((line) => line.shelfItemId));
  expect(plan.monthlyCostCents).toBe(second.monthlyCostCents);
  expect(plan.regimens?.map(({ id }) => id)).toContain(best.id);
});

test('no more tasks than the person accepts, and why something stays open then; not asked is no limit', () => {
  const tasks = (part: Partial<Visit>) => planWith(part).tasksPerDay;
  expect(tasks({ agreed: { tasksAccepted: 'any' } })).toBe(tasks({}));
  expect(tasks({})).toBeGreaterThan(3);
  const few = planWith({ agreed: { tasksAccepted: 3 } });
  expect(few.tasksPerDay).toBeLessThanOrEqual(3);
  expect(few.unmet.length).toBeGreaterThan(0);
  expect(few.conflict?.constraints.map(({ id }) => id)).toContain('tasks');
});

test('what was turned down or stopped, then or as told today, is chosen last and named with its reason', () => {
  const [gum] = planWith({}).lines.filter(({ shelfItemId }) => shelfItemId === 'gum-xylitol');
  if (!gum) throw new Error('the gum is needed');
  const past = { shelfItemId: 'gum-xylitol', name: gum.name, since: '2026-05-01' } as const;
  const turnedDown = planWith({ pastCare: [{ ...past, turnedDown: 'declined', stopReason: 'taste' }] });
  const toldToday = planWith({ pastCare: [past], used: { 'gum-xylitol': { adherence: 'stopped', why: 'taste' } } });
  for (const plan of [turnedDown, toldToday]) {
    expect(plan.lines.map((line) => line.shelfItemId)).not.toContain('gum-xylitol');
    expect(plan.droppedBefore).toEqual([{ shelfItemId: 'gum-xylitol', name: gum.name, why: 'taste' }]);
  }
  const kept = planWith({ pastCare: [past], used: { 'gum-xylitol': { adherence: 'as-agreed' } } });
  expect(kept.droppedBefore).toEqual([]);
});

test('a regimen of packs that are not on the shelf is refused by name', () => {
  const problems = checkVisit(visitWith({ agreed: { regimen: 'gum-xylitol+nothing' } }), questions, foodsById);
  expect(problems).toContainEqual({ path: 'visit.agreed.regimen', message: '"nothing" is not on the practice\'s shelf' });
});
