/**
 * An independent reading of the safety lines and the listed rules, used to judge plans. It shares no code and no table with the
 * planner: the rules come from `test/reference/regimen/data.json`, their triggers are written again here, by hand, from the wording.
 */
import { readFileSync } from 'node:fs';
import type { Jurisdiction, PersonFacts, Plan, PlanLine, ShelfItem, SignedItem } from '../../src/core/regimen/types.ts';

/** true, false, or not known. */
export type Tri = boolean | undefined;

interface RawRule {
  readonly id: string;
  readonly level: string;
  readonly agentIds: readonly string[];
  readonly traits?: readonly string[];
  readonly withAgentIds?: readonly string[];
  readonly withTraits?: readonly string[];
  readonly minAgeYears?: Readonly<Record<string, number>>;
  readonly appliesOnlyIfTrait?: boolean;
}
const data = JSON.parse(readFileSync(new URL('../reference/regimen/data.json', import.meta.url), 'utf8')) as {
  readonly contraindications: readonly RawRule[];
  readonly interactions: readonly RawRule[];
};
export const rawRules = data.contraindications;

export interface World {
  readonly facts: PersonFacts;
  readonly shelf: readonly ShelfItem[];
  readonly signed: readonly SignedItem[];
  readonly jurisdiction: Jurisdiction;
  readonly legal?: Readonly<Record<string, string>> | undefined;
  readonly hypochloritePercent: number | undefined;
  readonly level: 'low' | 'moderate' | 'high' | 'extreme' | undefined;
}

const or = (...parts: Tri[]): Tri => (parts.includes(true) ? true : parts.includes(undefined) ? undefined : false);
const has = (list: readonly string[] | undefined, ...ids: string[]): Tri =>
  list === undefined ? undefined : ids.some((id) => list.includes(id));
/** "Another medicine" could be any: it proves nothing absent. */
const takes = (f: PersonFacts, ...ids: string[]): Tri =>
  has(f.medicines, ...ids) || (f.medicines?.includes('other') ? undefined : has(f.medicines, ...ids));
const not = (value: Tri): Tri => (value === undefined ? undefined : !value);
const cannotSpit = (f: PersonFacts): Tri => or(not(f.canSpit), has(f.conditions, 'cannot-spit'));
const FIRST_AGE_OF_PREGNANCY = 11;
const expecting = (f: PersonFacts): Tri => (f.ageYears < FIRST_AGE_OF_PREGNANCY ? false : or(f.pregnant, f.breastfeeding));
const pregnant = (f: PersonFacts): Tri => (f.ageYears < FIRST_AGE_OF_PREGNANCY ? false : f.pregnant);

/** Youngest age by place; with no place known, the highest of all ages printed in the row. */
function youngest(rule: RawRule, jurisdiction: Jurisdiction): number {
  const ages = rule.minAgeYears ?? {};
  if (jurisdiction === 'unknown') return Math.max(0, ...Object.values(ages));
  return ages[jurisdiction] ?? ages.default ?? 0;
}

const isSweetChew = (item: ShelfItem) =>
  ['gum', 'lozenge'].includes(item.form) || (item.traits ?? []).some((t) => ['gum', 'lozenge', 'hard candy'].includes(t));

