import type { Level } from '../risk/types.ts';
import type { SourceRef } from '../visit/answer.ts';
import type { ProtocolName } from './local/localProtocol.ts';

/** Whose law and labels hold. `by-hand`: another place, whose rules the practice sets itself; its ages are the strictest, as where unknown. */
export type Jurisdiction = 'US' | 'UK' | 'EU' | 'by-hand' | 'unknown';

/** Known, or unknown. `undefined` is never read as no. */
export type Known<T> = T | undefined;

/**
 * What the safety rules ask of a person. Every field may be unknown; a rule whose fact is unknown blocks the item
 * ("ask first"), it never passes it.
 */
export interface PersonFacts {
  readonly ageYears: number;
  readonly ageMonths: number;
  readonly weightKg?: Known<number>;
  readonly pregnant?: Known<boolean>;
  readonly breastfeeding?: Known<boolean>;
  readonly canSpit?: Known<boolean>;
  /** Ids of `content/allergens.ts`, e.g. 'milk-protein'; an empty list = asked, none. */
  readonly allergies?: Known<readonly string[]>;
  /** Ids of `content/medicines.ts` classes; an empty list = asked, none. */
  readonly medicines?: Known<readonly string[]>;
  /** Ids of `content/conditions.ts`, e.g. 'asthma-severe', 'phenylketonuria'; an empty list = asked, none. */
  readonly conditions?: Known<readonly string[]>;
  readonly dogAtHome?: Known<boolean>;
  readonly youngChildAtHome?: Known<boolean>;
  readonly dryMouth?: Known<boolean>;
  readonly dentures?: Known<boolean>;
  readonly braces?: Known<boolean>;
  readonly jawPain?: Known<boolean>;
  /** mg/L of the drinking water. */
  readonly waterFluorideMgPerL?: Known<number>;
  /** Tap water drunk and cooked with, L a day. Unknown leaves the fluoride sum a lower bound. */
  readonly waterLitresPerDay?: Known<number>;
  /** Other fluoride than paste and water; an empty list = asked, none. */
  readonly otherFluoride?: Known<readonly OtherFluoride[]>;
  /** Of the salt that is taken, as on its pack. */
  readonly saltFluorideMgPerKg?: Known<number>;
  readonly saltGPerDay?: Known<number>;
  readonly supplementFluorideMgPerDay?: Known<number>;
  /** Days on which varnish was put on in the last 12 months; 0 = asked, none. */
  readonly varnishDaysPerYear?: Known<number>;
  /** A paste of 5,000 ppm is in use already. */
  readonly strongPasteInUse?: Known<boolean>;
  /** Fluoride is added to the water at home, at work or at school. */
  readonly waterFluoridated?: Known<boolean>;
}

/** What else brings fluoride: swallowed at home, rinsed with, or put on at the practice. `other`: something that may hold fluoride. */
export type OtherFluoride = 'fluoridated-salt' | 'fluoride-tablets-or-drops' | 'naf-rinse-daily' | 'professional-gel' | 'other';

export type NeedKind =
  | 'fluoride-base'
  | 'fluoride-extra'
  | 'professional-fluoride'
  | 'antimicrobial'
  | 'acid-control'
  | 'sweetener'
  | 'calcium-phosphate'
  | 'saliva'
  | 'sealing'
  | 'diet'
  | 'acid-wear-advice'
  | 'referral';

export interface Need {
  readonly kind: NeedKind;
  readonly state: 'needed' | 'undecided' | 'not-needed';
  /** One sentence saying why, in plain words. */
  readonly because: string;
  /** Agents that the list of care names for this need at this level, in tiers, first choice first. Absent = any agent that meets it. */
  readonly agentIds?: readonly (readonly string[])[] | undefined;
  readonly sources: readonly SourceRef[];
}

/** What patients call an item, by language. Absent or blank = the practice has no name for it in that language yet. */
export type LeafletName = Readonly<Record<'en' | 'es', string>> & Readonly<Partial<Record<'fr' | 'ar', string | undefined>>>;

