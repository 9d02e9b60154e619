import { readFileSync } from 'node:fs';
import { describe, expect, it, test } from 'vitest';
import { parseTable } from '../src/actions/parseCsv.ts';
import { runCalculator } from '../src/calculators/calculator.ts';
import { fluorideIntake } from '../src/calculators/regimen/fluorideIntake.ts';
import type { Proposal } from '../src/calculators/regimen/proposalOutput.ts';
import { regimenProposal } from '../src/calculators/regimen/regimenProposal.ts';
import { readVisit } from '../src/cli/readVisit.ts';
import { content } from '../src/content/allContent.ts';
import { demoShelf } from '../src/content/demo/shelf.ts';
import { listPackTraits } from '../src/core/regimen/listPackTraits.ts';
import type { ShelfItem } from '../src/core/regimen/types.ts';
import { readShelfTable } from '../src/core/shelf/table/readShelfTable.ts';
import type { Answer } from '../src/core/visit/answer.ts';
import { assessVisit } from '../src/core/visit/assessVisit.ts';
import { nobody as adult } from './reference/regimen/ruleCases.ts';

const tables = content.regimen;
const SETTING = {
  agents: tables.agents,
  traits: listPackTraits(tables),
  leafletNameOf: () => ({ en: 'Paste', es: 'Pasta' }),
  mayFree: false,
  today: '2026-11-26',
  shelf: [],
};
const HEAD = 'name;kind;form;compound;percent of compound;price;pack size;pack unit;in stock;times;times per;amount;in the pack;lot;packs';
const paste = (cells: Readonly<Record<string, string>> = {}) => {
  const all = { 'percent of compound': '0.32', price: '2.90', 'pack unit': 'g', lot: 'A', packs: '3', ...cells };
  const fixed = { name: 'Paste A', kind: 'F_PASTE_STD', form: 'paste', compound: 'NaF', 'pack size': '100', 'in stock': 'yes' };
  const use = { times: '2', 'times per': 'day', amount: 'a ribbon', 'in the pack': 'none' };
  const row: Readonly<Record<string, string>> = { ...fixed, ...use, ...all };
  return HEAD.split(';')
    .map((column) => row[column] ?? '')
    .join(';');
};
function readCsv(...lines: readonly string[]) {
  const table = parseTable([HEAD, ...lines].join('\n'));
  if ('problem' in table) throw new Error(table.problem.message);
  return readShelfTable(table.lines, SETTING);
}

const child = { ...adult, ageYears: 8, ageMonths: 100, weightKg: 26 };
const itemOf = (id: string): ShelfItem => {
  const item = demoShelf.find((i) => i.id === id);
  if (!item) throw new Error(`no ${id} on the demo shelf`);
  return item;
};
const plain = itemOf('paste-naf-1450');
const proposalFile = (person: object, shelf: readonly object[], kind = 'fluoride-base') => ({
  person,
  needs: [{ kind }],
  shelf,
  jurisdiction: 'UK',
});
function propose(person: object, shelf: readonly object[], kind?: string): Proposal {
  const result = runCalculator(regimenProposal, proposalFile(person, shelf, kind));
  if (!result.ok) throw new Error(JSON.stringify(result.error));
  return result.output as Proposal;
}
const errorOf = (calculator: typeof regimenProposal | typeof fluorideIntake, input: unknown) => {
  const result = runCalculator(calculator as typeof regimenProposal, input);
  return result.ok ? undefined : result.error;
};

interface VisitFile {
  practice: string | object;
  person: { birthDate?: string };
  visit: { answers: Record<string, Answer> };
}
const visitFile = (name: string) => JSON.parse(readFileSync(`examples/${name}.json`, 'utf8')) as VisitFile;
const planOf = (file: VisitFile) => assessVisit(readVisit(file), content);
const practiceWith = (shelf: readonly object[]) => {
  const { practice } = readVisit(visitFile('01-returning-adult'));
  return { ...practice, shelf };
};

describe('unknown strength or unit', () => {
  it('shelf table: a strength that is left out is said to be open, a unit that is none is asked back', () => {
    expect(readCsv(paste({ 'percent of compound': '' })).items[0]?.open.join()).toMatch(/strength not known/);
    expect(readCsv(paste({ 'pack unit': 'oz' })).problems).toMatchObject([{ field: 'pack unit', says: expect.stringContaining('oz') }]);
  });
  it('calculator: the sum is "at least" and names it; the pack asks first', () => {
    const sum = runCalculator(fluorideIntake, { ageYears: 30, weightKg: 60, products: [{ name: 'paste', amountG: 1, perDay: 2 }] });
    expect(sum).toMatchObject({ ok: true, output: { complete: false, unknownSources: ['paste'] } });
    const { percent: _, fluoridePpm: __, label: ___, ...unknown } = plain;
    const { regimens, excluded } = propose(adult, [unknown]);
    expect(regimens.every(({ lines }) => lines.length === 0)).toBe(true);
    expect(excluded).toMatchObject([{ shelfItemId: plain.id, level: 'ask-first', ruleId: 'P06' }]);
  });
  it('visit: the pack is not offered, and why', () => {
    const { percent: _, fluoridePpm: __, label: ___, ...unknown } = plain;
    const { plan } = planOf({ ...visitFile('01-returning-adult'), practice: practiceWith([unknown]) });
    expect(plan.lines.map((l) => l.shelfItemId)).not.toContain(plain.id);
    expect(plan.notOffered.find((n) => n.shelfItemId === plain.id)).toMatchObject({ ruleId: 'P06', level: 'ask-first' });
  });
});