/** The trigger of each stop or caution row of the list, in the row's words. A row that is only about time or a remark has no entry. */
const TRIGGERS: Readonly<Record<string, (world: World, item: ShelfItem, rule: RawRule) => Tri>> = {
  C01: ({ facts: f }) => has(f.conditions, 'ulcerative-gingivitis', 'stomatitis-mucositis'),
  C02: ({ facts: f }) => has(f.conditions, 'asthma', 'asthma-severe'),
  C03: ({ facts: f }, item) => (hasTrait(item, 'colophony') ? has(f.allergies, 'colophony') : false),
  C04: ({ facts: f }, item) => (hasTrait(item, 'alcohol') ? expecting(f) : false),
  C05: tooYoung,
  C06: tooYoung,
  C07: (world, item, rule) => or(tooYoung(world, item, rule), cannotSpit(world.facts)),
  C08: ({ facts: f }) => has(f.conditions, 'porcelain-or-composite', 'titanium-implants'),
  C09: tooYoung,
  C10: ({ facts: f }) => has(f.allergies, 'silver', 'fluoride', 'iodine', 'ammonia'),
  C11: ({ facts: f }) => has(f.conditions, 'ulcerative-gingivitis', 'stomatitis-mucositis', 'tooth-nerve-infection'),
  C12: ({ facts: f }) => or(expecting(f), has(f.conditions, 'thyroid'), takes(f, 'thyroid-medicine')),
  C13: (world, item, rule) =>
    or(
      tooYoung(world, item, rule),
      expecting(world.facts),
      has(world.facts.allergies, 'iodine'),
      has(world.facts.conditions, 'thyroid', 'thyroid-scan-or-radio-iodine', 'kidney-disease', 'kidney-disease-4-5'),
      takes(world.facts, 'lithium', 'thyroid-medicine', 'mercury-product'),
    ),
  C14: ({ facts: f }) => has(f.allergies, 'chlorhexidine'),
  C16: (world, item, rule) =>
    or(
      tooYoung(world, item, rule),
      expecting(world.facts),
      has(world.facts.allergies, 'chlorine'),
      has(
        world.facts.conditions,
        'asthma',
        'asthma-severe',
        'stomatitis-mucositis',
        'ulcerative-gingivitis',
        'swallowing-difficulty',
        'eating-disorder',
        'suicide-risk',
        'cognitive-impairment',
      ),
      world.facts.youngChildAtHome,
      cannotSpit(world.facts),
      item.percent === undefined ? undefined : item.percent > 0.25,
    ),
  C17: ({ facts: f }, item) => or(has(f.allergies, 'milk-protein'), hasTrait(item, 'benzoate') ? has(f.allergies, 'benzoate') : false),
  C18: ({ facts: f }, item) =>
    or(
      has(f.conditions, 'irritable-bowel'),
      hasTrait(item, 'sorbitol') || hasTrait(item, 'maltitol') ? has(f.conditions, 'hereditary-fructose-intolerance') : false,
    ),
  C20: (world, item, rule) =>
    hasTrait(item, 'alcohol')
      ? or(
          tooYoung(world, item, rule),
          pregnant(world.facts),
          takes(world.facts, 'disulfiram-or-metronidazole'),
          has(
            world.facts.conditions,
            'alcohol-use-or-recovery',
            'drug-or-alcohol-misuse',
            'stomatitis-mucositis',
            'sjogren',
            'salivary-glands-lost',
            'head-neck-radiotherapy',
            'head-neck-cancer',
            'religious-no-alcohol',
          ),
          world.facts.dryMouth,
        )
      : false,
  C21: ({ facts: f }) => has(f.conditions, 'kidney-disease-4-5'),
  C22: ({ facts: f }) => (f.waterFluorideMgPerL === undefined ? undefined : f.waterFluorideMgPerL > 0.6),
  C23: (_world, item) => hasTrait(item, 'pilocarpine') || hasTrait(item, 'cevimeline'),
  C24: ({ facts: f }, item) =>
    or(
      hasTrait(item, 'sorbitol') ? has(f.conditions, 'hereditary-fructose-intolerance') : false,
      hasTrait(item, 'propylene glycol') ? has(f.allergies, 'propylene-glycol') : false,
    ),
  C25: (_world, item) => item.form === 'spray' || hasTrait(item, 'needle-shaped particles') || hasTrait(item, 'coated particles'),
  C26: (world, item, rule) => or(tooYoung(world, item, rule), cannotSpit(world.facts)),
  C27: tooYoung,
  C28: (world, item, rule) =>
    isSweetChew(item)
      ? or(
          tooYoung(world, item, rule),
          has(world.facts.conditions, 'swallowing-difficulty'),
          item.form === 'gum' ? or(world.facts.jawPain, world.facts.dentures, has(world.facts.conditions, 'jaw-joint-pain')) : false,
        )
      : false,
  C29: ({ facts: f }) => or(f.dryMouth, has(f.conditions, 'head-neck-radiotherapy', 'salivary-glands-lost', 'sjogren')),
  C30: ({ facts: f }, item) => (hasTrait(item, 'aspartame') ? has(f.conditions, 'phenylketonuria') : false),
  C31: ({ facts: f }) => expecting(f),
  C32: (world, item, rule) =>
    or(
      tooYoung(world, item, rule),
      cannotSpit(world.facts),
      has(world.facts.conditions, 'heart-failure-hypertension-sodium-restricted', 'kidney-disease', 'kidney-disease-4-5'),
    ),
  C33: ({ facts: f }, item) => (hasTrait(item, 'resin') ? has(f.allergies, 'acrylate') : false),
  C35: (world, item, rule) => ((item.fluoridePpm ?? 0) > 0 ? tooYoung(world, item, rule) : false),
  C36: ({ facts: f }) => or(f.ageMonths < 6, f.strongPasteInUse, f.waterFluoridated, has(f.otherFluoride, 'fluoridated-salt')),
  C37: ({ facts: f }) => (f.weightKg === undefined ? undefined : f.weightKg < 10),
  C38: (world, item, rule) =>
    tooYoung(world, item, rule) === true ? or(world.facts.dryMouth, has(world.facts.conditions, 'head-neck-radiotherapy')) : false,
  C39: tooYoung,
  C40: (world, item, rule) =>
    or(tooYoung(world, item, rule), world.level === undefined ? undefined : world.level === 'low' || world.level === 'moderate'),
};

