import type { Level } from '../risk/types.ts';
import type { SourceRef } from '../visit/answer.ts';
import type { MouthReason } from '../visit/mouthReason.ts';
import type { AgentFacts, EvidenceLine } from './agentFacts.ts';
import type { BenefitTables } from './benefit/benefitTables.ts';
import type { Disagreement } from './disagreement/types.ts';
import type { LegalRow, OwnLegalStatuses } from './legalStatus.ts';
import type { LocalProtocol } from './local/localProtocol.ts';
import type { Pathway } from './needs/pathway.ts';
import type { ByPlace } from './places.ts';
import type { Jurisdiction, NeedKind, OtherFluoride, PersonFacts, RegimenCriterion, ShelfItem } from './types.ts';

/** An active ingredient in a form and strength: what the rules speak about. A shelf item belongs to exactly one. */
export interface Agent extends AgentFacts {
  readonly id: string;
  readonly name: string;
  /** What it is sold or used as. */
  readonly forms: readonly ShelfItem['form'][];
  /** Needs that it can meet at all; a shelf item can only narrow this. */
  readonly meets: readonly NeedKind[];
  /** Lowest release, whatever the shelf item says. */
  readonly release: ShelfItem['release'];
  /** Holds fluoride: its strength must be known, and falls in this range, ppm. */
  readonly ppmRange?: readonly [low: number, high: number] | undefined;
  /** Never proposed and never left waiting: stands in a plan only once a dentist has chosen and signed it. */
  readonly byChoiceOnly?: EvidenceLine | undefined;
  /** Minutes without eating, drinking or rinsing after use, by place. */
  readonly waitMinutes?: (ByPlace & { readonly source: SourceRef }) | undefined;
}

/**
 * stop: never proposed, a dentist may override with a reason unless the rule says it cannot be.
 * caution: waits for a dentist's signature. warn: shown on the line. info: on request.
 */
export type RuleLevel = 'stop' | 'caution' | 'warn' | 'info';

/** Packs of one of these agents, or that hold one of these, discolour teeth or fillings. */
export interface StainRow {
  readonly agentIds: readonly string[];
  readonly traits: readonly string[];
  readonly source: SourceRef;
}

/** Yes/no facts that a rule may ask for. */
export type FactFlag =
  | 'dogAtHome'
  | 'youngChildAtHome'
  | 'dryMouth'
  | 'dentures'
  | 'braces'
  | 'jawPain'
  | 'strongPasteInUse'
  | 'waterFluoridated';

/** Any one part that holds fires the rule. A part whose fact is unknown makes the rule ask first, unless another part holds. */
export interface Trigger {
  /** Completed years, half-open: below. `unknown` is the strictest of all published ages. */
  readonly ageBelowYears?: ByPlace | undefined;
  readonly ageBelowMonths?: number | undefined;
  readonly allergies?: readonly string[] | undefined;
  /** Allergy to anything in this pack, through the table of allergens. */
  readonly allergyToContents?: true | undefined;
  readonly conditions?: readonly string[] | undefined;
  readonly medicines?: readonly string[] | undefined;
  readonly pregnant?: true | undefined;
  readonly breastfeeding?: true | undefined;
  readonly cannotSpit?: true | undefined;
  readonly flags?: readonly FactFlag[] | undefined;
  readonly weightBelowKg?: number | undefined;
  readonly waterFluorideAboveMgPerL?: number | undefined;
  /** Other fluoride that is taken. */
  readonly otherFluoride?: readonly OtherFluoride[] | undefined;
  readonly levelBelow?: Level | undefined;
  readonly percentAbove?: number | undefined;
  /** The rule holds for every pack that it is about. */
  readonly always?: true | undefined;
}

