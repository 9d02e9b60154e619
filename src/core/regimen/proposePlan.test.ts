import { describe, expect, it, test } from 'vitest';
import { demoShelf } from '../../content/demo/shelf.ts';
import { regimenTables } from '../../content/regimenTables.ts';
import { findNeeds } from './findNeeds.ts';
import type { OwnLegalStatuses } from './legalStatus.ts';
import type { LocalProtocol } from './local/localProtocol.ts';
import { proposePlan } from './proposePlan.ts';
import { saySigner } from './saySigner.ts';
import type { PlanSettings } from './tables.ts';
import type { ConfirmedLevel, Jurisdiction, Need, PersonFacts, Plan, RefusedItem, ShelfItem, SignedItem } from './types.ts';

const OWN_LEGAL: OwnLegalStatuses = {
  F_RINSE_02: 'prescription',
  F_GEL_SNF2: 'over-the-counter',
  F_SUPP: 'prescription',
  CHX_VARNISH: 'dentist',
  PVPI: 'dentist',
};

const grownUp: PersonFacts = {
  ageYears: 45,
  ageMonths: 45 * 12,
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
const child = (ageYears: number, facts: Partial<PersonFacts> = {}): PersonFacts => ({
  ...grownUp,
  ageYears,
  ageMonths: ageYears * 12,
  weightKg: 4 + 3 * ageYears,
  canSpit: ageYears >= 6,
  ...facts,
});

interface Case {
  readonly facts?: PersonFacts;
  readonly level?: ConfirmedLevel['level'] | undefined;
  readonly protocol?: string | undefined;
  readonly jurisdiction?: Jurisdiction;
  readonly legal?: OwnLegalStatuses;
  readonly shelf?: readonly ShelfItem[];
  readonly signed?: readonly SignedItem[];
  readonly refused?: readonly RefusedItem[];
  readonly verdict?: 'above' | 'below' | 'too-close';
  readonly own?: LocalProtocol;
  readonly needs?: readonly Need[];
  readonly tables?: typeof regimenTables;
  readonly settings?: Partial<PlanSettings>;
}
function planFor(c: Case = {}): Plan {
  const {
    facts = grownUp,
    tables = regimenTables,
    protocol = 'four_level_6plus_2019',
    jurisdiction = 'UK',
    shelf = demoShelf,
    signed = [],
  } = c;
  const level = 'level' in c ? c.level : 'high';
  const confirmed = level && { level, protocol, edition: '1', by: 'Ines Marrow', at: '2026-11-25T10:00:00Z' };
  const reading = { counted: true, verdict: c.verdict ?? 'above' };
  const needs = c.needs ?? findNeeds({ facts, confirmed, result: null, findings: [], reading, jurisdiction, tables });
  return proposePlan({
    facts,
    needs,
    shelf,
    signed,
    refused: c.refused,
    confirmed,
    // No source tells how these may be given in the United Kingdom; the practice has said it.
    settings: { jurisdiction, legal: c.legal ?? OWN_LEGAL, localProtocols: c.own && [c.own], ...c.settings },
    tables,
  });
}
const lineOf = (plan: Plan, id: string) => plan.lines.find((l) => l.shelfItemId === id);
const reasonsFor = (plan: Plan, id: string) => plan.notOffered.filter((x) => x.shelfItemId === id).map((x) => x.ruleId);
const sign = (shelfItemId: string, ruleId?: string, reason = 'weighed with the patient'): SignedItem => ({
  shelfItemId,
  by: 'Dr. Ahlgren',
  at: '2026-11-25T11:00:00Z',
  ...(ruleId === undefined ? {} : { override: { ruleId, reason } }),
});
const itemOf = (id: string): ShelfItem => {
  const item = demoShelf.find((i) => i.id === id);
  if (!item) throw new Error(`${id} is not on the demo shelf`);
  return item;
};
const rinse = (rest: Partial<ShelfItem>): ShelfItem => ({
  ...itemOf('rinse-chlorhexidine-plain'),
  id: 'own',
  name: 'own rinse',
  traits: [],
  pH: 10,
  ...rest,
});
const bleach = rinse({ id: 'bleach', agentId: 'NAOCL', percent: 0.2, release: 'dentist' });
const ownProtocol: LocalProtocol = {
  id: 'own',
  name: 'Own rinse',
  author: 'Dr. Ahlgren',
  date: '2026-01-05',
  agentId: 'NAOCL',
  percentAtMost: 0.25,
  timesPerWeekAtMost: 14,
  courseDaysAtMost: 90,
  levels: ['low', 'moderate', 'high', 'extreme'],
  needs: ['antimicrobial'],
  // For everybody, so that the safety rules alone keep it back.
  fromAgeYears: 0,
  exclusions: { conditions: [], medicines: [], allergies: [] },
};

describe('a grown-up at level high', () => {
  const plan = planFor();

  it('gets one pack for each need, with what waits for a signature', () => {
    expect(plan.lines.map((l) => [l.shelfItemId, l.state])).toEqual([
      ['paste-naf-1450', 'proposed'],
      ['paste-naf-5000', 'waiting-for-signature'],
      ['varnish-naf-resin', 'proposed'],
      ['gum-xylitol', 'proposed'],
      ['rinse-essential-oils', 'proposed'],
    ]);
  });

  it('names what could stand in the place of a line, two at most', () => {
    expect(plan.alternatives.map((a) => [a.insteadOf, a.line.shelfItemId])).toEqual([
      ['paste-naf-1450', 'paste-naf-1450-fruit'],
      ['paste-naf-1450', 'paste-naf-1000'],
      ['paste-naf-5000', 'paste-naf-2800'],
      ['paste-naf-5000', 'rinse-naf-02'],
      ['varnish-naf-resin', 'varnish-naf-plain'],
      ['varnish-naf-resin', 'gel-apf'],
      ['gum-xylitol', 'lozenge-xylitol'],
      ['gum-xylitol', 'gum-polyol'],
    ]);
  });

  it('lets the order of the practice decide between packs that fit alike', () => {
    const gum: ShelfItem = { ...itemOf('gum-xylitol'), id: 'gum', use: { timesPerDay: 3, amount: '1 piece', amountG: 2 }, priceCents: 900 };
    const cheap: ShelfItem = { ...gum, id: 'cheap', use: { timesPerDay: 5, amount: '1 piece', amountG: 1 }, priceCents: 100 };
    const needs: readonly Need[] = [{ kind: 'sweetener', state: 'needed', because: 'asked', sources: [] }];
    const first = (settings: Partial<PlanSettings>) => planFor({ shelf: [cheap, gum], needs, settings }).lines[0]?.shelfItemId;
    expect([first({}), first({ regimenOrder: ['cost'] }), first({ regimenOrder: ['tasks'] })]).toEqual(['gum', 'cheap', 'gum']);
  });

  it('says why, counts tasks and cost of what may be used now, and takes recall from the table of the list', () => {
    expect(lineOf(plan, 'paste-naf-5000')?.because).toEqual([
      'Natural teeth: fluoride paste twice a day at every level.',
      'Confirmed level high: added by Four-level care rows, 2007 and 2019.',
    ]);
    expect(lineOf(plan, 'paste-naf-1450')?.because).toContain('Until the high-fluoride paste is signed: then that one takes its place.');
    expect(plan.tasksPerDay).toBe(7);
    // 60 of 100 g at 290, 90 of 90 pieces at 940, 1,200 of 500 mL at 510 cents.
    expect(plan.monthlyCostCents).toBe(174 + 940 + 1224);
    expect(plan.recall).toMatchObject({ fromMonths: 3, toMonths: 4, source: { status: 'memory' } });
    expect(plan.bitewings).toBeNull();
    expect(plan.bitewingsOldTable).toMatchObject({ fromMonths: 6, toMonths: 18, label: '2012 edition, replaced 2026' });
  });

  it('drops the ordinary paste once the high-fluoride paste is signed', () => {
    const signed = planFor({ signed: [sign('paste-naf-5000')] });
    expect(signed.lines.map((l) => [l.shelfItemId, l.state])).toContainEqual(['paste-naf-5000', 'signed']);
    expect(lineOf(signed, 'paste-naf-1450')).toBeUndefined();
    expect(lineOf(signed, 'paste-naf-5000')?.signedBy).toEqual({ name: 'Dr. Ahlgren', at: '2026-11-25T11:00:00Z' });
  });

  it('prints the name of a standing order beside the signature', () => {
    const order = { name: 'High-fluoride order', date: '2026-02-01' };
    const signed = planFor({ signed: [{ ...sign('paste-naf-5000'), standingOrder: order }] });
    const signedBy = lineOf(signed, 'paste-naf-5000')?.signedBy;
    expect(signedBy).toEqual({ name: 'Dr. Ahlgren', at: '2026-11-25T11:00:00Z', standingOrder: order });
    expect(signedBy && saySigner(signedBy)).toBe('Dr. Ahlgren, on the standing order "High-fluoride order" of 2026-02-01');
  });

  it('does not propose again what a dentist did not release, and says who, when and why', () => {
    const refusal = { shelfItemId: 'paste-naf-5000', by: 'Dr. Ahlgren', at: '2026-11-25T11:00:00Z', reason: 'kidney disease' };
    const refused = planFor({ refused: [refusal] });
    const shown = [...refused.lines, ...refused.alternatives.map((a) => a.line)].map((l) => l.shelfItemId);
    expect(shown).not.toContain('paste-naf-5000');
    expect(refused.notOffered.map((e) => e.shelfItemId)).not.toContain('paste-naf-5000');
    expect(refused.refused).toEqual([{ ...refusal, name: 'Paste, sodium fluoride 1.1 % (5,000 ppm F)' }]);
    const signed = planFor({ refused: [refusal], signed: [sign('paste-naf-5000')] });
    expect(lineOf(signed, 'paste-naf-5000')?.state).toBe('signed');
    expect(signed.refused).toEqual([]);
  });
});

describe('the reading', () => {
  it.each(['above', 'below', 'too-close'] as const)('%s: changes nothing that needs a signature', (verdict) => {
    const waiting = planFor({ verdict }).lines.filter((l) => l.state !== 'proposed');
    expect(waiting).toEqual(planFor().lines.filter((l) => l.state !== 'proposed'));
  });

  it('decides only on the antimicrobial', () => {
    const ids = (verdict: 'above' | 'below') => planFor({ verdict }).lines.map((l) => l.shelfItemId);
    expect(ids('above').filter((id) => !ids('below').includes(id))).toEqual(['rinse-essential-oils']);
  });

  it('brings no antimicrobial that has to be signed, nor one that meets an interaction', () => {
    const shelf = [
      ...demoShelf.filter((i) => i.id !== 'rinse-essential-oils'),
      { ...itemOf('rinse-essential-oils'), release: 'dentist' as const },
    ];
    expect(planFor({ shelf }).lines.some((l) => l.meets.includes('antimicrobial'))).toBe(false);
  });
});

describe('an antimicrobial that the reading brings', () => {
  const oils = itemOf('rinse-essential-oils');
  const isIn = (c: Case) => planFor(c).lines.some((l) => l.shelfItemId === oils.id);

  it('has no interaction with anything in the plan, not even a warning', () => {
    const warn = {
      id: 'X1',
      agentIds: [oils.agentId],
      withAgentIds: ['F_PASTE_5000'],
      apart: 'session',
      level: 'warn',
      because: '',
      action: 'x',
    } as const;
    const interactions = [...regimenTables.interactions, { ...warn, source: { key: 'project', status: 'proposal' } as const }];
    expect(isIn({})).toBe(true);
    expect(isIn({ tables: { ...regimenTables, interactions } })).toBe(false);
  });

  it('holds no fluoride, so that it moves no sum', () => {
    expect(isIn({ shelf: [...demoShelf.filter((i) => i !== oils), { ...oils, fluoridePpm: 226 }] })).toBe(false);
  });
});

describe('contraindicated or over-dose: never proposed', () => {
  it('keeps casein paste from a milk allergy, and says so', () => {
    const plan = planFor({ level: 'extreme', facts: { ...grownUp, allergies: ['milk-protein'] } });
    expect(lineOf(plan, 'paste-casein')).toBeUndefined();
    expect(plan.notOffered.find((x) => x.shelfItemId === 'paste-casein')).toMatchObject({
      ruleId: 'C17',
      level: 'stop',
      because: 'milk allergy: it holds milk protein',
      instead: 'Not lactose intolerance alone: that is no bar.',
      source: { status: 'read' },
    });
    expect(lineOf(plan, 'paste-hydroxyapatite')?.state).toBe('proposed');
  });

  it('lets a dentist lift a stop with a reason, and keeps that on the line', () => {
    const facts = { ...grownUp, conditions: ['asthma'] };
    const id = 'varnish-naf-plain';
    expect(reasonsFor(planFor({ facts }), id)).toEqual(['C02']);
    const lifted = planFor({ facts, signed: [sign(id, 'C02')] });
    expect(lineOf(lifted, id)?.state).toBe('signed');
    expect(lineOf(lifted, id)?.warnings[0]?.text).toBe(
      'Lifted by Dr. Ahlgren, weighed with the patient: asthma: the label of fluoride varnish names asthma.',
    );
  });

  it.each([
    ['without an override', sign('varnish-naf-plain')],
    ['for another rule', sign('varnish-naf-plain', 'C03')],
    ['without a reason', sign('varnish-naf-plain', 'C02', ' ')],
    ['by nobody', { ...sign('varnish-naf-plain', 'C02'), by: '' }],
    ['under a standing order', { ...sign('varnish-naf-plain', 'C02'), standingOrder: { name: 'Varnish', date: '2026-01-01' } }],
  ])('a stop stays %s', (_how, signed) => {
    const plan = planFor({ facts: { ...grownUp, conditions: ['asthma'] }, signed: [signed] });
    expect(lineOf(plan, 'varnish-naf-plain')).toBeUndefined();
    expect(reasonsFor(plan, 'varnish-naf-plain')).toEqual(['C02']);
  });

  it('stays below the upper level of fluoride, lower bound as it is', () => {
    const plan = planFor({ facts: child(8), protocol: 'child_list_6plus', jurisdiction: 'US' });
    expect(plan.notOffered.find((x) => x.shelfItemId === 'paste-naf-5000')).toMatchObject({
      ruleId: 'P10',
      because: 'too much fluoride a day: at least 3.6 mg a day with it, above 2.2 mg (Upper intake level, US 1997)',
    });
    expect(plan.fluoride.mgPerDay).toBeLessThan(2);
  });

  it('counts what is put on at one visit against the emergency dose', () => {
    const tray: ShelfItem = { ...itemOf('gel-apf'), use: { timesPerDay: 0, amount: 'too much', amountG: 9, atVisit: true } };
    const rules = (weightKg: number) => reasonsFor(planFor({ facts: child(6, { weightKg }), shelf: [tray] }), 'gel-apf');
    expect(rules(22)).toEqual(['P14']);
    expect(rules(22.2)).toEqual([]);
  });

  it('names a signed pack that stays out, also where nobody needs it', () => {
    const plan = planFor({ facts: child(8), level: 'low', signed: [sign('paste-naf-5000')] });
    expect(lineOf(plan, 'paste-naf-5000')).toBeUndefined();
    expect(reasonsFor(plan, 'paste-naf-5000')).toEqual(['C05']);
  });

  it('keeps supplements and the like out unless a dentist chose them', () => {
    const drops: ShelfItem = {
      ...itemOf('rinse-naf-005'),
      id: 'drops',
      agentId: 'F_SUPP',
      form: 'drops',
      fluoridePpm: 2_500,
      use: { timesPerDay: 1, amount: '0.1 mL', amountMl: 0.1 },
    };
    const needs: readonly Need[] = [{ kind: 'fluoride-extra', state: 'needed', because: 'asked', sources: [] }];
    const facts = { ...grownUp, waterFluorideMgPerL: 0.2, waterFluoridated: false, otherFluoride: [], strongPasteInUse: false };
    const plan = planFor({ facts, shelf: [drops], needs });
    expect([plan.lines, reasonsFor(plan, 'drops')]).toEqual([[], ['P02']]);
    expect(planFor({ facts, shelf: [drops], needs, signed: [sign('drops')] }).lines).toHaveLength(1);
  });

  it('asks a dentist about a stannous paste under 12 in the US and where the place is not known', () => {
    const paste: ShelfItem = { ...itemOf('paste-naf-1450'), compound: 'SnF2', percent: 0.454 };
    const state = (jurisdiction: Jurisdiction) => planFor({ facts: child(11), level: 'low', shelf: [paste], jurisdiction }).lines[0]?.state;
    expect([state('US'), state('unknown'), state('UK')]).toEqual(['waiting-for-signature', 'waiting-for-signature', 'proposed']);
  });

  it('offers one high-fluoride home product at a time, whatever is signed', () => {
    const plan = planFor({ signed: [sign('paste-naf-2800'), sign('paste-naf-5000'), sign('gel-snf2')] });
    expect(plan.lines.filter((l) => /2800|5000|snf2/.test(l.shelfItemId)).map((l) => l.shelfItemId)).toEqual(['paste-naf-2800']);
    expect(reasonsFor(plan, 'paste-naf-5000')).toEqual(['I13']);
  });
});

describe('chlorhexidine and hypochlorite', () => {
  it('never proposes chlorhexidine, and takes it only from a dentist', () => {
    const id = 'rinse-chlorhexidine-plain';
    expect(lineOf(planFor(), id)).toBeUndefined();
    expect(planFor().notOffered.find((x) => x.shelfItemId === id)).toMatchObject({ ruleId: 'P02', level: 'caution' });
    expect(lineOf(planFor({ signed: [sign(id)] }), id)?.state).toBe('signed');
    expect(lineOf(planFor({ signed: [sign(id)], verdict: 'below', level: 'low' }), id)?.state).toBe('signed');
  });

  it('keeps hypochlorite off without a written protocol, signed or not', () => {
    const shelf = [...demoShelf, bleach];
    expect(lineOf(planFor({ shelf, signed: [sign('bleach')] }), 'bleach')).toBeUndefined();
    expect(reasonsFor(planFor({ shelf, signed: [sign('bleach', 'P01')] }), 'bleach')).toEqual(['P01']);
    const plan = planFor({ shelf, signed: [sign('bleach')], own: ownProtocol });
    expect(lineOf(plan, 'bleach')?.state).toBe('signed');
    expect(plan.cautions.map((c) => c.id)).toContain('never-mix-bleach');
    expect(lineOf(plan, 'bleach')?.byProtocol).toEqual({ name: 'Own rinse', author: 'Dr. Ahlgren', date: '2026-01-05' });
    const unsigned = planFor({ shelf, own: ownProtocol });
    expect(lineOf(unsigned, 'bleach')).toBeUndefined();
    expect(unsigned.byProtocol?.map((p) => p.shelfItemId)).toEqual(['bleach']);
    expect(plan.byProtocol).toEqual([]);
    expect(planFor({ shelf }).byProtocol).toEqual([]);
  });

  it("lists what a dentist may choose by the practice's own protocol whatever the reading, and not for whom it is not", () => {
    const listed = (rest: Case) => planFor({ shelf: [bleach], own: ownProtocol, ...rest }).byProtocol?.length;
    expect([listed({ verdict: 'below' }), listed({ verdict: 'too-close' }), listed({ verdict: 'above' })]).toEqual([1, 1, 1]);
    expect(listed({ facts: { ...grownUp, conditions: ['asthma'] } })).toBe(0);
    expect(listed({ own: { ...ownProtocol, levels: ['low'] } })).toBe(0);
    expect(listed({ shelf: [{ ...bleach, inStock: false }] })).toBe(0);
    expect(listed({ signed: [sign('rinse-chlorhexidine-plain')], shelf: [bleach, itemOf('rinse-chlorhexidine-plain')] })).toBe(0);
  });

  it.each([
    ['by nobody', { ...ownProtocol, author: ' ' }],
    ['without a date', { ...ownProtocol, date: '' }],
    ['stronger than 0.25 %', { ...ownProtocol, percentAtMost: 0.5 }],
  ])('a protocol %s does not count', (_how, own) => {
    expect(reasonsFor(planFor({ shelf: [bleach], signed: [sign('bleach')], own }), 'bleach')).toContain('P01');
  });

  it.each([
    ['under 18', child(17)],
    ['pregnant', { ...grownUp, pregnant: true }],
    ['breast-feeding', { ...grownUp, breastfeeding: true }],
    ['asthma', { ...grownUp, conditions: ['asthma'] }],
    ['eating disorder', { ...grownUp, conditions: ['eating-disorder'] }],
    ['a young child at home', { ...grownUp, youngChildAtHome: true }],
  ])('never with %s, whoever signs', (_who, facts) => {
    const plan = planFor({ facts, shelf: [bleach], signed: [sign('bleach', 'C16')], own: ownProtocol });
    expect(plan.lines).toEqual([]);
    expect(reasonsFor(plan, 'bleach')).toEqual(['C16']);
  });

  it('never has both in one plan, nor bleach with acid', () => {
    const signed = [sign('rinse-chlorhexidine-plain'), sign('bleach'), sign('gel-apf')];
    const both = planFor({ shelf: [...demoShelf, bleach], signed, own: ownProtocol });
    expect(lineOf(both, 'bleach')).toBeUndefined();
    const acid = planFor({ shelf: [itemOf('gel-apf'), bleach], signed, own: ownProtocol });
    expect(acid.lines.map((l) => l.shelfItemId)).toEqual(['gel-apf']);
    expect(reasonsFor(acid, 'bleach')).toEqual(['I03']);
    const unknownPh = planFor({
      shelf: [{ ...itemOf('rinse-naf-02'), pH: undefined }, bleach],
      signed: [sign('rinse-naf-02'), sign('bleach')],
      own: ownProtocol,
    });
    expect(reasonsFor(unknownPh, 'bleach')).toEqual(['I03']);
  });
});

describe('gum and sweeteners', () => {
  const gums = [itemOf('gum-xylitol'), itemOf('gum-polyol')];
  const offered = (facts: PersonFacts, signed: readonly SignedItem[] = []) =>
    planFor({ facts, level: 'moderate', shelf: gums, signed }).lines.map((l) => l.shelfItemId);

  it('is for those of 5 and over', () => {
    const need: readonly Need[] = [{ kind: 'sweetener', state: 'needed', because: 'asked', sources: [] }];
    const lines = (facts: PersonFacts) => planFor({ facts, shelf: gums, needs: need }).lines.map((l) => l.shelfItemId);
    expect(lines(child(4))).toEqual([]);
    expect(lines(child(5))).not.toEqual([]);
  });

  it.each([
    ['dentures', { dentures: true }],
    ['jaw pain', { jawPain: true }],
    ['jaw joint pain', { conditions: ['jaw-joint-pain'] }],
    ['trouble swallowing', { conditions: ['swallowing-difficulty'] }],
    ['dentures not known', { dentures: undefined }],
  ])('is never with %s, whoever signs', (_why, facts) => {
    expect(offered({ ...grownUp, ...facts }, [sign('gum-xylitol', 'C28'), sign('gum-xylitol', 'C28b')])).toEqual([]);
  });

  it('is for nobody under 5, whatever it holds', () => {
    const needs: readonly Need[] = [{ kind: 'calcium-phosphate', state: 'needed', because: 'asked', sources: [] }];
    const gum: ShelfItem = { ...itemOf('paste-casein'), form: 'gum' };
    expect(reasonsFor(planFor({ facts: child(4), shelf: [gum], needs }), gum.id)).toEqual(['C28b']);
    expect(planFor({ facts: child(5), shelf: [gum], needs }).lines).toHaveLength(1);
  });

  it('is with braces only by choice', () => {
    const facts = { ...grownUp, braces: true };
    const plan = planFor({ facts, level: 'moderate', shelf: gums });
    expect(plan.lines.map((l) => l.state)).toEqual(['waiting-for-signature']);
    expect(planFor({ facts, level: 'moderate', shelf: gums, signed: [sign('gum-xylitol')] }).lines[0]?.state).toBe('signed');
  });

  it('never holds aspartame in phenylketonuria', () => {
    const facts = { ...grownUp, conditions: ['phenylketonuria'] };
    expect(offered(facts)).toEqual(['gum-xylitol']);
    expect(planFor({ facts, level: 'moderate', shelf: [itemOf('gum-polyol')], signed: [sign('gum-polyol', 'C30')] }).lines).toEqual([]);
  });

  it('counts the xylitol of a child by its measured weight', () => {
    const lozenge = [itemOf('lozenge-xylitol')];
    const lines = (weightKg: number | undefined) => planFor({ facts: child(6, { weightKg }), level: 'moderate', shelf: lozenge });
    expect(lines(undefined).notOffered[0]).toMatchObject({ ruleId: 'P12', level: 'ask-first', ask: ['weight_kg'] });
    expect(lines(12).lines).toHaveLength(1);
    expect(reasonsFor(lines(9.9), 'lozenge-xylitol')).toEqual(['P12']);
  });

  it('warns of dogs, also when it is not known whether there is one', () => {
    for (const dogAtHome of [true, undefined]) {
      const plan = planFor({ facts: { ...grownUp, dogAtHome }, level: 'moderate', shelf: gums });
      expect(plan.lines[0]?.warnings.map((w) => w.ruleId)).toEqual(['C19']);
    }
    expect(planFor({ level: 'moderate', shelf: gums }).cautions.map((c) => c.id)).toContain('xylitol-dogs');
  });
});

describe('unknown is not no', () => {
  it.each([
    ['allergies', 'paste-naf-1450', ['allergies']],
    ['canSpit', 'paste-naf-5000', ['can_spit', 'conditions']],
    ['conditions', 'varnish-naf-plain', ['conditions', 'private_conditions']],
    ['pregnant', 'paste-naf-5000', ['pregnant']],
    ['dentures', 'gum-xylitol', ['appliance']],
  ] as const)('%s not known: %s asks first', (fact, id, ask) => {
    const plan = planFor({ facts: { ...grownUp, [fact]: undefined } });
    expect(lineOf(plan, id)).toBeUndefined();
    expect(plan.notOffered.find((x) => x.shelfItemId === id)).toMatchObject({ level: 'ask-first', ask });
  });

  it('asks before a pack whose ingredients or strength are not noted, or whose kind it does not know', () => {
    const rule = (item: ShelfItem) => planFor({ shelf: [item] }).notOffered[0];
    const paste = itemOf('paste-naf-1450');
    expect(rule({ ...paste, traits: undefined })).toMatchObject({ ruleId: 'P11', level: 'ask-first' });
    expect(rule({ ...paste, percent: undefined })).toMatchObject({ ruleId: 'P06', level: 'ask-first' });
    expect(rule({ ...paste, percent: 1.1 })).toMatchObject({ ruleId: 'P06', level: 'ask-first' });
    const need: readonly Need[] = [{ kind: 'fluoride-base', state: 'needed', because: 'asked', sources: [] }];
    expect(planFor({ shelf: [{ ...paste, agentId: 'NEW' }], needs: need }).notOffered[0]).toMatchObject({
      ruleId: 'P05',
      level: 'ask-first',
    });
  });

  it('proposes no more than a smear under 2 without a weight, and under 6 months', () => {
    const baby = (months: number, weightKg?: number) =>
      planFor({ facts: child(Math.floor(months / 12), { ageMonths: months, weightKg }), protocol: 'four_level_0_5_2010' });
    for (const plan of [baby(23), baby(5, 7), baby(5)]) {
      expect(plan.lines.map((l) => [l.shelfItemId, l.use.amountG, l.amountKind])).toEqual([['paste-naf-1000', 0.1, 'smear']]);
    }
    expect(baby(23, 11).lines.map((l) => l.shelfItemId)).toContain('varnish-naf-resin');
    expect(baby(24).lines.map((l) => l.shelfItemId)).toContain('varnish-naf-resin');
    expect(baby(23).notOffered.find((x) => x.shelfItemId === 'varnish-naf-plain')).toMatchObject({ ruleId: 'P09', ask: ['weight_kg'] });
  });

  it('gives the fluoride as a lower bound until the water and other fluoride at home are known', () => {
    const unknown = planFor({ level: 'low' });
    expect(unknown.fluorideSentence).toBe(
      'At least 0.0041 mg/kg a day from paste (water, other fluoride at home and varnish at the practice not known)',
    );
    expect(unknown.fluoride.limits.every((l) => l.share === null)).toBe(true);
    const none = { ...grownUp, otherFluoride: [], varnishDaysPerYear: 0 };
    const half = planFor({ level: 'low', facts: { ...none, waterFluorideMgPerL: 0.7 } });
    expect(half.fluorideSentence).toBe('At least 0.0041 mg/kg a day from paste (amount of water drunk not known)');
    const water = { waterFluorideMgPerL: 0.7, waterLitresPerDay: 1.5 };
    const whole = planFor({ level: 'low', facts: { ...none, ...water } });
    expect(whole.fluorideSentence).toBe('0.019 mg/kg a day from paste and water');
    expect(whole.fluoride.complete).toBe(true);
    const salted = planFor({ level: 'low', facts: { ...none, ...water, otherFluoride: ['fluoridated-salt'] } });
    expect(salted.fluorideSentence).toBe('At least 0.019 mg/kg a day from paste and water (salt with fluoride not known)');
    expect(salted.fluoride.complete).toBe(false);
    const light = planFor({ level: 'low', facts: { ...grownUp, weightKg: undefined } });
    expect(light.fluorideSentence).toContain('weight assumed 46.3 kg');
  });

  it('says what is open while no level is confirmed, and proposes what holds at every level', () => {
    const plan = planFor({ level: undefined });
    expect(plan.lines.map((l) => l.shelfItemId)).toEqual(['paste-naf-1450']);
    expect(plan.unmet).toContainEqual({ need: 'fluoride-extra', because: 'Level not confirmed yet.' });
    expect(plan.recall).toBeNull();
  });
});

describe('release', () => {
  it('holds prescription strength back even where the shelf says anyone', () => {
    const shelf = demoShelf.map((i) => ({ ...i, release: 'anyone' as const }));
    expect(planFor({ shelf }).lines.find((l) => l.shelfItemId === 'paste-naf-5000')?.state).toBe('waiting-for-signature');
  });

  it('makes a caution wait, with the check on the line', () => {
    const plan = planFor({ facts: { ...grownUp, pregnant: true }, shelf: [itemOf('varnish-naf-resin')] });
    expect(plan.lines[0]).toMatchObject({ state: 'waiting-for-signature' });
    expect(plan.lines[0]?.warnings[0]?.text).toBe(
      'Check and record: pregnancy: this varnish holds alcohol. The label advises against it; the dentist decides.',
    );
  });

  it('takes a pack without a check before one with', () => {
    expect(planFor({ facts: { ...grownUp, pregnant: true } }).lines.map((l) => l.shelfItemId)).toContain('varnish-naf-plain');
  });

  it('ignores a signature for what is not on the shelf, and never proposes what is out of stock', () => {
    const shelf = demoShelf.map((i) => (i.id === 'paste-naf-1450' ? { ...i, inStock: false } : i));
    const plan = planFor({ shelf, signed: [sign('something-else')] });
    expect(plan.lines.map((l) => l.shelfItemId)).toContain('paste-naf-1450-fruit');
    expect(plan.lines.map((l) => l.shelfItemId)).not.toContain('something-else');
  });
});

describe('what is said beside a line', () => {
  it('tells to lock a large pack away where a young child lives, or where that is not known', () => {
    const warned = (youngChildAtHome: boolean | undefined) =>
      lineOf(planFor({ facts: { ...grownUp, youngChildAtHome } }), 'paste-naf-5000')?.warnings.some((w) => w.ruleId === 'P08');
    expect([warned(true), warned(undefined), warned(false)]).toEqual([true, true, false]);
    expect(lineOf(planFor({ facts: { ...grownUp, youngChildAtHome: true } }), 'paste-naf-1000')).toBeUndefined();
  });

  it('keeps high-fluoride paste off the day of a varnish, and shows the label on other fluoride', () => {
    const rules = lineOf(planFor(), 'paste-naf-5000')?.warnings.map((w) => w.ruleId);
    expect(rules).toEqual(['I06', 'I07']);
  });

  it('lists the cautions that a leaflet prints, those for small children only for them', () => {
    const ids = (facts: PersonFacts) => planFor({ facts, level: 'low' }).cautions.map((c) => c.id);
    expect(ids(child(6))).toContain('adult-helps');
    expect(ids(child(7))).not.toContain('adult-helps');
    expect(ids(grownUp).slice(0, 2)).toEqual(['swallowed-call-now', 'lock-away']);
    expect(planFor({ shelf: [] }).cautions).toEqual([]);
  });
});

describe('amounts for the age', () => {
  test.each([
    [2, 'smear', 0.1],
    [3, 'pea', 0.25],
    [6, 'pea', 0.25],
    [7, 'ribbon', 1],
  ])('at %s years', (age, kind, grams) => {
    const paste = planFor({ facts: child(age), protocol: age < 6 ? 'four_level_0_5_2010' : undefined, level: 'low' }).lines[0];
    expect([paste?.amountKind, paste?.use.amountG]).toEqual([kind, grams]);
  });

  test.each([
    [5, 0.25],
    [6, 0.4],
    [12, 0.75],
  ])('varnish at %s years', (age, mL) => {
    const plan = planFor({ facts: child(age), level: 'high', protocol: age < 6 ? 'four_level_0_5_2010' : undefined });
    expect(plan.lines.find((l) => l.shelfItemId.startsWith('varnish'))?.use.amountMl).toBe(mL);
  });

  it('tells the waiting time of the place', () => {
    const note = (jurisdiction: Jurisdiction) =>
      planFor({ level: 'moderate', jurisdiction, shelf: [itemOf('rinse-naf-005')] }).lines[0]?.amountNote;
    expect([note('US'), note('UK'), note('unknown')].map((t) => /\d+/.exec(t ?? '')?.[0])).toEqual(['30', '15', '30']);
  });
});

describe('food', () => {
  const allowed = (facts: Partial<PersonFacts>) => planFor({ facts: { ...grownUp, ...facts } }).diet;

  it.each([
    ['insulin', { medicines: ['insulin'] }],
    ['another glucose-lowering medicine', { medicines: ['other-glucose-lowering'] }],
    ['eating disorder', { conditions: ['eating-disorder'] }],
    ['underweight', { conditions: ['underweight'] }],
    ['sickness of pregnancy', { conditions: ['pregnancy-sickness'] }],
    ['tube or supplement feeding', { conditions: ['tube-or-supplement-feeding'] }],
  ])('is never limited with %s', (_why, facts) => {
    expect(allowed(facts).allowed).toBe('after-only');
  });

  it.each(['medicines', 'conditions', 'allergies', 'pregnant', 'canSpit'] as const)('is not limited while %s is not known', (fact) => {
    expect(allowed({ [fact]: undefined })).toMatchObject({ allowed: 'after-only', because: 'the safety check is not answered yet' });
    expect(allowed({ [fact]: undefined }).ask.length).toBeGreaterThan(0);
  });

  it('counts a medicine of unknown class, and the missing weight of a child, as not known', () => {
    expect(allowed({ medicines: ['other'] }).allowed).toBe('after-only');
    expect(planFor({ facts: child(10, { weightKg: undefined }) }).diet.ask).toEqual(['weight_kg']);
  });

  it('is limited to the sweet bottle under 3, and free otherwise', () => {
    expect(planFor({ facts: child(2) }).diet.allowed).toBe('sweet-bottle-only');
    expect(planFor({ facts: child(3) }).diet.allowed).toBe('any');
    expect(allowed({}).allowed).toBe('any');
  });

  it('marks a private reason', () => {
    expect(allowed({ conditions: ['eating-disorder'] }).private).toBe(true);
    expect(allowed({ medicines: ['insulin'] }).private).toBe(false);
  });
});

test('private reasons are marked, so that they can be hidden', () => {
  const plan = planFor({ facts: { ...grownUp, conditions: ['alcohol-use-or-recovery'] } });
  expect(plan.notOffered.find((x) => x.shelfItemId === 'rinse-chlorhexidine-alcohol')).toMatchObject({ ruleId: 'C20', private: true });
});

test('bitewings follow the practice’s own setting, and there are none without teeth', () => {
  const needs = findNeeds({ facts: grownUp, result: null, findings: [], jurisdiction: 'UK', tables: regimenTables });
  const confirmed: ConfirmedLevel = { level: 'low', protocol: 'four_level_6plus_2019', edition: '1', by: 'x', at: 'x' };
  const settings = { jurisdiction: 'UK', bitewingMonths: { low: [24, 24], moderate: [12, 18], high: [6, 12], extreme: [6, 6] } } as const;
  const input = { facts: grownUp, needs, shelf: demoShelf, signed: [], confirmed, settings, tables: regimenTables };
  expect(proposePlan(input).bitewings).toEqual({ fromMonths: 24, toMonths: 24, basis: 'practice-setting' });
  const none = proposePlan({ ...input, mouth: { kind: 'level-does-not-apply', reasons: ['no-natural-teeth'] } });
  expect([none.bitewings, none.bitewingsOldTable]).toEqual([null, null]);
});

test('a lighter regimen says what is left open for fewer tasks apart from what nothing on the shelf meets', () => {
  const dry = { ...grownUp, dryMouth: true };
  const shelf = demoShelf.filter(({ meets }) => !meets.includes('saliva'));
  const { regimens = [] } = planFor({ level: 'extreme', facts: dry, shelf });
  const [best, lighter] = regimens;
  expect(regimens.map((r) => r.isLighter ?? false)).toEqual([false, true, false, false, false].slice(0, regimens.length));
  expect(lighter?.tasksPerDay).toBeLessThanOrEqual((best?.tasksPerDay ?? 0) / 2);
  const open = new Map(lighter?.unmet.map(({ need, because }) => [need, because]));
  expect(open.get('saliva')).toBe('Nothing on the shelf meets it.');
  expect(best?.unmet.map(({ need }) => need)).toContain('saliva');
  const leftOpen = [...open].filter(([, because]) => because === 'Left open for fewer tasks a day.').map(([need]) => need);
  expect(leftOpen.length).toBeGreaterThan(0);
  for (const need of leftOpen) expect(best?.unmet.map((u) => u.need)).not.toContain(need);
});