function tooYoung({ facts, jurisdiction }: World, _item: ShelfItem, rule: RawRule): boolean {
  return facts.ageYears < youngest(rule, jurisdiction);
}
function hasTrait(item: ShelfItem, trait: string): boolean {
  return item.traits?.includes(trait) ?? false;
}

/** Rows whose level in the list is caution but whose wording blocks: "block under 6". */
const BLOCKS_BELOW_AGE = ['C32'];
/** Lines of the product that no signature lifts. */
const NEVER = ['C16', 'C28', 'C30'];
/** What an allergy is about, by ingredient or agent. */
const ALLERGY_INGREDIENTS: Readonly<Record<string, readonly string[]>> = {
  colophony: ['colophony'],
  'milk-protein': ['milk protein'],
  benzoate: ['benzoate'],
  iodine: ['iodine'],
  acrylate: ['resin', 'acrylate'],
  chlorhexidine: ['chlorhexidine'],
  silver: ['silver'],
  ammonia: ['ammonia'],
  'propylene-glycol': ['propylene glycol'],
  'sodium-lauryl-sulfate': ['sodium lauryl sulfate'],
  peppermint: ['flavour'],
};

const isAbout = (rule: RawRule, item: ShelfItem) => {
  const named = rule.agentIds.includes('*') || rule.agentIds.includes(item.agentId);
  const holds = (rule.traits ?? []).some((t) => hasTrait(item, t));
  return named || (holds && rule.appliesOnlyIfTrait !== true && rule.id === 'C17');
};

const PRESCRIPTION = ['F_PASTE_2800', 'F_PASTE_5000', 'F_RINSE_02', 'CHX_RINSE', 'CHX_VARNISH', 'F_SUPP', 'NAOCL', 'SDF38', 'PVPI'];
export const isSignatureBound = (item: ShelfItem) => item.release !== 'anyone' || PRESCRIPTION.includes(item.agentId);
const isFluoride = (item: ShelfItem) => /^F_/.test(item.agentId) || item.agentId === 'SDF38' || (item.fluoridePpm ?? 0) > 0;
const HIGH_HOME = ['F_PASTE_2800', 'F_PASTE_5000', 'F_GEL_SNF2'];

const FRACTION: Readonly<Record<string, number>> = { NaF: 0.4525, SnF2: 0.2425, Na2PO3F: 0.132, 'AgF(NH3)2': 0.1181 };
export function ppmOf(item: ShelfItem): number | undefined {
  if (item.fluoridePpm !== undefined) return item.fluoridePpm;
  const fraction = item.compound === undefined ? undefined : FRACTION[item.compound];
  return fraction === undefined || item.percent === undefined ? undefined : item.percent * 10_000 * fraction;
}

