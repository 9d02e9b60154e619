import { expect, test } from 'vitest';
import { questions } from '../../content/questions.ts';
import type { AnswerValue } from '../visit/answer.ts';
import { decideMouth } from './mouthFirst.ts';
import { questionsInMouth } from './questionsInMouth.ts';

function questionsOf(known: Record<string, AnswerValue>) {
  const mouth = decideMouth({ known, findings: [], ageYears: 50, questions });
  return questionsInMouth(questions, mouth, known);
}
const find = (known: Record<string, AnswerValue>, id: string) => questionsOf(known).find((q) => q.id === id);

test('an ordinary mouth keeps the very list', () => {
  expect(questionsOf({ natural_teeth: 'has-teeth' })).toBe(questions);
});

test('a question that makes no sense is gone', () => {
  expect(find({ natural_teeth: 'none' }, 'pits_deep')).toBeUndefined();
  expect(find({ natural_teeth: 'none' }, 'dry_mouth')).toBeDefined();
});

test('lost glands are the reason to measure: one flow is wanted, until either is known', () => {
  const glands = { natural_teeth: 'has-teeth', conditions: ['sjogren'] };
  expect(find({ natural_teeth: 'has-teeth' }, 'resting_flow')?.optional).toBe(true);
  expect(find(glands, 'resting_flow')?.optional).toBeUndefined();
  expect(find(glands, 'stimulated_flow')?.optional).toBe(true);
  expect(find({ ...glands, stimulated_flow: 0.4 }, 'resting_flow')?.optional).toBe(true);
});
