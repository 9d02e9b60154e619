import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { demoShelf } from '../../src/content/demo/shelf.ts';
import { regimenTables as tables } from '../../src/content/regimenTables.ts';
import { type CheckItemInput, checkItem } from '../../src/core/regimen/checkItem.ts';
import { checkTogether } from '../../src/core/regimen/checkTogether.ts';
import { findNeeds } from '../../src/core/regimen/findNeeds.ts';
import type { OwnLegalStatuses } from '../../src/core/regimen/legalStatus.ts';
import type { LocalProtocol } from '../../src/core/regimen/local/localProtocol.ts';
import { proposePlan } from '../../src/core/regimen/proposePlan.ts';
import type { ShelfItem } from '../../src/core/regimen/types.ts';
import { oddShelf } from './oddShelf.ts';
import { anyone, nothingWrong } from './people.ts';

const settings = { seed: Number(process.env.EBBLINE_SEED ?? 20_261_126), numRuns: process.env.EBBLINE_LONG === '1' ? 50_000 : 400 };
const TIMEOUT = 600_000;
const LEVELS = ['low', 'moderate', 'high', 'extreme'] as const;
const CHOSEN = tables.agents.filter((a) => a.byChoiceOnly).map((a) => a.id);
/** The law of the place is not what is looked at here. */
const legal: OwnLegalStatuses = Object.fromEntries(CHOSEN.map((id) => [id, 'dentist' as const]));
const OWN_STOPS = ['P01', 'P21'];

const model = demoShelf.find((item) => item.form === 'rinse');
if (!model) throw new Error('no rinse on the demo shelf');
/** Around the highest strength, and with courses of every kind. */
const bleaches = [0.05, 0.25, 0.250_1, 0.5, undefined].map((percent, i): ShelfItem => {
  const use =
    i % 2 === 0 ? { timesPerDay: 2 / 7, amount: '15 mL', amountMl: 15, courseDays: 84 } : { timesPerDay: 1, amount: '15 mL', amountMl: 15 };
  return {
    ...model,
    id: `bleach-${i}`,
    name: `bleach ${i}`,
    agentId: 'NAOCL',
    traits: [],
    percent,
    pH: 11,
    meets: ['antimicrobial'],
    release: 'dentist',
    compound: undefined,
    fluoridePpm: undefined,
    use,
  };
});
const shelf = [...demoShelf, ...oddShelf.filter(({ id }) => !bleaches.some((b) => b.id === id)), ...bleaches];

const edgeAge = fc.constantFrom(0, 6, 11, 12, 17, 18, 19, 65, 130);
const protocol: fc.Arbitrary<LocalProtocol> = fc.record({
  id: fc.constantFrom('a', 'b'),
  name: fc.constantFrom('Own rinse', ' '),
  author: fc.constantFrom('A. Dentist', 'A. Dentist', ''),
  date: fc.constantFrom('2026-01-02', 'some day'),
  agentId: fc.oneof(fc.constant('NAOCL'), fc.constantFrom(...CHOSEN), fc.constantFrom(...tables.agents.map((a) => a.id))),
  percentAtMost: fc.oneof(fc.constantFrom(0.25, 0.250_1, 100, undefined), fc.double({ min: 0, max: 2, noNaN: true })),
  timesPerWeekAtMost: fc.constantFrom(1, 2, 14, 70),
  courseDaysAtMost: fc.constantFrom(1, 84, 366),
  levels: fc.subarray([...LEVELS]),
  needs: fc.constant(['antimicrobial'] as const),
  fromAgeYears: fc.oneof(edgeAge, fc.integer({ min: 0, max: 90 })),
  belowAgeYears: fc.option(edgeAge, { nil: undefined }),
  exclusions: fc.record({
    conditions: fc.subarray(['asthma', 'eating-disorder', 'reflux', 'no-such-condition']),
    medicines: fc.constant([]),
    allergies: fc.subarray(['chlorine', 'milk-protein']),
    pregnant: fc.constantFrom(true as const, undefined),
  }),
});
/** Half of them open as far as a protocol can: then the safety rules alone keep anything back. */
const wide = fc.tuple(protocol, fc.constantFrom(0.05, 0.25)).map(
  ([p, percentAtMost]): LocalProtocol => ({
    ...p,
    name: 'Own rinse',
    author: 'A. Dentist',
    date: '2026-01-02',
    agentId: 'NAOCL',
    percentAtMost,
    timesPerWeekAtMost: 70,
    courseDaysAtMost: 366,
    levels: LEVELS,
    fromAgeYears: 0,
    belowAgeYears: undefined,
    exclusions: { conditions: [], medicines: [], allergies: [] },
  }),
);
const protocols = fc.array(fc.oneof(protocol, wide), { maxLength: 3 });
const person = fc.oneof(anyone, nothingWrong);
const level = fc.option(fc.constantFrom(...LEVELS), { nil: undefined });
const place = fc.constantFrom('US' as const, 'UK' as const, 'unknown' as const);