/** mg F swallowed a day from one line at the planner's share, or undefined where the strength or the amount is unknown. */
function mgPerDay(item: ShelfItem, line: PlanLine, ageYears: number): number | undefined {
  if (item.use.atVisit === true) return 0;
  const ppm = isFluoride(item) ? ppmOf(item) : 0;
  const amount = line.use.amountG ?? line.use.amountMl;
  if (ppm === 0) return 0;
  if (ppm === undefined || amount === undefined) return undefined;
  const share = ageYears < 6 ? 1 : ageYears < 9 ? 0.35 : ageYears < 13 ? 0.2 : 0.1;
  return (ppm / 1000) * amount * line.use.timesPerDay * share;
}

const upperLimits = ({ ageYears, ageMonths }: PersonFacts): readonly number[] => [
  ageMonths < 7 ? 0.7 : ageYears < 1 ? 0.9 : ageYears < 4 ? 1.3 : ageYears < 9 ? 2.2 : 10,
  ageYears < 1 ? 1.0 : ageYears < 4 ? 1.6 : ageYears < 9 ? 2.0 : 3.3,
];

/** One sentence per broken safety line; empty when the plan keeps them all. */
export function findBreaches(world: World, plan: Plan): string[] {
  const itemById = new Map(world.shelf.map((item) => [item.id, item]));
  const lines = [...plan.lines, ...plan.alternatives.map((a) => a.line)];
  const breaches: string[] = [];
  const say = (line: PlanLine, what: string) => breaches.push(`${line.shelfItemId} (${line.state}): ${what}`);
  for (const line of lines) {
    const item = itemById.get(line.shelfItemId);
    if (!item) {
      say(line, 'is not on the shelf');
      continue;
    }
    for (const what of findLineBreaches(world, item, line)) say(line, what);
  }
  breaches.push(...findSetBreaches(world, plan, itemById), ...findDietBreaches(world, plan), ...findFluorideBreaches(world, plan));
  return breaches;
}

/** What the sources tell of the law, by place, for what is not alike everywhere. */
const LAW: Readonly<Record<string, Readonly<Record<string, string>>>> = {
  F_PASTE_2800: { US: 'prescription', UK: 'prescription' },
  F_PASTE_5000: { US: 'prescription', UK: 'prescription' },
  F_RINSE_02: { US: 'prescription' },
  F_GEL_SNF2: { US: 'over-the-counter' },
  SDF38: { US: 'dentist', UK: 'dentist' },
  CHX_RINSE: { US: 'prescription', UK: 'pharmacy', EU: 'pharmacy' },
  CHX_VARNISH: {},
  PVPI: { EU: 'professional' },
  F_SUPP: { US: 'prescription' },
};

