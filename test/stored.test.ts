import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { readVisit } from '../src/cli/readVisit.ts';
import { content } from '../src/content/allContent.ts';
import { assessVisit } from '../src/core/visit/assessVisit.ts';
import { completeStored } from '../src/core/visit/completeStored.ts';
import type { VisitAssessment } from '../src/core/visit/types.ts';

// Assessments as the first edition stored them; test/reference/stored/README.md says how they were made.
test.each(['01-returning-adult', '10-no-natural-teeth'])(
  '%s, stored by the first edition, has every part that a page reads today',
  (name) => {
    const old = JSON.parse(readFileSync(`test/reference/stored/${name}.json`, 'utf8')) as VisitAssessment;
    const today = assessVisit(readVisit(JSON.parse(readFileSync(`examples/${name}.json`, 'utf8'))), content);
    const complete = completeStored(old);
    for (const part of ['mouth', 'plan', 'leaflet'] as const) {
      expect(Object.keys(complete[part])).toEqual(expect.arrayContaining(requiredKeys(today[part])));
      expect(complete[part]).toMatchObject(old[part]);
    }
    expect(Object.keys(complete.leaflet.labels)).toEqual(expect.arrayContaining(Object.keys(today.leaflet.labels)));
    expect(completeStored(today)).toEqual(today);
  },
);

/** A key that is there and undefined, or an optional list that is empty, may be absent as well. */
function requiredKeys(part: object): string[] {
  return Object.entries(part).flatMap(([key, value]) => (value === undefined ? [] : [key]));
}
