import type { ListedId, RegimenTables } from '../core/regimen/tables.ts';
import { advice } from './advice.ts';
import { agents, allergenMatches, allergyWords, xylitolLimit } from './agents.ts';
import { benefits } from './benefits.ts';
import { cautions } from './cautions.ts';
import { openConditions, privateConditions } from './conditions.ts';
import { disagreements } from './disagreements.ts';
import { fluorideTables, packLimits, pasteAmounts, varnishAmounts } from './fluorideLimits.ts';
import { legalStatuses } from './legalStatus.ts';
import { glucoseLoweringMedicineIds, medicineClasses, PRIVATE_MEDICINES, UNCLASSIFIED_MEDICINE } from './medicines.ts';
import { pathways } from './pathways.ts';
import { careRows, oldBitewings, recallRows } from './recall.ts';
import { interactions, planRules, safetyRules } from './safetyRules.ts';
import { staining } from './staining.ts';

/** A label as it stands inside a sentence; names that begin with capitals throughout keep them. */
const inSentence = (label: string): string => (/^[A-Z]{2}/.test(label) ? label : label.charAt(0).toLowerCase() + label.slice(1));

const listed = (choices: readonly { readonly id: string; readonly label: string }[], isPrivate = false): Record<string, ListedId> =>
  Object.fromEntries(choices.map(({ id, label }) => [id, { label: inSentence(label), private: isPrivate }]));

const HIGHEST_HYPOCHLORITE_PERCENT = 0.25;
const PREGNANCY_ASKED_FROM_YEARS = 11;

/** All tables of needs, safety and the plan, in one edition. */
export const regimenTables: RegimenTables = {
  agents,
  rules: safetyRules,
  interactions,
  planRules,
  packWarnMg: Math.min(...packLimits.map(({ mgF }) => mgF)),
  legalStatuses,
  allergenMatches,
  allergies: Object.fromEntries(Object.entries(allergyWords).map(([id, label]) => [id, { label, private: false }])),
  conditions: { ...listed(openConditions), ...listed(privateConditions, true) },
  // A medicine of unknown class is left out on purpose: it could be any, so it proves nothing absent.
  medicines: {
    ...listed(medicineClasses.filter((m) => m.id !== UNCLASSIFIED_MEDICINE)),
    ...listed(
      medicineClasses.filter((m) => PRIVATE_MEDICINES.includes(m.id)),
      true,
    ),
  },
  askFor: {
    medicines: ['medicines'],
    allergies: ['allergies'],
    conditions: ['conditions', 'private_conditions'],
    pregnant: ['pregnant'],
    breastfeeding: ['pregnant'],
    weightKg: ['weight_kg'],
    canSpit: ['can_spit', 'conditions'],
    dogAtHome: ['household'],
    youngChildAtHome: ['household'],
    dryMouth: ['dry_mouth', 'conditions'],
    dentures: ['appliance'],
    braces: ['appliance'],
    jawPain: ['conditions'],
    waterFluorideMgPerL: ['water_fluoride_mg_per_l'],
    waterFluoridated: ['water_fluoridated'],
    otherFluoride: ['home_extras'],
    strongPasteInUse: ['paste_strength'],
  },
  pregnancyFromAgeYears: PREGNANCY_ASKED_FROM_YEARS,
  pasteAmounts,
  varnishAmounts,
  fluoride: fluorideTables,
  xylitolLimit,
  highestHypochloritePercent: HIGHEST_HYPOCHLORITE_PERCENT,
  care: careRows,
  benefit: benefits,
  pathways,
  recall: recallRows,
  oldBitewings,
  cautions,
  staining,
  advice,
  foodLimits: {
    belowAgeYears: 3,
    medicines: glucoseLoweringMedicineIds,
    conditions: ['diabetes-glucose-lowering', 'eating-disorder', 'underweight', 'pregnancy-sickness', 'tube-or-supplement-feeding'],
    source: { key: 'project', status: 'proposal', note: 'changes of food only with the physician' },
  },
  disagreements,
};
