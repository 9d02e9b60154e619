import type { ReadingState } from '../reading/types.ts';
import type { Items, RiskResult } from '../risk/types.ts';
import type { SourceRef } from '../visit/answer.ts';
import type { Finding, MouthDecision } from '../visit/types.ts';
import { antimicrobialNeed, findCareRow, fromCare, radiotherapyNeed, rootLesionNeed } from './careNeeds.ts';
import { type NeedState, NOT_CONFIRMED, needed, notNeeded, OURS, ofFact, undecided } from './needStates.ts';
import type { CareRow, RegimenTables } from './tables.ts';
import type { ConfirmedLevel, Jurisdiction, Need, NeedKind, PersonFacts } from './types.ts';

export interface FindNeedsInput {
  readonly facts: PersonFacts;
  /** Absent until a professional has confirmed a level. */
  readonly confirmed?: ConfirmedLevel | undefined;
  /** The practice's list on these answers, for what drives it; null where none applies. */
  readonly result: RiskResult | null;
  /** Items known today, where the caller has them; else the drivers of `result` are used. */
  readonly items?: Items | undefined;
  readonly findings: readonly Finding[];
  readonly mouth?: Pick<MouthDecision, 'reasons'> | undefined;
  /** Absent = no reading at this visit. */
  readonly reading?:
    | {
        readonly counted: boolean;
        readonly verdict?: 'below' | 'too-close' | 'above' | undefined;
        /** `void`: a number was read, and it does not count. */
        readonly state?: ReadingState | undefined;
      }
    | undefined;
  readonly jurisdiction: Jurisdiction;
  readonly tables: RegimenTables;
}

type Tri = boolean | undefined;

const SNACKS_MANY_ABOVE = 3;
/** A high-fluoride paste takes the place of these once it is signed; it is never the base by itself. */
const ORDINARY_PASTES = [['F_PASTE_STD'], ['ARGININE', 'FTCP']] as const;
const TOOTHLESS: readonly string[] = ['no-natural-teeth', 'implants-only', 'no-teeth-yet'];
const DRYING_CAUSES = ['sjogren', 'salivary-glands-lost', 'head-neck-radiotherapy'];
const ACID_CAUSES = ['reflux', 'vomiting-often'];
const ORDER: readonly NeedKind[] = [
  'fluoride-base',
  'fluoride-extra',
  'professional-fluoride',
  'antimicrobial',
  'acid-control',
  'sweetener',
  'calcium-phosphate',
  'saliva',
  'sealing',
  'diet',
];

/**
 * What this person needs, before any product is thought of. Only a confirmed level decides what a list's table of care gives; without one
 * only needs that hold at every level are said, the rest stay undecided. The reading speaks to the antimicrobial question and to nothing
 * else.
 * @returns every kind of need once, in a fixed order, then acid-wear advice and referrals where they apply
 */
export function findNeeds(input: FindNeedsInput): readonly Need[] {
  const reasons: readonly string[] = input.mouth?.reasons ?? [];
  const toothless = TOOTHLESS.find((reason) => reasons.includes(reason));
  if (toothless !== undefined) return needsWithoutTeeth(toothless, input);
  const care = findCareRow(input);
  const needs = ORDER.map((kind): Need => ({ kind, ...makeNeed(kind, input, care) }));
  return [...needs, ...acidWear(input, reasons), ...referrals(input)];
}

function makeNeed(kind: NeedKind, input: FindNeedsInput, care: CareRow | undefined): NeedState {
  switch (kind) {
    case 'fluoride-base':
      return needed('Natural teeth: fluoride paste twice a day at every level.', [{ key: 'walsh2010', status: 'read' }], ORDINARY_PASTES);
    case 'fluoride-extra':
      return rootLesionNeed(input) ?? radiotherapyNeed(input) ?? fromCare(kind, input, care);
    case 'antimicrobial':
      return antimicrobialNeed(input, care);
    case 'saliva':
      return ofFact(hasDryMouth(input), 'Dry mouth or low saliva.', 'Dry mouth is not known.', 'No dry mouth noted.');
    case 'acid-control':
      return acidControl(input, care);
    case 'sealing':
      return sealing(input);
    case 'diet':
      return ofFact(
        sweetsOften(input),
        'Sweet things often between meals, or in a bottle.',
        'Food and drink are not known.',
        'No frequent sweet things noted.',
      );
    default:
      return fromCare(kind, input, care);
  }
}

function acidControl(input: FindNeedsInput, care: CareRow | undefined): NeedState {
  const { facts } = input;
  if (facts.conditions?.some((id) => ACID_CAUSES.includes(id))) return needed('Acid from the stomach: rinse afterwards, spit out.', [OURS]);
  if (care?.needs.some((need) => need.kind === 'acid-control')) return fromCare('acid-control', input, care);
  if (!input.confirmed) return undecided(NOT_CONFIRMED);
  return facts.conditions === undefined ? undecided('Reflux and the like are not known.') : fromCare('acid-control', input, care);
}

