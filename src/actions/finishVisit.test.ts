import { createHash } from 'node:crypto';
import { expect, test } from 'vitest';
import { demoPractice } from '../content/demo/practice.ts';
import type { VisitInput } from '../core/visit/types.ts';
import { canonicalJson } from '../store/chain.ts';
import { digestOf } from './finishVisit.ts';

const input: VisitInput = {
  practice: demoPractice,
  person: { name: 'Zoë "Z" Invented', birthDate: '1980-01-01', newPatient: true },
  visit: { onDate: '2026-11-25', language: 'en', answers: {}, findings: [], pastReadings: [], signed: [], nextOn: undefined },
};
const whole = (given: VisitInput) => {
  const plain: unknown = JSON.parse(JSON.stringify(given));
  return createHash('sha256').update(canonicalJson(plain)).digest('hex');
};

// The digests of visits that were closed before are of the whole input in canonical form: keeping a part of it must not change them.
test.each<[string, VisitInput]>([
  ['a visit', input],
  ['the same practice again', { ...input, visit: { ...input.visit, allExamined: true } }],
  ['a practice that has changed', { ...input, practice: { ...demoPractice, shelf: demoPractice.shelf.slice(1) } }],
])('the digest of %s is that of the canonical whole', (_, given) => {
  expect(digestOf(given)).toBe(whole(given));
});