/** One thing in the practice's cupboard, named by ingredient and strength, never by a maker. */
export interface ShelfItem {
  readonly id: string;
  /** e.g. "Paste, sodium fluoride 1.1 % (4,977 ppm F)". */
  readonly name: string;
  readonly leafletName: LeafletName;
  /** Agent id of `content/agents.ts`, e.g. 'F_PASTE_STD'. */
  readonly agentId: string;
  readonly form: 'paste' | 'rinse' | 'gel' | 'varnish' | 'gum' | 'lozenge' | 'spray' | 'drops' | 'powder' | 'sealant';
  /** Ingredients that a rule may look at: 'alcohol', 'aspartame', 'milk protein', 'sodium lauryl sulfate', ... Undefined = pack not checked: every trait rule then asks first. */
  readonly traits: readonly string[] | undefined;
  readonly compound?: 'NaF' | 'SnF2' | 'Na2PO3F' | 'AgF(NH3)2' | undefined;
  readonly percent?: number | undefined;
  readonly fluoridePpm?: number | undefined;
  readonly pH?: number | undefined;
  readonly packAmount?: { readonly value: number; readonly unit: 'g' | 'mL' | 'piece' } | undefined;
  readonly priceCents?: number | undefined;
  /** What it tastes of, in the practice's words: "mint". Absent = not noted; "none" = no flavour. */
  readonly flavour?: string | undefined;
  /** The strength as the label has it. `percent` and `fluoridePpm` are worked out from it. Absent = typed as percent or ppm. */
  readonly label?: LabelStrength | undefined;
  /** Packs at which to order more; whole, 0 or more. Absent = not set. */
  readonly minimumLevel?: number | undefined;
  /** Said by hand. Of an item whose packs are counted, the plan goes by the count (`core/shelf/withStock`). */
  readonly inStock: boolean;
  /** Who may release it. `prescription` and `dentist` wait for a signature. */
  readonly release: 'anyone' | 'prescription' | 'dentist';
  readonly meets: readonly NeedKind[];
  readonly use: {
    readonly timesPerDay: number;
    readonly amount: string;
    readonly amountG?: number | undefined;
    readonly amountMl?: number | undefined;
    readonly courseDays?: number | undefined;
    readonly atVisit?: boolean | undefined;
  };
}

/** The strength in the words of the label. */
export interface LabelStrength {
  readonly value: number;
  /** Percent of the compound, percent of the fluoride ion, or ppm fluoride. */
  readonly of: 'compound' | 'ion' | 'ppm';
  /** Weight in weight, or weight in volume. Absent = the label does not say. */
  readonly per?: 'w/w' | 'w/v' | undefined;
}

export type ExclusionLevel = 'stop' | 'caution' | 'ask-first';

export interface Exclusion {
  readonly shelfItemId: string;
  readonly ruleId: string;
  readonly level: ExclusionLevel;
  /** Clause after "not offered, because": "milk allergy". */
  readonly because: string;
  /** Question ids to ask, where level is ask-first. */
  readonly ask?: readonly string[] | undefined;
  /** The clause tells something that "Show patient" hides. */
  readonly private?: boolean | undefined;
  /** A dentist in person may lift this stop with a reason. */
  readonly overridable?: boolean | undefined;
  /** What is allowed instead of something stopped, or who decides, as a sentence. */
  readonly instead?: string | undefined;
  readonly source: SourceRef;
}

export interface PlanLine {
  readonly shelfItemId: string;
  readonly name: string;
  readonly meets: readonly NeedKind[];
  readonly state: 'proposed' | 'waiting-for-signature' | 'signed';
  readonly signedBy?: SignedBy | undefined;
  readonly use: ShelfItem['use'];
  /** Instructions that differ by age (smear, pea, ribbon). */
  readonly amountNote?: string | undefined;
  /** Size of a paste amount at this age. */
  readonly amountKind?: 'smear' | 'pea' | 'ribbon' | undefined;
  readonly because: readonly string[];
  /** Worked out for this person: silver fluoride at a visit, the length of a course, a day of xylitol. Absent = nothing to work out. */
  readonly dose?: readonly string[] | undefined;
  readonly warnings: readonly { readonly ruleId: string; readonly text: string; readonly source: SourceRef }[];
  /** What may be told on request. Absent = nothing, and in plans of earlier editions. */
  readonly remarks?: PlanLine['warnings'] | undefined;
  readonly sources: readonly SourceRef[];
  /** The practice's own protocol that covers this person and pack. */
  readonly byProtocol?: ProtocolName | undefined;
}

/** Who let an item go, and on what: in person, on a standing order, or against a rule with a reason. */
export interface SignedBy extends Pick<SignedItem, 'standingOrder' | 'override' | 'packs' | 'until'> {
  readonly name: string;
  readonly at: string;
}

/** An item that a member with the right to sign has looked at and does not release. It is not proposed again at this visit. */
export interface RefusedItem {
  readonly shelfItemId: string;
  readonly by: string;
  /** UTC. */
  readonly at: string;
  readonly reason: string;
}