function sealing({ findings, confirmed, ...input }: FindNeedsInput): NeedState {
  const isEarly = findings.some((f) => f.surface === 'occlusal' && (f.kind === 'white-spot' || f.kind === 'enamel-radiograph'));
  const sources: readonly SourceRef[] = [{ key: 'slayton2018', status: 'read' }];
  if (isEarly) return needed('Early lesion on a chewing surface.', sources);
  if (!confirmed) return undecided(NOT_CONFIRMED);
  const deep = itemState('pits_fissures_deep', input);
  if (deep === undefined) return undecided('Depth of pits and fissures not known.', sources);
  if (!deep) return notNeeded('No deep pits or fissures noted.', sources);
  return confirmed.level === 'low' ? undecided('Deep pits; optional at level low.', sources) : needed('Deep pits or fissures.', sources);
}

function hasDryMouth({ facts, ...input }: FindNeedsInput): Tri {
  if (facts.dryMouth || facts.conditions?.some((id) => DRYING_CAUSES.includes(id))) return true;
  return itemState('saliva_flow_reduced_measured', input) === true ? true : facts.dryMouth;
}

function sweetsOften({ items, result }: FindNeedsInput): Tri {
  const view = { items, result };
  const isBetween = result?.drivers.some((d) => d.item === 'sugars_mainly_at_meals') || items?.sugars_mainly_at_meals === false;
  const snacks = itemState('snacks_between_meals_per_day', view);
  const bottle = [itemState('bottle_sugared_fluid', view), itemState('bottle_bedtime_not_water', view)];
  // The other items are asked at some ages alone: only a known count of snacks settles it as a no.
  return isBetween || bottle.includes(true) ? true : snacks;
}

/** Ticked, known not ticked, or unknown. */
function itemState(item: string, { items, result }: Pick<FindNeedsInput, 'items' | 'result'>): Tri {
  if (result?.drivers.some((d) => d.item === item)) return true;
  const value = items?.[item];
  if (typeof value === 'number') return value > SNACKS_MANY_ABOVE;
  if (value !== undefined) return value;
  if (items !== undefined || !result) return undefined;
  return result.missing.some((m) => m.item === item) ? undefined : false;
}

const WITHOUT_TEETH: Readonly<Record<string, { readonly because: string; readonly refer: string }>> = {
  'no-natural-teeth': {
    because: 'No natural teeth: care against decay does not apply.',
    refer: "Dentures and the soft parts of the mouth: to the dentist, at the practice's own interval.",
  },
  'implants-only': {
    because: 'Implants only: care against decay does not apply.',
    refer: 'Home care of implants is outside this record: to the dentist who looks after them.',
  },
  'no-teeth-yet': {
    because: 'No teeth yet: from the first tooth on.',
    refer: 'First visit when the first tooth comes; until then nothing for teeth is given.',
  },
};

/** Care of a dry mouth is the one need that stays; before the first tooth even that is for the physician. */
function needsWithoutTeeth(reason: string, input: FindNeedsInput): readonly Need[] {
  const { because, refer } = WITHOUT_TEETH[reason] ?? { because: '', refer: '' };
  const dry =
    reason === 'no-teeth-yet'
      ? notNeeded(because)
      : ofFact(hasDryMouth(input), 'Dry mouth or low saliva.', 'Dry mouth is not known.', 'No dry mouth noted.');
  return [
    ...ORDER.map((kind): Need => (kind === 'saliva' ? { kind, ...dry } : { kind, ...notNeeded(because) })),
    { kind: 'referral', ...needed(refer, [OURS]) },
    ...referrals(input),
  ];
}

function acidWear({ findings }: FindNeedsInput, reasons: readonly string[]): Need[] {
  if (!findings.some((f) => f.kind === 'acid-wear') && !reasons.includes('acid-wear')) return [];
  return [{ kind: 'acid-wear-advice', ...needed('Acid wear: advice of its own; it is on no list of decay.', [OURS]) }];
}

/** Referrals that hold at every level. The sentence names no private matter. */
function referrals({ facts, findings, tables }: FindNeedsInput): Need[] {
  const list: Need[] = [];
  const refer = (because: string) => list.push({ kind: 'referral', ...needed(because, [OURS]) });
  const isOpen = (kind: string) => kind === 'cavity' || kind === 'dentine-radiograph';
  if (findings.some((f) => isOpen(f.kind))) refer('A cavity, or a lesion in dentine: for the dentist.');
  const listed = [...(facts.conditions ?? []), ...(facts.medicines ?? [])];
  if (listed.some((id) => tables.foodLimits.conditions.includes(id) || tables.foodLimits.medicines.includes(id))) {
    refer('Something in the safety check bears on food: changes of food only with the physician.');
  }
  if (facts.conditions?.some((id) => ACID_CAUSES.includes(id))) refer('Acid from the stomach: to the physician.');
  if (facts.conditions?.some((id) => DRYING_CAUSES.includes(id))) {
    const because = "Lost gland function: medicines that make saliva are the physician's to decide.";
    list.push({ kind: 'referral', ...needed(because, [{ key: 'salivaMedicineLabels', status: 'read' }]) });
  }
  return list;
}