export interface SafetyRule {
  readonly id: string;
  /** `*` = every agent. */
  readonly agentIds: readonly string[];
  /** Ingredients or properties of the pack (see `itemTraits`). */
  readonly traits?: readonly string[] | undefined;
  /** True: about packs of these agents that hold one of the traits. Otherwise: about these agents, and any other pack with a trait. */
  readonly appliesOnlyIfTrait?: boolean | undefined;
  readonly onlyIn?: readonly Jurisdiction[] | undefined;
  readonly onlyBelowAgeYears?: number | undefined;
  readonly trigger: Trigger;
  readonly level: RuleLevel;
  /** False: no signature lifts it. Only for `stop`; absent = a dentist may override with a reason. */
  readonly overridable?: false | undefined;
  /** Ends the clause after "not offered, because", behind what holds for this person: "asthma: its label names it". */
  readonly because: string;
  /** What to do instead, or what to check. */
  readonly action: string;
  readonly source: SourceRef;
}

export interface Interaction {
  readonly id: string;
  readonly agentIds: readonly string[];
  /** Where given, the first pack must also hold one of these. */
  readonly traits?: readonly string[] | undefined;
  readonly withAgentIds: readonly string[];
  /** The second pack also counts when it holds one of these, whatever its agent. */
  readonly withTraits?: readonly string[] | undefined;
  /** `regimen`: never both in one plan. `day`, `session`: kept apart in time. */
  readonly apart: 'regimen' | 'day' | 'session';
  /** For `session`: minutes between the two, either order. Absent: nothing is kept apart by this row. */
  readonly apartMinutes?: number | undefined;
  readonly level: RuleLevel;
  readonly overridable?: false | undefined;
  readonly because: string;
  readonly action: string;
  readonly source: SourceRef;
}

/** What in a pack an allergy is about. An allergy without a row cannot be matched: every pack asks first. */
export interface AllergenMatch {
  readonly agentIds: readonly string[];
  readonly traits: readonly string[];
}

/** Words of one medicine, allergy or condition; private ones are hidden by "Show patient". */
export interface ListedId {
  readonly label: string;
  readonly private: boolean;
}

/** Amount of fluoride paste by age, completed years, half-open. */
export interface PasteAmount {
  readonly fromAgeYears: number;
  readonly belowAgeYears: number;
  readonly kind: 'smear' | 'pea' | 'ribbon';
  readonly amount: string;
  readonly amountG: number;
  /** Strengths to take first, ppm, both ends included. */
  readonly preferredPpm: readonly [low: number, high: number];
  readonly note: string;
  readonly source: SourceRef;
}

/** Most varnish per visit by age. */
export interface VarnishAmount {
  readonly fromAgeYears: number;
  readonly belowAgeYears: number;
  readonly amountMl: number;
  readonly note: string;
  readonly source: SourceRef;
}

/** Share of a mouthful that is taken as swallowed where nobody measured it. */
export interface SwallowedShare {
  readonly fromAgeYears: number;
  readonly belowAgeYears: number;
  readonly fraction: number;
  readonly source: SourceRef;
}

/** One named limit for one age band. */
export interface FluorideLimit {
  readonly name: string;
  readonly kind: 'upper-intake-level' | 'safe-level' | 'label-cap' | 'intake-target';
  readonly unit: 'mg/day' | 'mg/kg/day';
  readonly fromAgeMonths: number;
  readonly belowAgeMonths: number;
  readonly value: number;
  /** Shown beside the others and keeps nothing out, as the practice chose where sources disagree. */
  readonly shownOnly?: true | undefined;
  readonly source: SourceRef;
}

/** Most fluoride in one pack. */
export interface PackLimit {
  readonly id: string;
  readonly name: string;
  readonly mgF: number;
  readonly source: SourceRef;
}

/** LMS row of a growth reference, both sexes at one age. */
export interface WeightRow {
  readonly ageMonths: number;
  readonly boys: { readonly l: number; readonly mKg: number; readonly s: number };
  readonly girls: { readonly l: number; readonly mKg: number; readonly s: number };
}

/** Fluoride put on at the practice: as often a year as its source allows at most, and what of it is swallowed. */
export interface VisitFluoride {
  readonly agentId: string;
  readonly timesPerYear: number;
  /** Most mg F that is swallowed of one application; absent = all that is put on. */
  readonly mostMgSwallowed?: number | undefined;
  readonly source: SourceRef;
}