export interface FluorideIntake {
  readonly complete: boolean;
  readonly unknownSources: readonly string[];
  readonly mgPerDay: number;
  readonly mgPerKgPerDay: number | null;
  readonly weightKg: number | null;
  readonly weightAssumed: boolean;
  readonly limits: readonly {
    readonly name: string;
    readonly kind: 'upper-intake-level' | 'safe-level' | 'label-cap' | 'intake-target';
    readonly value: number;
    readonly unit: 'mg/day' | 'mg/kg/day';
    readonly share: number | null;
    /** Keeps nothing out, as the practice chose where sources disagree. */
    readonly shownOnly?: true | undefined;
    readonly source: SourceRef;
  }[];
  readonly acute: {
    readonly mgIfAllSwallowed: number;
    readonly mgPerKg: number | null;
    readonly action: 'poison-centre-now' | 'emergency-care-now';
  };
  /** What each source brings. Absent in plans that were stored before sources were kept apart. */
  readonly parts?: readonly FluoridePart[] | undefined;
}

/** One source in the sum. */
export interface FluoridePart {
  readonly name: string;
  /** Over a year where it is not daily; null while a part of it is not known. */
  readonly mgPerDay: number | null;
  /** What is not used every day, on the day of its use: mg F, and per kg. Null for what is, and while not known. */
  readonly onItsDay: { readonly mg: number; readonly mgPerKg: number | null; readonly daysPerYear: number } | null;
  /** Where strength, amount and number of uses come from; empty where all of it was told. */
  readonly sources: readonly SourceRef[];
}

/** What the practice may put first when several regimens fit. */
export type RegimenCriterion = 'tasks' | 'cost' | 'items';

/** How long one pack lasts at the use of the plan. */
export interface Supply {
  readonly shelfItemId: string;
  /** Whole days, rounded down; null while pack size or amount is not known. */
  readonly days: number | null;
  /** Local date, ISO; null where nothing is known, nothing has begun, or a course ends before the pack does. */
  readonly refillOn: string | null;
}

/** One way to meet the needs from this shelf. Every pack in it serves a need that nothing else in it serves, unless it is signed. */
export interface Regimen {
  /** Ids of its packs, sorted, joined by '+'. */
  readonly id: string;
  readonly lines: readonly PlanLine[];
  /** It leaves needs open, or fits less well, so that it asks for fewer tasks a day. Absent = no. */
  readonly isLighter?: boolean | undefined;
  /** What it is best at among the regimens found, in words. */
  readonly why: readonly string[];
  readonly tasksPerDay: number;
  /** Integer cents; null while a price is missing, never 0 for that. */
  readonly monthlyCostCents: number | null;
  /** Packs for the home. */
  readonly supply: readonly Supply[];
  /** The earliest of `supply`. */
  readonly refillOn: string | null;
  readonly unmet: Plan['unmet'];
  readonly fluoride: FluorideIntake;
  readonly fluorideSentence: string;
}

/** The smallest set of things that cannot hold together, each as a plain clause. */
export interface RegimenConflict {
  /** First the need that stays open, then those more important ones, which are met, that it cannot be met together with. */
  readonly needs: readonly NeedKind[];
  readonly constraints: readonly {
    readonly id: string;
    readonly says: string;
    /** The clause tells something that "Show patient" hides. */
    readonly private?: boolean | undefined;
  }[];
}

/** Home care that the person stopped or turned down at an earlier visit, with the reason as it was kept. */
export interface DroppedCare {
  readonly shelfItemId: string;
  /** In the words of the list of reasons ('taste', 'price', 'stain', 'time'), or the person's own. */
  readonly why?: string | undefined;
}

/** A pack that could take the place of one that was dropped before, or could be, because it is better in that respect. */
export interface Swap {
  readonly insteadOf: string;
  readonly shelfItemId: string;
  readonly because: 'taste' | 'price' | 'stain' | 'time';
  /** A clause: "another taste". */
  readonly says: string;
}

export interface Interval {
  readonly fromMonths: number;
  readonly toMonths: number;
  readonly table: string;
  readonly source: SourceRef;
}

