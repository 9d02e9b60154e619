import { readdirSync, readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { readVisit } from '../../src/cli/readVisit.ts';
import { content } from '../../src/content/allContent.ts';
import { assessParts, assessVisit, VISIT_PARTS, type VisitPart } from '../../src/core/visit/assessVisit.ts';
import type { VisitContent } from '../../src/core/visit/visitContent.ts';
import { visitArbitrary } from './visitArbitrary.ts';

const seed = Number(process.env.EBBLINE_SEED ?? 20_261_125);
const PEOPLE = process.env.EBBLINE_LONG === '1' ? 5_000 : 150;
const TIMEOUT = 10 * 60_000;

const examples = readdirSync('examples')
  .filter((name) => name.endsWith('.json'))
  .map((name) => readVisit(JSON.parse(readFileSync(`examples/${name}`, 'utf8'))));
const visits = [...examples, ...fc.sample(visitArbitrary, { seed, numRuns: PEOPLE })];

/** In its own copy of every table nothing has been compiled yet, and nothing is found again by a later visit. */
const freshContent = (): VisitContent => structuredClone(content);

test('what is kept from earlier visits changes no result', { timeout: TIMEOUT }, () => {
  for (const visit of visits) expect(assessVisit(visit, content)).toEqual(assessVisit(visit, freshContent()));
});

test('a part alone says what the whole says', { timeout: TIMEOUT }, () => {
  const seen = new Set<string>();
  for (const visit of visits) {
    const whole = assessVisit(visit, content);
    for (const part of VISIT_PARTS) {
      const { items, ...alone } = assessParts(visit, content, [part]);
      expect(whole).toMatchObject(alone);
      expect(items !== undefined).toBe(part === 'risk');
      for (const field of Object.keys(alone)) seen.add(field);
    }
    const all = assessParts(visit, content, ['leaflet', 'explain', 'plan', 'risk', 'reading']);
    expect({ ...all, sources: whole.sources }).toEqual({ ...whole, items: all.items });
  }
  const whole = new Set(visits.flatMap((visit) => Object.keys(assessVisit(visit, content))));
  expect([...seen].sort()).toEqual([...whole].filter((field) => field !== 'sources').sort());
});

describe('a part computes no other', () => {
  const trap = <T extends object>(name: string): T =>
    new Proxy({} as T, {
      get: () => {
        throw new Error(`${name} was read`);
      },
    });
  const TABLES: Readonly<Record<VisitPart, readonly (keyof VisitContent)[]>> = {
    reading: ['readingNoise', 'swabConditions'],
    // The weights of the plan's tables say whether a weight can be right.
    risk: ['questions', 'findingFills', 'itemExclusions', 'mouthFills', 'protocols', 'regimen'],
    explain: ['questions', 'findingFills', 'itemExclusions', 'mouthFills', 'protocols', 'regimen'],
    plan: ['questions', 'findingFills', 'itemExclusions', 'mouthFills', 'protocols', 'regimen', 'readingNoise', 'swabConditions'],
    leaflet: [
      'questions',
      'findingFills',
      'itemExclusions',
      'mouthFills',
      'protocols',
      'regimen',
      'readingNoise',
      'swabConditions',
      'leaflet',
      'dayUses',
    ],
  };

  test.each(VISIT_PARTS)('%s', (part) => {
    const only = Object.fromEntries(
      Object.entries(content).map(([name, table]) => {
        const isNeeded = name === 'versions' || TABLES[part].some((needed) => needed === name);
        return [name, isNeeded ? table : trap(name)];
      }),
    ) as unknown as VisitContent;
    for (const example of examples) expect(assessParts(example, only, [part])).toEqual(assessParts(example, content, [part]));
  });
});