export interface FluorideTables {
  readonly limits: readonly FluorideLimit[];
  readonly weights: readonly WeightRow[];
  readonly swallowed: readonly SwallowedShare[];
  readonly atVisit: readonly VisitFluoride[];
  /** Strength of the varnish where it is not on the shelf, mg F per mL. */
  readonly varnishMgPerMl: number;
  /** A daily rinse that the person has already, by its label. */
  readonly homeRinse: { readonly ppm: number; readonly amountMl: number; readonly source: SourceRef };
  /** mg F per kg from which a swallowing is an emergency. */
  readonly emergencyMgPerKg: number;
}

/** What a published list of care gives at a level: the need, and the agents it names, first choice first. */
export interface CareRow {
  readonly protocols: readonly string[];
  readonly level: Level;
  readonly fromAgeYears: number;
  readonly belowAgeYears: number;
  /** Neutral name of the published table, with its year. */
  readonly table: string;
  readonly needs: readonly { readonly kind: NeedKind; readonly agentIds?: readonly (readonly string[])[] | undefined }[];
  readonly source: SourceRef;
}

export interface RecallRow {
  /** Protocol ids; empty = bounds for every protocol without rows of its own. */
  readonly protocols: readonly string[];
  readonly level?: Level | undefined;
  readonly fromAgeYears: number;
  readonly belowAgeYears: number;
  readonly fromMonths: number;
  readonly toMonths: number;
  readonly table: string;
  readonly source: SourceRef;
}

export interface OldBitewingRow {
  readonly fromAgeYears: number;
  readonly belowAgeYears: number;
  readonly raised: boolean;
  readonly fromMonths: number;
  readonly toMonths: number;
  readonly label: string;
  readonly source: SourceRef;
}

/** A caution that a leaflet must print when it applies. Printed whatever the status of its source. */
export interface Caution {
  readonly id: string;
  /** English meaning; the wording per language stands with the leaflet texts. */
  readonly text: string;
  readonly appliesTo: {
    readonly agentIds?: readonly string[] | undefined;
    readonly traits?: readonly string[] | undefined;
    /** Besides, an item of one of these must be there too. */
    readonly withAgentIds?: readonly string[] | undefined;
    readonly belowAgeYears?: number | undefined;
  };
  readonly source: SourceRef;
}

/** Who must not be given a suggestion that drops, delays or limits food. */
export interface FoodLimitRules {
  readonly belowAgeYears: number;
  readonly conditions: readonly string[];
  readonly medicines: readonly string[];
  readonly source: SourceRef;
}

/** Advice that a mouth asks for, whatever the level. The wording per language stands with the leaflet texts under the same id. */
export interface Advice {
  readonly id: string;
  readonly mouths: readonly MouthReason[];
  /** Only with one of these appliances or conditions noted; absent = always. */
  readonly onlyWith?: readonly string[] | undefined;
  /** What it touches: `food` changes what, when or how somebody eats or drinks, and is held back where food may not be limited. */
  readonly family: 'care' | 'food' | 'bottle-or-cup' | 'afterwards';
  /** Completed years, half-open. */
  readonly fromAgeYears?: number | undefined;
  readonly belowAgeYears?: number | undefined;
  /** For the professional, as it stands in the plan. */
  readonly says: string;
  /** False: for the professional alone. */
  readonly onLeaflet: boolean;
  readonly source: SourceRef;
}