describe('a local protocol narrows', () => {
  test('it lifts no stop and answers no question: every bar of the safety rules stands with it as without', { timeout: TIMEOUT }, () => {
    let covered = 0;
    fc.assert(
      fc.property(
        person,
        level,
        place,
        protocols,
        fc.oneof(fc.constantFrom(...bleaches), fc.constantFrom(...shelf)),
        (facts, at, jurisdiction, localProtocols, item) => {
          const input: CheckItemInput = { item, facts, level: at, jurisdiction, legal, tables };
          const bars = (check: ReturnType<typeof checkItem>) =>
            [...check.stops, ...check.asks, ...check.cautions].filter(({ ruleId }) => !OWN_STOPS.includes(ruleId));
          const without = checkItem(input);
          const under = checkItem({ ...input, localProtocols });
          expect(bars(under)).toEqual(bars(without));
          expect(under.release).toBe(without.release);
          expect(under.warnings).toEqual(without.warnings);
          if (item.agentId !== 'NAOCL') return;
          const isOff = under.stops.some((b) => OWN_STOPS.includes(b.ruleId)) || under.asks.some((b) => OWN_STOPS.includes(b.ruleId));
          expect(isOff).toBe(under.localProtocol === undefined);
          if (!under.localProtocol) return;
          covered++;
          expect(item.percent).toBeLessThanOrEqual(0.25);
          expect(under.localProtocol.levels).toContain(at);
          expect(under.localProtocol.author.trim()).not.toBe('');
        },
      ),
      { ...settings, numRuns: settings.numRuns * 4 },
    );
    expect(covered).toBeGreaterThan(0);
  });

  test('a signed plan under protocols holds nothing that a safety rule or another pack keeps out, and hypochlorite only for a grown-up', {
    timeout: TIMEOUT,
  }, () => {
    let seen = 0;
    const signable = shelf.filter((item) => CHOSEN.includes(item.agentId));
    fc.assert(
      fc.property(
        person,
        level,
        place,
        protocols,
        fc.oneof(
          fc.subarray(signable, { minLength: 1, maxLength: 4 }),
          fc.constantFrom(...bleaches).map((b) => [b]),
        ),
        (facts, at, jurisdiction, localProtocols, packs) => {
          const confirmed = at && {
            level: at,
            protocol: 'four_level_6plus_2019',
            edition: '1',
            by: 'A. Hygienist',
            at: '2026-11-25T09:00:00Z',
          };
          const needs = findNeeds({ facts, confirmed, findings: [], result: null, jurisdiction, tables });
          const signed = packs.map(({ id }) => ({ shelfItemId: id, by: 'A. Dentist', at: '2026-11-25T10:00:00Z' }));
          const plan = (own: readonly LocalProtocol[]) =>
            proposePlan({ facts, needs, shelf: packs, signed, confirmed, tables, settings: { jurisdiction, legal, localProtocols: own } });
          const under = plan(localProtocols).lines;
          const agentOf = (id: string) => packs.find((p) => p.id === id)?.agentId;
          const bleach = under.filter((l) => agentOf(l.shelfItemId) === 'NAOCL');
          const items = packs.filter(({ id }) => under.some((l) => l.shelfItemId === id));
          for (const item of items) {
            const { stops, asks } = checkItem({ item, facts, level: at, jurisdiction, legal, tables });
            expect([...stops, ...asks].filter(({ ruleId }) => ruleId !== 'P01')).toEqual([]);
            const meetings = items.filter((o) => o !== item).flatMap((o) => checkTogether(item, o, tables.interactions));
            expect(meetings.filter(({ verdict }) => verdict === 'never-both')).toEqual([]);
          }
          if (bleach.length === 0) return;
          seen++;
          expect(facts.ageYears).toBeGreaterThanOrEqual(18);
          expect([facts.pregnant, facts.breastfeeding]).not.toContain(true);
          for (const id of ['asthma', 'asthma-severe', 'eating-disorder', 'swallowing-difficulty'])
            expect(facts.conditions).not.toContain(id);
          expect(facts.youngChildAtHome).toBe(false);
          expect(under.map((l) => agentOf(l.shelfItemId))).not.toContain('CHX_RINSE');
          for (const line of bleach)
            expect(line).toMatchObject({ state: 'signed', byProtocol: { author: 'A. Dentist', name: 'Own rinse' } });
        },
      ),
      { ...settings, numRuns: settings.numRuns * 2 },
    );
    expect(seen).toBeGreaterThan(0);
  });
});
