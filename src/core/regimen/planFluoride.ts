import { withoutDoubtfulWeight } from './dose/weightDoubt.ts';
import { type FluorideSource, fluorideIntake } from './fluorideIntake.ts';
import { fluorideSentence } from './fluorideSentence.ts';
import { holdsFluoride, mgReplacedBy, type PlannedUse, sourceOf, sourcesBesides, swallowedMg } from './fluorideSources.ts';
import type { RegimenTables } from './tables.ts';
import type { FluorideIntake, PersonFacts } from './types.ts';

export type { PlannedUse } from './fluorideSources.ts';

/**
 * Fluoride of a plan, on the day when it is highest: either what may be used now, or what is used once everything that waits is signed
 * and a high-fluoride paste has taken the place of the ordinary one. Water, salt, tablets and varnish days are in it, each known or named
 * as not known.
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
  const own = uses.filter((p) => holdsFluoride(p.item, tables)).map((p) => sourceOf(p, facts, tables));
  const besides = sourcesBesides(uses, facts, tables);
  const { weightKg } = withoutDoubtfulWeight(facts, tables.fluoride.weights);
  const of = (kg: number | undefined) =>
    fluorideIntake({ ageMonths: facts.ageMonths, weightKg: kg, sources: [...own, ...besides], tables: tables.fluoride });
  const fitting = of(weightKg);
  // A weight in doubt may be right after all, so it can raise what to do at once, and never lower it.
  const isEmergency = of(facts.weightKg).acute.action === 'emergency-care-now';
  const intake: FluorideIntake = isEmergency ? { ...fitting, acute: { ...fitting.acute, action: 'emergency-care-now' } } : fitting;
  const isKnown = ({ name }: FluorideSource) => !intake.unknownSources.includes(name);
  return { intake, sentence: fluorideSentence(intake, namesOf(own), namesOf(besides.filter(isKnown))) };
}

const namesOf = (sources: readonly FluorideSource[]): readonly string[] => [...new Set(sources.map((s) => s.name))];

/** A day with something unknown stands for the plan even when its known part is smaller: its true sum may be larger. */
function isHigher(a: Day, b: Day): boolean {
  if (a.intake.complete !== b.intake.complete) return !a.intake.complete;
  return a.intake.mgPerDay > b.intake.mgPerDay;
}

export const isStrongPaste = ({ item }: Pick<PlannedUse, 'item'>): boolean =>
  ['F_PASTE_2800', 'F_PASTE_5000'].includes(item.agentId) && item.meets.includes('fluoride-base');
export const isOrdinaryPaste = ({ item }: Pick<PlannedUse, 'item'>): boolean =>
  !['F_PASTE_2800', 'F_PASTE_5000'].includes(item.agentId) && item.meets.includes('fluoride-base');

/**
 * mg F swallowed a day that one pack adds to what the person takes anyway: less what it takes the place of. What is not known of it counts
 * as nothing, so a lower bound.
 */
export function fluorideMgPerDay(planned: PlannedUse, facts: PersonFacts, tables: RegimenTables): number {
  if (!holdsFluoride(planned.item, tables)) return 0;
  const alone = swallowedMg([sourceOf(planned, facts, tables)], facts, tables);
  return Math.max(0, alone - mgReplacedBy(planned.item.agentId, facts, tables));
}