/** Rules that need arithmetic or the practice's settings, so that they stand in code; their words and sources stand here. */
export type PlanRuleId =
  | 'P01' // hypochlorite without the practice's own protocol
  | 'P02' // never by default
  | 'P05' // agent not in the tables
  | 'P06' // fluoride strength unknown or outside its agent's range
  | 'P08' // much fluoride in one pack where a young child lives
  | 'P09' // more than a smear under 6 months, or under 2 years without a weight
  | 'P10' // over an upper level of fluoride
  | 'P11' // ingredients of the pack not checked
  | 'P12' // xylitol above the planner's limit per kg
  | 'P14' // fluoride at one visit reaches the emergency dose if swallowed
  | 'P15' // care for teeth in a mouth without any
  | 'P16' // legal status not known at this place
  | 'P17' // not sold or not allowed at this place
  | 'P18' // a weight that does not fit the age
  | 'P19' // a course of chlorhexidine without an end
  | 'P20' // a course of chlorhexidine longer than any label gives
  | 'P21' // outside the practice's own protocol
  | 'P23'; // acid saliva substitute beside natural teeth
export interface PlanRule {
  readonly because: string;
  readonly source: SourceRef;
  readonly overridable: boolean;
}

/** All tables that a plan needs, passed in so that an old plan can be replayed with the edition that made it. */
export interface RegimenTables {
  readonly agents: readonly Agent[];
  readonly rules: readonly SafetyRule[];
  readonly interactions: readonly Interaction[];
  readonly planRules: Readonly<Record<PlanRuleId, PlanRule>>;
  /** mg F in one pack for the home, above which P08 warns where a young child lives. */
  readonly packWarnMg: number;
  /** How each agent may be given, by place. */
  readonly legalStatuses: readonly LegalRow[];
  readonly allergenMatches: Readonly<Record<string, AllergenMatch>>;
  /** Every id that an answer may hold, with its words. An id outside these lists is not understood, and is no proof of absence. */
  readonly allergies: Readonly<Record<string, ListedId>>;
  readonly conditions: Readonly<Record<string, ListedId>>;
  readonly medicines: Readonly<Record<string, ListedId>>;
  /** Questions that fill a fact, by fact. */
  readonly askFor: Readonly<Partial<Record<keyof PersonFacts | 'level', readonly string[]>>>;
  /** Below this age pregnancy and breast-feeding are not asked and do not apply. */
  readonly pregnancyFromAgeYears: number;
  readonly pasteAmounts: readonly PasteAmount[];
  readonly varnishAmounts: readonly VarnishAmount[];
  readonly fluoride: FluorideTables;
  /** g per kg of body weight, below `belowAgeYears`. */
  readonly xylitolLimit: {
    readonly belowAgeYears: number;
    readonly perUseGPerKg: number;
    readonly perDayGPerKg: number;
    readonly source: SourceRef;
  };
  readonly highestHypochloritePercent: number;
  readonly care: readonly CareRow[];
  /** For clinicians only. */
  readonly benefit: BenefitTables;
  /** Published pathways, to lay side by side. What a plan is made from stands in `care`. */
  readonly pathways: readonly Pathway[];
  readonly recall: readonly RecallRow[];
  readonly oldBitewings: readonly OldBitewingRow[];
  readonly cautions: readonly Caution[];
  readonly staining: readonly StainRow[];
  readonly advice: readonly Advice[];
  readonly foodLimits: FoodLimitRules;
  /** Where sources disagree, and what a practice can choose; `settleTables` applies the choice. Absent = nothing to choose. */
  readonly disagreements?: readonly Disagreement[] | undefined;
}

export interface PlanSettings {
  readonly jurisdiction: Jurisdiction;
  /** Legal statuses that the practice set itself, by agent id. */
  readonly legal?: OwnLegalStatuses | undefined;
  /** The practice's own protocols that hold on the day of the plan. */
  readonly localProtocols?: readonly LocalProtocol[] | undefined;
  readonly bitewingMonths?: Readonly<Record<Level, readonly [number, number]>> | null | undefined;
  /** What decides between regimens that fit alike; absent = fewest tasks, then lowest cost, then fewest packs. */
  readonly regimenOrder?: readonly RegimenCriterion[] | undefined;
  /** The practice considers fluoride drops or tablets: the schedule is shown, nothing is added. Absent = it does not. */
  readonly considersSupplements?: boolean | undefined;
  /** Tasks a day that this person accepts; absent = not said, any number. */
  readonly mostTasksPerDay?: number | undefined;
}
