import type { Level } from '../risk/types.ts';
import { atPlace } from './places.ts';
import type { FactFlag, ListedId, RegimenTables, Trigger } from './tables.ts';
import type { Jurisdiction, OtherFluoride, PersonFacts, ShelfItem } from './types.ts';

/** What a rule looks at. */
export interface RuleView {
  readonly item: ShelfItem;
  /** Of the item, see `itemTraits`. */
  readonly traits: ReadonlySet<string>;
  readonly facts: PersonFacts;
  readonly level: Level | undefined;
  readonly jurisdiction: Jurisdiction;
  readonly tables: RegimenTables;
}

/** A fact that a rule may have to ask for; `pack` = to be read on the pack, not asked of the person. */
export type Askable = keyof PersonFacts | 'level' | 'pack';

/** One part of a trigger: what it is called, and whether it holds. Unknown names the fact to ask for. */
export interface TriggerPart {
  readonly label: string;
  readonly holds: boolean | 'unknown';
  readonly ask: Askable;
  readonly private: boolean;
}

export interface TriggerState {
  readonly state: 'met' | 'unknown' | 'not-met';
  /** The parts that made the state: those met, or those unknown. */
  readonly parts: readonly TriggerPart[];
}

const LEVELS: readonly Level[] = ['low', 'moderate', 'high', 'extreme'];
const FLAG_LABELS: Readonly<Record<FactFlag, string>> = {
  dogAtHome: 'a dog in the home',
  youngChildAtHome: 'a young child in the home',
  dryMouth: 'dry mouth',
  dentures: 'dentures',
  braces: 'braces',
  jawPain: 'jaw pain',
  strongPasteInUse: '5,000 ppm paste in use',
  waterFluoridated: 'fluoridated water',
};

const OTHER_FLUORIDE_LABELS: Readonly<Record<OtherFluoride, string>> = {
  'fluoridated-salt': 'salt with fluoride',
  'fluoride-tablets-or-drops': 'fluoride tablets or drops',
  'naf-rinse-daily': 'a daily fluoride rinse',
  'professional-gel': 'gel or foam at the practice',
  other: 'something else used at home',
};

/**
 * Whether a rule's trigger holds for a person and a pack, three-valued: met when any part is met; unknown when none is met and a part's
 * fact is unknown; not met only when every part is known not to hold. Unknown is never read as no.
 */
export function triggerState(trigger: Trigger, view: RuleView): TriggerState {
  const parts = [...ageParts(trigger, view), ...personParts(trigger, view), ...measureParts(trigger, view), ...listParts(trigger, view)];
  const met = parts.filter((p) => p.holds === true);
  if (met.length > 0 || trigger.always) return { state: 'met', parts: met };
  const unknown = parts.filter((p) => p.holds === 'unknown');
  return { state: unknown.length > 0 ? 'unknown' : 'not-met', parts: unknown };
}

const part = (label: string, holds: boolean | undefined, ask: Askable, isPrivate = false): TriggerPart => ({
  label,
  holds: holds ?? 'unknown',
  ask,
  private: isPrivate,
});

function ageParts({ ageBelowYears, ageBelowMonths }: Trigger, { facts, jurisdiction }: RuleView): TriggerPart[] {
  const parts: TriggerPart[] = [];
  if (ageBelowYears) {
    const years = atPlace(ageBelowYears, jurisdiction);
    parts.push(part(`under ${years} years`, facts.ageYears < years, 'ageYears'));
  }
  if (ageBelowMonths !== undefined) parts.push(part(`under ${ageBelowMonths} months`, facts.ageMonths < ageBelowMonths, 'ageMonths'));
  return parts;
}

function personParts(trigger: Trigger, { facts, tables }: RuleView): TriggerPart[] {
  const parts: TriggerPart[] = [];
  const isOldEnough = facts.ageYears >= tables.pregnancyFromAgeYears;
  if (trigger.pregnant && isOldEnough) parts.push(part('pregnancy', facts.pregnant, 'pregnant', true));
  if (trigger.breastfeeding && isOldEnough) parts.push(part('breast-feeding', facts.breastfeeding, 'breastfeeding', true));
  if (trigger.cannotSpit) parts.push(part('cannot spit it out', facts.canSpit === undefined ? undefined : !facts.canSpit, 'canSpit'));
  for (const flag of trigger.flags ?? []) parts.push(part(FLAG_LABELS[flag], facts[flag], flag));
  return parts;
}

