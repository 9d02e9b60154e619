import { describe, expect, test } from 'vitest';
import { z } from 'zod';
import { describeIssues, sayProblem } from './describeIssues.ts';
import { VisitFileSchema } from './visitSchema.ts';

function say(schema: z.ZodType, input: unknown): string[] {
  const parsed = schema.safeParse(input);
  return parsed.success ? [] : describeIssues(parsed.error.issues, input).map(sayProblem);
}

const visit = { onDate: '2026-11-25', language: 'en', answers: {}, findings: [], pastReadings: [], signed: [] };
const file = { ebbline: 'visit-1', practice: 'demo', person: { name: 'Test Person', birthDate: '1990-01-01', newPatient: false }, visit };

test('a file in order has nothing to say', () => {
  expect(say(VisitFileSchema, file)).toEqual([]);
});

describe('a visit file', () => {
  test.each<[string, unknown, string[]]>([
    ['letter for a number', { ...file, visit: { ...visit, reading: { rlu: 'x' } } }, ['visit.reading.rlu: must be a number']],
    ['below zero', { ...file, visit: { ...visit, reading: { rlu: -5 } } }, ['visit.reading.rlu: a reading cannot be below 0']],
    ['no such day', { ...file, visit: { ...visit, onDate: '2026-02-30' } }, ['visit.onDate: must be a date like 2026-11-25']],
    ['unknown fields', { ...file, a: 1, visit: { ...visit, b: 2 } }, ['visit.b: is not a known field', 'a: is not a known field']],
    ['another edition', { ...file, ebbline: 'visit-9' }, ['ebbline: must be "visit-1"']],
    ['no such practice', { ...file, practice: 'mine' }, ['practice: must be "demo", or an object']],
    ['nothing at all', null, ['must be an object']],
    ['a missing part', { ...file, visit: undefined }, ['visit: is missing']],
    ['null for a list', { ...file, visit: { ...visit, signed: null } }, ['visit.signed: must be a list']],
    [
      'a nested answer',
      { ...file, visit: { ...visit, answers: { a: { how: 'asked', value: { b: 1 } } } } },
      ['visit.answers.a.value: must be true or false, or a number, or text, or a list'],
    ],
    [
      'an answer without a value',
      { ...file, visit: { ...visit, answers: { a: { how: 'asked' } } } },
      ['visit.answers.a.value: an asked or carried answer has a value, an unknown one has none'],
    ],
    [
      'a half-filled practice',
      { ...file, practice: { name: '', invented: true, timeZone: 'UTC', settings: null, meters: [], lots: [] } },
      ['practice.name: must not be empty', 'practice.settings: must be an object', 'practice.shelf: is missing'],
    ],
  ])('%s', (_, input, sentences) => {
    expect(say(VisitFileSchema, input)).toEqual(sentences);
  });
});

describe('limits', () => {
  test.each<[string, z.ZodType, unknown, string]>([
    ['above', z.number().positive(), 0, 'must be above 0'],
    ['at most', z.number().max(2), 3, 'must be at most 2'],
    ['whole', z.int(), 1.5, 'must be a whole number'],
    ['not a number', z.number(), Number.NaN, 'must be a number'],
    ['length', z.string().max(3), 'abcd', 'must have at most 3 characters'],
    ['entries', z.array(z.number()).min(1), [], 'must have at least 1 entry'],
    ['choice', z.enum(['a', 'b']), 'c', 'must be one of: a, b'],
  ])('%s', (_, schema, input, sentence) => {
    expect(say(schema, input)).toEqual([sentence]);
  });
});
