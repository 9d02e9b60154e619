import fc from 'fast-check';
import { expect, test } from 'vitest';
import { content } from '../../src/content/allContent.ts';
import { foodsById } from '../../src/content/foods.ts';
import { nameOnLeaflet } from '../../src/core/leaflet/nameOnLeaflet.ts';
import { assessVisit } from '../../src/core/visit/assessVisit.ts';
import { checkVisit } from '../../src/core/visit/checkVisit.ts';
import type { VisitInput } from '../../src/core/visit/types.ts';
import { visitArbitrary } from './visitArbitrary.ts';

/** Fixed, so that a failure can be looked at again; EBBLINE_SEED looks elsewhere. */
const seed = Number(process.env.EBBLINE_SEED ?? 20_261_125);
const PEOPLE = process.env.EBBLINE_LONG === '1' ? 100_000 : 1_000;
const MINUTE = 60_000;
const TIMEOUT = PEOPLE > 2_000 ? 120 * MINUTE : 2 * MINUTE;

const DENTIST = 'Dr. Ahlgren';

/** What a leaflet must not show, whatever the language: see honest words and the look of the leaflet. */
const NEVER_ON_A_LEAFLET =
  /\bRLU\b|\bATP\b|\bextreme\b|\bextremo\b|riesgo|\brisk\b|probabili|bulimi|anorexi|drug use|drogas|suicid|\bsafe amount\b/i;
/** Besides, outside the cautions, which are the same for everybody. */
const PRIVATE = /embaraz|pregnan|alcohol problem|v[oó]mit|eating disorder/i;

/** The words of the cautions are fixed: none is made from a person's answers. */
const CAUTION_TEXTS = Object.values(content.leaflet.catalogs).flatMap((catalog) =>
  Object.entries(catalog).flatMap(([id, text]) => (id.startsWith('caution.') ? [text] : [])),
);

const leafletNames = (input: VisitInput, ids: readonly string[]) =>
  input.practice.shelf.filter((item) => ids.includes(item.id)).map((item) => nameOnLeaflet(item, input.visit.language).text.toLowerCase());

test('any visit is assessed; no leaflet shows what it must not; low is never said while a disease item is unknown; the reading moves no level', {
  timeout: TIMEOUT,
}, () => {
  fc.assert(
    fc.property(visitArbitrary, (input) => {
      expect(checkVisit(input, content.questions, foodsById)).toEqual([]);
      const assessment = assessVisit(input, content);
      const { proposed, plan, leaflet } = assessment;

      const text = JSON.stringify(leaflet);
      expect(text).not.toMatch(NEVER_ON_A_LEAFLET);
      expect(JSON.stringify({ ...leaflet, cautions: [] })).not.toMatch(PRIVATE);
      for (const caution of leaflet.cautions) expect(CAUTION_TEXTS).toContain(caution);
      // A small number could stand there for another reason, such as a cost or a year.
      const rlu = input.visit.reading?.rlu ?? 0;
      if (rlu > 3_000) expect(text.replaceAll(/[,.]/g, '')).not.toContain(String(rlu));
      const unsigned = plan.lines.filter(
        (line) => line.state !== 'signed' && input.practice.shelf.find((i) => i.id === line.shelfItemId)?.release !== 'anyone',
      );
      const steps = leaflet.day.map((step) => step.text.toLowerCase()).join('\n');
      const shown = new Set(
        leafletNames(
          input,
          plan.lines.filter((line) => !unsigned.includes(line)).map((line) => line.shelfItemId),
        ),
      );
      for (const name of leafletNames(
        input,
        unsigned.map((line) => line.shelfItemId),
      ))
        if (!shown.has(name)) expect(steps).not.toContain(name);
      expect(leaflet.signedBy).toEqual([]);
      expect(plan.lines.every((line) => line.state !== 'signed')).toBe(true);

      if (proposed?.missing.some((item) => item.role === 'disease')) expect(proposed.level).not.toBe('low');
      if (assessment.mouth.kind === 'level-does-not-apply') expect([proposed, assessment.confirmed]).toEqual([null, null]);

      const { reading: _reading, ...withoutReading } = input.visit;
      const other = assessVisit({ ...input, visit: withoutReading }, content);
      expect(other.proposed).toEqual(proposed);
      expect(other.couldChange).toEqual(assessment.couldChange);
    }),
    { seed, numRuns: PEOPLE },
  );
});

test('a signature releases exactly the item it names, and the leaflet names who signed', { timeout: TIMEOUT }, () => {
  let seen = 0;
  fc.assert(
    fc.property(visitArbitrary, (input) => {
      const line = assessVisit(input, content).plan.lines.find((l) => l.state === 'waiting-for-signature');
      if (!line) return;
      seen += 1;
      const signed = [{ shelfItemId: line.shelfItemId, by: DENTIST, at: '2026-11-25T11:00:00Z' }];
      const after = assessVisit({ ...input, visit: { ...input.visit, signed } }, content);
      expect(after.plan.lines.filter((l) => l.state === 'signed').map((l) => l.shelfItemId)).toEqual([line.shelfItemId]);
      expect(after.leaflet.signedBy.join(' ')).toContain(DENTIST);
    }),
    { seed, numRuns: PEOPLE / 4 },
  );
  expect(seen).toBeGreaterThan(PEOPLE / 80);
});