function measureParts(trigger: Trigger, { facts, item, level }: RuleView): TriggerPart[] {
  const { weightBelowKg, waterFluorideAboveMgPerL, otherFluoride, levelBelow, percentAbove } = trigger;
  const parts: TriggerPart[] = [];
  const above = (value: number | undefined, limit: number) => (value === undefined ? undefined : value > limit);
  if (weightBelowKg !== undefined) {
    const isBelow = facts.weightKg === undefined ? undefined : facts.weightKg < weightBelowKg;
    parts.push(part(`weight under ${weightBelowKg} kg`, isBelow, 'weightKg'));
  }
  if (waterFluorideAboveMgPerL !== undefined) {
    const label = `drinking water above ${waterFluorideAboveMgPerL} mg/L fluoride`;
    parts.push(part(label, above(facts.waterFluorideMgPerL, waterFluorideAboveMgPerL), 'waterFluorideMgPerL'));
  }
  for (const kind of otherFluoride ?? []) {
    parts.push(part(OTHER_FLUORIDE_LABELS[kind], facts.otherFluoride?.includes(kind), 'otherFluoride'));
  }
  if (levelBelow !== undefined) {
    const isBelow = level === undefined ? undefined : LEVELS.indexOf(level) < LEVELS.indexOf(levelBelow);
    parts.push(part(`confirmed level below ${levelBelow}`, isBelow, 'level'));
  }
  if (percentAbove !== undefined) parts.push(part(`stronger than ${percentAbove} %`, above(item.percent, percentAbove), 'pack'));
  return parts;
}

function listParts(trigger: Trigger, view: RuleView): TriggerPart[] {
  const { facts, tables } = view;
  return [
    ...(trigger.allergies ? heldIds(facts.allergies, trigger.allergies, tables.allergies, 'allergies') : []),
    ...(trigger.conditions ? heldIds(facts.conditions, trigger.conditions, tables.conditions, 'conditions') : []),
    ...(trigger.medicines ? heldIds(facts.medicines, trigger.medicines, tables.medicines, 'medicines') : []),
    ...(trigger.allergyToContents ? allergyParts(view) : []),
  ];
}

/** An id outside the lists could be what the rule is about: it is no proof of absence. */
function heldIds(
  list: readonly string[] | undefined,
  wanted: readonly string[],
  listed: Readonly<Record<string, ListedId>>,
  fact: 'allergies' | 'conditions' | 'medicines',
): TriggerPart[] {
  if (list === undefined) return [part(fact, undefined, fact)];
  const held = wanted.filter((id) => list.includes(id));
  if (held.length > 0) return held.map((id) => part(labelOf(id, listed), true, fact, listed[id]?.private ?? true));
  return list.every((id) => listed[id] !== undefined) ? [] : [part(`an answer that no rule knows under ${fact}`, undefined, fact)];
}

function allergyParts(view: RuleView): TriggerPart[] {
  const { facts, tables } = view;
  if (facts.allergies === undefined) return [part('allergies', undefined, 'allergies')];
  const hits = findAllergiesToPack(view);
  if (hits.length > 0) return hits.map((id) => part(labelOf(id, tables.allergies), true, 'allergies'));
  const unmatched = facts.allergies.filter((id) => tables.allergenMatches[id] === undefined);
  return unmatched.map((id) => part(labelOf(id, tables.allergies), undefined, 'pack'));
}

/** The person's allergies that something in the pack answers to. */
export function findAllergiesToPack({ item, traits, facts, tables }: RuleView): readonly string[] {
  return (facts.allergies ?? []).filter((id) => {
    const match = tables.allergenMatches[id];
    return match !== undefined && (match.agentIds.includes(item.agentId) || match.traits.some((t) => traits.has(t)));
  });
}

const labelOf = (id: string, listed: Readonly<Record<string, ListedId>>): string => listed[id]?.label ?? id;