function findLineBreaches(world: World, item: ShelfItem, line: PlanLine): string[] {
  const { facts, signed, jurisdiction } = world;
  const found: string[] = [];
  const signatures = signed.filter((s) => s.shelfItemId === item.id && s.by.trim() !== '');
  const lifted = (id: string) =>
    line.state === 'signed' &&
    signatures.some((s) => s.override !== undefined && s.override.reason.trim() !== '' && s.override.ruleId === id);
  if (item.traits === undefined) found.push('the pack is not checked');
  const law = world.legal?.[item.agentId] ?? LAW[item.agentId]?.[jurisdiction];
  if (LAW[item.agentId] && law === undefined) found.push('legal status at this place is not known');
  if (law === 'not-sold') found.push('not sold at this place');
  if ((law === 'prescription' || law === 'dentist') && line.state === 'proposed')
    found.push('released without the signature that the law asks');
  if (line.state === 'signed' && signatures.length === 0) found.push('signed by nobody');
  if (isSignatureBound(item) && line.state === 'proposed') found.push('released without a signature');
  for (const rule of rawRules) {
    const trigger = TRIGGERS[rule.id];
    if (!trigger || !isAbout(rule, item)) continue;
    const fires = trigger(world, item, rule);
    if (fires === undefined) found.push(`${rule.id}: a fact is unknown`);
    if (fires !== true) continue;
    const blocks = rule.level === 'stop' || (BLOCKS_BELOW_AGE.includes(rule.id) && tooYoung(world, item, rule));
    if (blocks && (NEVER.includes(rule.id) || !lifted(rule.id))) found.push(`${rule.id}: stop`);
    if (!blocks && rule.level === 'caution' && line.state === 'proposed') found.push(`${rule.id}: caution without a check`);
  }
  if (facts.allergies === undefined) found.push('allergies unknown');
  for (const allergy of facts.allergies ?? []) {
    const ingredients = ALLERGY_INGREDIENTS[allergy];
    if (ingredients?.some((t) => hasTrait(item, t)) === true && !lifted('C34')) {
      // A pack that holds what the person is allergic to needs its own override, whichever of the two rows names it.
      if (!['C03', 'C10', 'C13', 'C14', 'C17', 'C33'].some(lifted)) found.push(`allergy to ${allergy}`);
    }
    if (allergy === 'fluoride' && isFluoride(item) && !lifted('C34')) found.push('allergy to fluoride');
  }
  if (item.form === 'gum') {
    if (facts.ageYears < 5) found.push('gum under 5');
    if (facts.dentures !== false || facts.jawPain !== false || has(facts.conditions, 'jaw-joint-pain') !== false)
      found.push('gum with dentures or jaw pain, or not asked');
    if (facts.braces !== false && line.state === 'proposed') found.push('gum with braces without a choice of the professional');
  }
  if (
    item.form === 'lozenge' &&
    item.agentId === 'SALIVA' &&
    (facts.ageYears < 5 || has(facts.conditions, 'swallowing-difficulty') !== false)
  )
    found.push('a lozenge where it may choke');
  if (/^(CHX_RINSE|ESSENTIAL_OILS|NAOCL)$/.test(item.agentId) && item.form === 'rinse' && cannotSpit(facts) !== false && !lifted('P22'))
    found.push('a rinse that must be spat out, by somebody who cannot or was not asked');
  if (item.agentId === 'SALIVA' && (item.pH ?? 7) < 5.5 && !lifted('P23')) found.push('an acid saliva substitute');
  if (/^CHX_/.test(item.agentId) && line.state !== 'signed') found.push('chlorhexidine by default');
  if (item.agentId === 'NAOCL' && (world.hypochloritePercent === undefined || line.state !== 'signed'))
    found.push('hypochlorite without a written protocol');
  if (item.agentId === 'F_PASTE_5000' && facts.ageYears < 6) found.push('high-fluoride paste under 6');
  if (isFluoride(item) && (facts.ageMonths < 6 || (facts.ageMonths < 24 && facts.weightKg === undefined))) {
    if (item.agentId !== 'F_PASTE_STD' || (line.use.amountG ?? 1) > 0.1) found.push('more fluoride than a smear');
  }
  if (item.agentId === 'SDF38' && facts.weightKg === undefined) found.push('drops by an assumed weight');
  if (item.agentId === 'XYLITOL' && facts.ageYears < 18) {
    if (facts.weightKg === undefined) found.push('sweetener by an assumed weight');
    else if (item.use.amountG === undefined) found.push('sweetener of unknown amount');
    else if (
      !lifted('P12') &&
      (item.use.amountG > 0.15 * facts.weightKg || item.use.amountG * item.use.timesPerDay > 0.5 * facts.weightKg)
    ) {
      found.push('too much sweetener for the weight');
    }
  }
  if (isFluoride(item) && item.use.atVisit !== true && !/^F_(PASTE_STD|PASTE_LOW)$/.test(item.agentId) && jurisdiction !== undefined) {
    if (cannotSpit(facts) === undefined && /RINSE|GEL_SNF2|PASTE_2800|PASTE_5000/.test(item.agentId)) found.push('able to spit is unknown');
  }
  return found;
}

