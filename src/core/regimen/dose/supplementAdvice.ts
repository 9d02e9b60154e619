import type { Level } from '../../risk/types.ts';
import { checkItem } from '../checkItem.ts';
import type { PlanSettings, RegimenTables } from '../tables.ts';
import type { PersonFacts, ShelfItem, SupplementAdvice } from '../types.ts';
import { supplementSchedule } from './supplementSchedule.ts';

const AGENT = 'F_SUPP';
/** No pack of the shelf: what the rules are asked about. */
const DROPS: ShelfItem = {
  id: AGENT,
  name: 'Fluoride drops or tablets',
  leafletName: { en: '', es: '' },
  agentId: AGENT,
  form: 'drops',
  traits: [],
  inStock: false,
  release: 'prescription',
  meets: [],
  use: { timesPerDay: 1, amount: '' },
};

export interface SupplementAdviceInput {
  readonly facts: PersonFacts;
  readonly level: Level | undefined;
  readonly settings: PlanSettings;
  readonly tables: RegimenTables;
}

/**
 * What the published schedule says of a fluoride supplement for this person, and which rule stands against it, for a practice that considers
 * them. For the physician or dentist who decides: nothing of it is ever added to a plan.
 * @returns null where the practice does not consider them
 * @source ada2010supplements, fda2025supplements, smpcHighFluoride
 */
export function supplementAdvice({ facts, level, settings, tables }: SupplementAdviceInput): SupplementAdvice | null {
  if (settings.considersSupplements !== true) return null;
  const { jurisdiction } = settings;
  const dose = supplementSchedule({ ageMonths: facts.ageMonths, waterFluorideMgPerL: facts.waterFluorideMgPerL, level, jurisdiction });
  const check = checkItem({ item: DROPS, facts, level, jurisdiction, tables });
  const ofSupplements = new Set(tables.rules.filter((r) => r.agentIds.includes(AGENT)).map((r) => r.id));
  const bars = [...check.stops, ...check.asks, ...check.cautions].filter(({ ruleId }) => ofSupplements.has(ruleId));
  const stops = bars.filter(({ level: how }) => how === 'stop');
  const isOpen = bars.every(({ level: how }) => how === 'caution');
  return {
    mgPerDay: isOpen ? dose.mgPerDay : null,
    says:
      dose.mgPerDay === null ? `By the table of 2010 none: ${dose.because}.` : `By the table of 2010 ${dose.mgPerDay} mg fluoride a day.`,
    against: (stops.length > 0 ? stops : bars).map(({ ruleId, because, source }) => ({ ruleId, because, source })),
    ask: [...new Set(bars.flatMap(({ ask = [] }) => ask))],
    disagreement: DISAGREEMENT,
    sources: [
      { key: 'ada2010supplements', status: 'read' },
      { key: 'fda2025supplements', status: 'read' },
    ],
  };
}

const DISAGREEMENT =
  'Sources disagree: the table begins at 6 months, for high risk; since 31 October 2025 the US authority acts against these products under 3 years and where risk is not high. A physician or dentist decides; none is ever added here.';
