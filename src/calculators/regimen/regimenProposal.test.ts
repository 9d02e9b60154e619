import { describe, expect, test } from 'vitest';
import { demoShelf } from '../../content/demo/shelf.ts';
import { runCalculator } from '../calculator.ts';
import type { Proposal } from './proposalOutput.ts';
import { regimenProposal } from './regimenProposal.ts';

const person = {
  ageYears: 45,
  ageMonths: 545,
  weightKg: 70,
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
};
const risk = { protocol: 'four_level_6plus_2019', level: 'high' };
const shelf: readonly (typeof demoShelf)[number][] = demoShelf.map((item) => ({ ...item, inStock: true }));
const input = { person, risk, shelf, jurisdiction: 'UK', onDate: '2026-11-26' };

function proposed(given: object): Proposal {
  const result = runCalculator(regimenProposal, JSON.parse(JSON.stringify(given)));
  if (!result.ok) throw new Error(`${result.error.path}: ${result.error.message}`);
  expect(regimenProposal.output.safeParse(result.output).error).toBe(undefined);
  return result.output as Proposal;
}
const errorOf = (given: object) => {
  const result = runCalculator(regimenProposal, JSON.parse(JSON.stringify(given)));
  return result.ok ? undefined : result.error;
};

describe('regimen-proposal', () => {
  test('gives regimens best first, each with a day in which everything has its time', () => {
    const { regimens, chosen, needs } = proposed(input);
    expect(regimens.length).toBeGreaterThan(1);
    expect(chosen).toBe(regimens[0]?.id);
    expect(needs.map((n) => n.kind)).toContain('fluoride-extra');
    for (const { lines, dayClock } of regimens) {
      const day = dayClock.onceSigned ?? dayClock.now;
      const timed = new Set([...dayClock.now.uses, ...day.uses].map((u) => u.shelfItemId));
      const elsewhere = new Set([...dayClock.notTimed, ...day.notPlaced].map((u) => u.shelfItemId));
      expect(lines.filter((l) => !l.atVisit && !timed.has(l.shelfItemId) && !elsewhere.has(l.shelfItemId))).toEqual([]);
      const waiting = lines.filter((l) => l.state === 'waiting-for-signature').map((l) => l.shelfItemId);
      expect(dayClock.now.uses.filter((u) => waiting.includes(u.shelfItemId))).toEqual([]);
    }
  });

  test('goes by needs that are given, and says why a pack is left out', () => {
    const given = { ...input, risk: undefined, needs: [{ kind: 'calcium-phosphate' }], person: { ...person, allergies: ['milk-protein'] } };
    const { excluded, regimens } = proposed(given);
    expect(excluded.filter((x) => x.level === 'stop' && /milk/.test(x.because))).not.toEqual([]);
    expect(excluded.filter((x) => x.because === '' || (x.level !== 'out-of-stock' && x.source === null))).toEqual([]);
    expect(regimens.flatMap((r) => r.lines.map((l) => l.shelfItemId)).filter((id) => excluded.some((x) => x.shelfItemId === id))).toEqual(
      [],
    );
  });

  test('a fact that is not known holds a pack back, with the question to ask', () => {
    const { allergies: _, ...unknown } = person;
    const asks = proposed({ ...input, person: unknown }).excluded.filter((x) => x.level === 'ask-first');
    expect(asks.flatMap((x) => x.ask)).toContain('allergies');
  });

  test('names what is out of stock, leaves a missing price unknown and explains what cannot hold together', () => {
    const bare = shelf.map(({ priceCents: _, ...item }) => item);
    expect(proposed({ ...input, shelf: bare }).regimens[0]?.monthlyCostCents).toBe(null);
    const empty = shelf.map((item) => ({ ...item, inStock: false }));
    const { excluded } = proposed({ ...input, shelf: empty });
    expect(excluded.filter((x) => x.level === 'out-of-stock').length).toBeGreaterThan(5);
    const few = proposed({ ...input, mostTasksPerDay: 1 });
    expect(few.conflict?.constraints.map((c) => c.id)).toContain('tasks');
  });

  const signature = { shelfItemId: 'paste-naf-5000', by: 'Dr. Ahlgren', at: '2026-11-26T09:00:00Z' };
  const protocol = {
    id: 'own',
    name: 'Own rule',
    author: 'Dr. Ahlgren',
    date: '2026-01-05',
    agentId: 'CHX_RINSE',
    timesPerWeekAtMost: 7,
    courseDaysAtMost: 7,
    levels: ['high'],
    needs: ['antimicrobial'],
    fromAgeYears: 21,
    exclusions: { conditions: [], medicines: [], allergies: [] },
  };

  test('what is signed stands in every regimen, and in the day', () => {
    const { regimens } = proposed({ ...input, signed: [signature] });
    for (const { lines, dayClock } of regimens) {
      expect(lines.filter((l) => l.state === 'signed').map((l) => l.shelfItemId)).toEqual(['paste-naf-5000']);
      expect(dayClock.now.uses.map((u) => u.shelfItemId)).toContain('paste-naf-5000');
    }
  });

  test("a practice's own protocol keeps out who it is not for, from its first day on", () => {
    const rule = (file: object) =>
      proposed({ ...input, localProtocols: [{ ...protocol, fromAgeYears: 60 }], ...file }).excluded.filter((x) => x.ruleId === 'P21');
    expect(rule({}).map((x) => x.because)).toEqual(expect.arrayContaining([expect.stringContaining('"Own rule"')]));
    expect(rule({ onDate: '2026-01-04' }).filter((x) => x.because.includes('"Own rule"'))).toEqual([]);
  });

  test('an empty shelf proposes nothing and fails nowhere', () => {
    const { regimens } = proposed({ ...input, shelf: [] });
    expect(regimens.flatMap((r) => r.lines)).toEqual([]);
    expect(regimens[0]?.unmet.length).toBeGreaterThan(0);
  });

  test.each([
    [{ person: { ...person, weightKg: 4 } }, 'person.weightKg'],
    [{ person: { ...person, ageMonths: 12 } }, 'person.ageMonths'],
    [{ person: { ...person, ageYears: undefined } }, 'person.ageYears'],
    [{ shelf: [shelf[0], shelf[0]] }, 'shelf.1.id'],
    [{ shelf: [{ ...shelf[0], percent: 0 }] }, 'shelf.0.percent'],
    [{ needs: [{ kind: 'saliva' }] }, 'needs'],
    [{ risk: undefined }, 'needs'],
    [{ jurisdiction: undefined }, 'jurisdiction'],
    [{ risk: { ...risk, level: 'middling' } }, 'risk.level'],
    [{ signed: [{ ...signature, shelfItemId: 'gone' }] }, 'signed.0.shelfItemId'],
    [{ signed: [{ ...signature, by: '' }] }, 'signed.0.by'],
    [{ localProtocols: [{ ...protocol, agentId: 'F_PASTE_STD' }] }, 'localProtocols.0.agentId'],
    [{ localProtocols: [protocol], onDate: undefined }, 'onDate'],
    [{ day: { upMinute: 2000, bedMinute: 0, eating: [] } }, 'day.upMinute'],
  ])('names what is wrong in %j', (change, path) => {
    expect(errorOf({ ...input, ...change })).toMatchObject({ code: 'INPUT_INVALID', path });
  });
});