function findSetBreaches(world: World, plan: Plan, itemById: ReadonlyMap<string, ShelfItem>): string[] {
  const found: string[] = [];
  const sets = [plan.lines, ...plan.alternatives.map((a) => [...plan.lines.filter((l) => l.shelfItemId !== a.insteadOf), a.line])];
  for (const set of sets) {
    const items = set.flatMap((l) => itemById.get(l.shelfItemId) ?? []);
    const agents = items.map((i) => i.agentId);
    if (agents.some((a) => /^CHX_/.test(a)) && agents.includes('NAOCL')) found.push('chlorhexidine and hypochlorite in one plan');
    if (agents.filter((a) => HIGH_HOME.includes(a)).length > 1) found.push('two high-fluoride home products');
    if (
      agents.includes('NAOCL') &&
      items.some((i) => i.agentId !== 'NAOCL' && (i.pH === undefined ? ['F_GEL_APF', 'SDF38'].includes(i.agentId) : i.pH < 7))
    ) {
      found.push('hypochlorite with acid');
    }
    const chair = items.filter((i) => i.use.atVisit === true).map((i) => i.agentId);
    if (chair.includes('F_VARNISH') && chair.includes('F_GEL_APF')) found.push('varnish and gel on one day');
    const swallowed = set.reduce((sum, l) => {
      const item = itemById.get(l.shelfItemId);
      const highIsSigned = set.some(
        (o) => o.state === 'signed' && ['F_PASTE_2800', 'F_PASTE_5000'].includes(itemById.get(o.shelfItemId)?.agentId ?? ''),
      );
      const waits = l.state === 'waiting-for-signature';
      if (!item || waits || (highIsSigned && item.agentId === 'F_PASTE_STD')) return sum;
      return sum + (mgPerDay(item, l, world.facts.ageYears) ?? 0);
    }, 0);
    const lifted = world.signed.some((s) => s.override?.ruleId === 'P10');
    for (const limit of upperLimits(world.facts)) {
      if (swallowed > limit * (1 + 1e-9) && !lifted) found.push(`${swallowed} mg F a day is above ${limit}`);
    }
  }
  return found;
}

function findDietBreaches({ facts: f }: World, plan: Plan): string[] {
  const known = [
    f.medicines?.includes('other') ? undefined : f.medicines,
    f.allergies,
    f.conditions,
    f.canSpit,
    f.ageYears < FIRST_AGE_OF_PREGNANCY ? false : f.pregnant,
    f.ageYears < 18 ? f.weightKg : 0,
  ];
  const listed =
    has(f.medicines, 'insulin', 'other-glucose-lowering', 'glp-1-agonist') === true ||
    has(f.conditions, 'eating-disorder', 'underweight', 'pregnancy-sickness', 'tube-or-supplement-feeding', 'diabetes-glucose-lowering') ===
      true;
  const { allowed } = plan.diet;
  if (known.includes(undefined) && allowed !== 'after-only') return ['food limited while the safety check is unanswered'];
  if (listed && allowed !== 'after-only') return ['food limited for a person who must not'];
  if (f.ageYears < 3 && allowed === 'any') return ['food limited under 3'];
  return [];
}

function findFluorideBreaches({ facts }: World, { fluoride, fluorideSentence }: Plan): string[] {
  const found: string[] = [];
  const shares = fluoride.limits.map((l) => l.share);
  if (!fluoride.complete && shares.some((s) => s !== null)) found.push('a share of a limit while a source is unknown');
  if (!fluoride.complete && fluoride.unknownSources.length === 0) found.push('incomplete without saying what is unknown');
  if (facts.waterFluorideMgPerL === undefined && fluoride.complete) found.push('complete without the water');
  if (!fluoride.complete && !/^(At least|No fluoride product)/.test(fluorideSentence)) found.push(`not a lower bound: ${fluorideSentence}`);
  if (facts.weightKg === undefined && fluoride.weightKg !== null && !fluoride.weightAssumed)
    found.push('an assumed weight not said to be one');
  if (fluoride.weightAssumed && !/assumed|^No fluoride product/.test(fluorideSentence)) found.push('the sentence hides the assumed weight');
  if (facts.weightKg === undefined && fluoride.acute.mgPerKg !== null && fluoride.acute.mgPerKg < 5)
    found.push('an assumed weight reassures');
  if (
    facts.weightKg !== undefined &&
    fluoride.acute.mgIfAllSwallowed / facts.weightKg >= 5 &&
    fluoride.acute.action !== 'emergency-care-now'
  ) {
    found.push('from 5 mg/kg and not an emergency');
  }
  if (/safe (amount|dose)|vomit/i.test(fluorideSentence)) found.push('a forbidden word');
  return found;
}
