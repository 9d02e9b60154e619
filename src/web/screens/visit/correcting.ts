import type { Level } from '../../../core/risk/types.ts';
import type { VisitAssessment, VisitInput } from '../../../core/visit/types.ts';
import { readField } from './undoSteps.ts';
import type { ReplyEffect } from './visitReplies.ts';

const FIELDS = [
  'reading',
  'findings',
  'allExamined',
  'agreed',
  'stopUsing',
  'nextOn',
  'language',
  'meterId',
  'speaker',
  'goals',
  'goalsSince',
  'used',
  'acidDay',
] as const;

/** The fields in which the corrected visit differs from the record; null where something is taken out. */
export function listChanges(before: VisitInput, after: VisitInput): { path: string; value: unknown }[] {
  const questions = new Set([...Object.keys(before.visit.answers), ...Object.keys(after.visit.answers)]);
  const paths = [...[...questions].map((id) => `answers.${id}`), ...FIELDS];
  return paths.flatMap((path) => {
    const value = readField(after, path) ?? null;
    return JSON.stringify(value) === JSON.stringify(readField(before, path) ?? null) ? [] : [{ path, value }];
  });
}

/** The visit as it would stand with this level confirmed now, for the page alone. */
export function withLevel(
  input: VisitInput,
  { proposed }: Pick<VisitAssessment, 'proposed'>,
  level: string,
  who: { readonly by: string; readonly reason: string },
): VisitInput {
  if (!proposed) return input;
  const { protocol, edition } = proposed;
  const changedFrom = proposed.level !== null && proposed.level !== level ? { changedFrom: proposed.level } : {};
  const confirmed = { level: level as Level, protocol, edition, at: new Date().toISOString(), ...who, ...changedFrom };
  return { ...input, visit: { ...input.visit, confirmed } };
}

/** A number that is noted afterwards does not get the time of today: when the swab was taken is then not known. */
export function withoutNewTime(effect: ReplyEffect, { visit }: VisitInput): ReplyEffect {
  if (visit.reading?.takenAt !== undefined) return effect;
  const puts = effect.puts.map((put) => {
    if (put.path !== 'reading' || typeof put.value !== 'object' || put.value === null) return put;
    const { takenAt: _, ...reading } = put.value as { takenAt?: string };
    return { ...put, value: reading };
  });
  return { ...effect, puts };
}
