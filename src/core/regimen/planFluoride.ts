import { withoutDoubtfulWeight } from './dose/weightDoubt.ts';
import { type FluorideSource, fluorideIntake } from './fluorideIntake.ts';
import { fluorideSentence } from './fluorideSentence.ts';
import { itemPpm } from './itemTraits.ts';
import type { RegimenTables } from './tables.ts';
import type { FluorideIntake, PersonFacts, PlanLine, ShelfItem } from './types.ts';

/** An item as it would stand in a plan: with the amount for the age, and whether it is in use already. */
export interface PlannedUse {
  readonly item: ShelfItem;
  readonly use: ShelfItem['use'];
  readonly state: PlanLine['state'];
}

const ML_PER_L = 1_000;

/**
 * Fluoride of a plan, on the day when it is highest: either what may be used now, or what is used once everything that waits is signed
 * and a high-fluoride paste has taken the place of the ordinary one.
 */
export function planFluoride(
  planned: readonly PlannedUse[],
  facts: PersonFacts,
  tables: RegimenTables,
): { readonly intake: FluorideIntake; readonly sentence: string } {
  const now = planned.filter((p) => p.state !== 'waiting-for-signature');
  const isReplaced = planned.some(isStrongPaste);
  const later = planned.filter((p) => !(isReplaced && isOrdinaryPaste(p)));
  const days = [now, later].map((uses) => intakeOf(uses, facts, tables));
  const [first, second] = days as [Day, Day];
  return isHigher(second, first) ? second : first;
}

interface Day {
  readonly intake: FluorideIntake;
  readonly sentence: string;
}

function intakeOf(uses: readonly PlannedUse[], facts: PersonFacts, tables: RegimenTables): Day {
  const home = uses.filter((p) => p.use.atVisit !== true && holdsFluoride(p.item, tables)).map(sourceOf);
  const water = waterSource(facts);
  const drunkOrEaten = [water, ...otherSources(facts)];
  const { weightKg } = withoutDoubtfulWeight(facts, tables.fluoride.weights);
  const of = (kg: number | undefined) =>
    fluorideIntake({ ageMonths: facts.ageMonths, weightKg: kg, sources: [...home, ...drunkOrEaten], tables: tables.fluoride });
  const fitting = of(weightKg);
  // A weight in doubt may be right after all, so it can raise what to do at once, and never lower it.
  const isEmergency = of(facts.weightKg).acute.action === 'emergency-care-now';
  const intake: FluorideIntake = isEmergency ? { ...fitting, acute: { ...fitting.acute, action: 'emergency-care-now' } } : fitting;
  const isWaterIn = facts.waterFluorideMgPerL !== undefined && !intake.unknownSources.includes(water.name);
  const names = [...new Set(home.map((s) => s.name)), ...(isWaterIn && home.length > 0 ? [water.name] : [])];
  return { intake, sentence: fluorideSentence(intake, names) };
}

/** A day with something unknown stands for the plan even when its known part is smaller: its true sum may be larger. */
function isHigher(a: Day, b: Day): boolean {
  if (a.intake.complete !== b.intake.complete) return !a.intake.complete;
  return a.intake.mgPerDay > b.intake.mgPerDay;
}

export const isStrongPaste = ({ item }: Pick<PlannedUse, 'item'>): boolean =>
  ['F_PASTE_2800', 'F_PASTE_5000'].includes(item.agentId) && item.meets.includes('fluoride-base');
export const isOrdinaryPaste = ({ item }: Pick<PlannedUse, 'item'>): boolean =>
  !['F_PASTE_2800', 'F_PASTE_5000'].includes(item.agentId) && item.meets.includes('fluoride-base');

/** mg F swallowed a day from one pack alone; what is not known of it counts as nothing, so a lower bound. */
export function fluorideMgPerDay(planned: PlannedUse, { ageMonths }: PersonFacts, tables: RegimenTables): number {
  if (planned.use.atVisit === true || !holdsFluoride(planned.item, tables)) return 0;
  return fluorideIntake({ ageMonths, sources: [sourceOf(planned)], tables: tables.fluoride }).mgPerDay;
}

function holdsFluoride(item: ShelfItem, tables: RegimenTables): boolean {
  return tables.agents.find((a) => a.id === item.agentId)?.ppmRange !== undefined || (itemPpm(item) ?? 0) > 0;
}

function sourceOf({ item, use }: PlannedUse): FluorideSource {
  return { name: item.form, ppm: itemPpm(item), amountG: use.amountG, amountMl: use.amountMl, perDay: use.timesPerDay };
}

/** Salt, tablets and the like: how much is taken is not asked, so the sum is a lower bound with any of them, and while nobody asked. */
function otherSources({ otherFluoride = ['other fluoride at home'] }: PersonFacts): readonly FluorideSource[] {
  return otherFluoride.map((name) => ({ name, perDay: 1, swallowedFraction: 1, isDrink: true }));
}

function waterSource({ waterFluorideMgPerL: ppm, waterLitresPerDay: litres }: PersonFacts): FluorideSource {
  const name = ppm === undefined ? 'water' : 'amount of water drunk';
  const amountMl = litres === undefined ? undefined : litres * ML_PER_L;
  const isKnown = ppm === 0 || (ppm !== undefined && litres !== undefined);
  return { name: isKnown ? 'water' : name, ppm, amountMl, perDay: 1, swallowedFraction: 1, isDrink: true };
}