describe('price missing', () => {
  it('shelf table: said to be open', () => expect(readCsv(paste({ price: '' })).items[0]?.open.join()).toMatch(/price not known/));
  it('calculator and visit: the cost is not known, never 0', () => {
    const { priceCents: _, ...free } = plain;
    expect(propose(adult, [free]).regimens[0]).toMatchObject({ monthlyCostCents: null, lines: [{ shelfItemId: plain.id }] });
    const { plan } = planOf({ ...visitFile('01-returning-adult'), practice: practiceWith([free]) });
    expect([plan.lines.map((l) => l.shelfItemId), plan.monthlyCostCents]).toEqual([[plain.id], null]);
  });
});

describe('a weight that cannot be right', () => {
  it('4 kg at 30 years: both calculators ask it back by name', () => {
    expect(errorOf(fluorideIntake, { ageYears: 30, weightKg: 4, products: [] })).toMatchObject({ path: 'weightKg' });
    expect(errorOf(regimenProposal, proposalFile({ ...adult, weightKg: 4 }, [plain]))).toMatchObject({ path: 'person.weightKg' });
  });
  it('visit: asked back, and what hangs on a weight waits', () => {
    const file = visitFile('06-twelve-with-braces');
    file.visit.answers['weight_kg'] = { how: 'asked', value: 4 };
    const it4 = planOf(file);
    expect(it4.weightDoubt).toMatch(/^4 kg does not fit 1\d years: weigh again, or correct the age/);
    expect(it4.safetyUnknown).toContain('weight_kg');
    expect(it4.plan.fluoride.acute.mgPerKg).toBeNull();
  });
});

test('age missing: each asks for it by name', () => {
  const { ageYears: _, ...ageless } = adult;
  expect(errorOf(fluorideIntake, { products: [] })).toMatchObject({ code: 'INPUT_INVALID', path: 'ageYears' });
  expect(errorOf(regimenProposal, proposalFile(ageless, [plain]))).toMatchObject({ code: 'INPUT_INVALID', path: 'person.ageYears' });
  const file = visitFile('01-returning-adult');
  delete file.person.birthDate;
  expect(() => readVisit(file)).toThrow(expect.objectContaining({ path: 'person.birthDate' }));
});

test('two packs of the same lot, and the same pack twice, are asked back by line and field', () => {
  expect(readCsv(paste(), paste()).problems[0]).toMatchObject({ line: 3 });
  expect(errorOf(regimenProposal, proposalFile(adult, [plain, plain]))).toMatchObject({ path: 'shelf.1.id' });
});

test('out of stock: left out with the reason', () => {
  const gone = { ...plain, inStock: false };
  expect(propose(adult, [gone]).excluded).toMatchObject([{ shelfItemId: plain.id, level: 'out-of-stock', because: 'not in stock' }]);
  const { plan } = planOf({ ...visitFile('01-returning-adult'), practice: practiceWith([gone]) });
  expect(plan.lines).toEqual([]);
  expect(plan.unmet.find((u) => u.need === 'fluoride-base')?.because).toBe('Nothing on the shelf meets it.');
});

describe('a safety fact that is missing blocks what depends on it, and is asked', () => {
  test.each([
    ['pregnant', 'varnish-naf-resin', 'professional-fluoride', adult, 'pregnant'],
    ['allergies', 'paste-naf-1450', 'fluoride-base', adult, 'allergies'],
    ['canSpit', 'rinse-naf-005', 'fluoride-extra', child, 'can_spit'],
    ['weightKg', 'xylitol-lozenge', 'sweetener', child, 'weight_kg'],
  ] as const)('%s, for %s', (fact, id, kind, person, question) => {
    const item = demoShelf.find((i) => i.id === id) ?? demoShelf.find((i) => i.agentId === 'XYLITOL' && i.form === 'lozenge');
    if (!item) throw new Error(`no ${id}`);
    expect(propose(person, [item], kind).regimens[0]?.lines.map((l) => l.shelfItemId)).toEqual([item.id]);
    const { regimens, excluded } = propose({ ...person, [fact]: undefined }, [item], kind);
    expect(regimens.every(({ lines }) => lines.length === 0)).toBe(true);
    expect(excluded).toMatchObject([{ shelfItemId: item.id, level: 'ask-first', ask: expect.arrayContaining([question]) }]);
  });

  it('visit: not asked, declined and not known are no answer', () => {
    for (const how of ['not-asked', 'declined', 'does-not-know'] as const) {
      const file = visitFile('01-returning-adult');
      file.visit.answers['allergies'] = { how };
      const { plan, safetyUnknown } = planOf(file);
      expect(safetyUnknown).toContain('allergies');
      expect(plan.lines).toEqual([]);
      expect(plan.notOffered.flatMap((n) => n.ask ?? [])).toContain('allergies');
    }
  });
});