/** A first plan: what is proposed, what waits, what is not offered and why. Nothing here is released by being here. */
export interface Plan {
  /** Advice that this mouth asks for, in the order of the table. */
  readonly advice: readonly AdviceLine[];
  /** Empty with a reason while a fact or the confirmed level is missing. */
  readonly lines: readonly PlanLine[];
  /** Up to two other ways to meet the same need, by id of the line they could replace. */
  readonly alternatives: readonly { readonly insteadOf: string; readonly line: PlanLine }[];
  readonly notOffered: readonly Exclusion[];
  /** Not released by a member who might have signed. Absent in plans that were stored before refusals were kept. */
  readonly refused?: readonly (RefusedItem & { readonly name: string })[] | undefined;
  readonly unmet: readonly { readonly need: NeedKind; readonly because: string }[];
  readonly fluoride: FluorideIntake;
  /** "At least 0.031 mg/kg a day from paste (water and other fluoride at home not known)". */
  readonly fluorideSentence: string;
  readonly recall: Interval | null;
  readonly bitewings: { readonly fromMonths: number; readonly toMonths: number; readonly basis: 'practice-setting' } | null;
  /** When bitewings are next due by the practice's own setting; null while the setting, the level or the last date is not known. */
  readonly bitewingsDue: { readonly last: string; readonly fromMonth: string; readonly toMonth: string; readonly isDue: boolean } | null;
  /** The same in words, with what is not known; empty where bitewings do not apply. */
  readonly bitewingsSentence: string;
  /** The superseded table, shown as such beside the practice's own setting. */
  readonly bitewingsOldTable: {
    readonly fromMonths: number;
    readonly toMonths: number;
    readonly label: string;
    readonly source: SourceRef;
  } | null;
  readonly tasksPerDay: number;
  readonly monthlyCostCents: number | null;
  readonly cautions: readonly { readonly id: string; readonly source: SourceRef }[];
  /** Whether any suggestion may drop, delay or limit food. */
  readonly diet: FoodLimit;
  /** Best first, five at most, each with another set of agents. Absent in plans of earlier editions, as are the four below. */
  readonly regimens?: readonly Regimen[] | undefined;
  /** Id of the regimen that `lines`, `unmet`, tasks, cost and fluoride are of. */
  readonly chosenRegimen?: string | undefined;
  /** Why needs stay open; null where none does for a reason that can be named. */
  readonly conflict?: RegimenConflict | null | undefined;
  /** What a dentist may choose by the practice's own protocol; nobody has chosen it yet. */
  readonly byProtocol?: readonly { readonly shelfItemId: string; readonly name: string; readonly protocol: ProtocolName }[] | undefined;
  /** Only where the practice considers supplements. */
  readonly supplements?: SupplementAdvice | undefined;
  readonly swaps?: readonly Swap[] | undefined;
  /** Packs that came after the others because they were dropped before. */
  readonly droppedBefore?: readonly (DroppedCare & { readonly name: string })[] | undefined;
}

/** What the published schedule says of a fluoride supplement, for who decides on one. */
export interface SupplementAdvice {
  /** null: none by the table, a fact is missing, or a rule stands against it. */
  readonly mgPerDay: number | null;
  readonly says: string;
  /** Rules that stop it; else what has to be asked or checked first. */
  readonly against: readonly { readonly ruleId: string; readonly because: string; readonly source: SourceRef }[];
  /** Questions to ask first. */
  readonly ask: readonly string[];
  readonly disagreement: string;
  readonly sources: readonly SourceRef[];
}

export interface AdviceLine {
  readonly id: string;
  readonly says: string;
  readonly onLeaflet: boolean;
  readonly source: SourceRef;
}

/** What may be suggested about food. `after-only`: what to do after eating, with referral; `sweet-bottle-only`: besides that, what is in a sweet bottle or cup. */
export interface FoodLimit {
  readonly allowed: 'any' | 'sweet-bottle-only' | 'after-only';
  readonly because: string;
  /** Questions to ask before more may be suggested. */
  readonly ask: readonly string[];
  readonly private: boolean;
  readonly source: SourceRef;
}

/** What the plan needs to know of the confirmed level. */
export interface ConfirmedLevel {
  readonly level: Level;
  readonly protocol: string;
  readonly edition: string;
  readonly by: string;
  readonly at: string;
  readonly reason?: string | undefined;
  readonly changedFrom?: Level | undefined;
}

/** A signature for one item of one visit, given by a member with the right or by a named and dated standing order. */
export interface SignedItem {
  readonly shelfItemId: string;
  readonly by: string;
  readonly at: string;
  /** Packs that it covers in all; absent = one. */
  readonly packs?: number | undefined;
  /** Last local date on which a pack may go by it; absent = none was said. */
  readonly until?: string | undefined;
  readonly standingOrder?: { readonly name: string; readonly date: string; readonly by?: string | undefined } | undefined;
  /** Present when it overrides a stop rule; must carry a reason. */
  readonly override?: { readonly ruleId: string; readonly reason: string } | undefined;
}
