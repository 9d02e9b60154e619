import type { ControlSpan } from '../checks/controlSpan.ts';
import type { Leaflet, LeafletLanguage } from '../leaflet/types.ts';
import type { NoteSection } from '../note/noteSections.ts';
import type { Meter, PastReading, ReadingAssessment, StudySwab, SwabLot, SwabReading } from '../reading/types.ts';
import type { RhythmId } from '../regimen/dayStrip/types.ts';
import type { ChosenPositions } from '../regimen/disagreement/types.ts';
import type { OwnLegalStatuses } from '../regimen/legalStatus.ts';
import type { LocalProtocol } from '../regimen/local/localProtocol.ts';
import type {
  ConfirmedLevel,
  Jurisdiction,
  Need,
  PersonFacts,
  Plan,
  RefusedItem,
  RegimenCriterion,
  ShelfItem,
  SignedItem,
} from '../regimen/types.ts';
import type { Level, LevelChange, RiskResult } from '../risk/types.ts';
import type { Answers, SourceRef, UnknownKind } from './answer.ts';
import type { DescribedDays } from './describedDays.ts';
import type { MouthReason } from './mouthReason.ts';
import type { Home } from './patientProfile.ts';

/** What was seen on one surface. Sound surfaces are not listed; `allExamined` on the visit makes their absence mean sound. */
export interface Finding {
  /** ISO 3950 two-digit tooth, e.g. "13". */
  readonly tooth: string;
  readonly surface?: 'occlusal' | 'mesial' | 'distal' | 'facial' | 'lingual' | 'root' | undefined;
  readonly kind:
    | 'white-spot'
    | 'cavity'
    | 'dentine-radiograph'
    | 'enamel-radiograph'
    | 'root-lesion'
    | 'restoration'
    | 'restoration-defective'
    | 'root-exposed'
    | 'acid-wear';
  readonly activity?: 'active' | 'inactive' | 'not-assessed' | undefined;
  /** Since the last examination, or untreated in a new patient. */
  readonly isNew: boolean;
}

/** A mouth that needs another answer first, decided before any level. */
export interface MouthDecision {
  readonly kind: 'level-applies' | 'level-does-not-apply' | 'level-with-note';
  readonly reasons: readonly MouthReason[];
  readonly sentences: readonly string[];
  /** What the mouth means for a swab; null where the usual site is there. */
  readonly swab: { readonly site: 'none' | 'may-be-missing' | 'may-be-covered'; readonly says: string } | null;
  /** Questions that make no sense in this mouth: not asked and not missing. What was answered before stays on the record. */
  readonly notAsked: readonly string[];
}

export interface PracticeSettings {
  readonly jurisdiction: Jurisdiction;
  /** Legal statuses that the practice looked up and set itself, by agent id; absent = none. */
  readonly legal?: OwnLegalStatuses | undefined;
  /** Protocol id per age band, first match wins. */
  readonly methodByAge: readonly { readonly fromAgeYears: number; readonly belowAgeYears: number | null; readonly protocol: string }[];
  /** Months between bitewings by level, the practice's own; null = not set yet. */
  readonly bitewingMonths: Readonly<Record<Level, readonly [number, number]>> | null;
  readonly lowSalivaMeansExtreme: boolean;
  readonly stimulatedFlowLowAtMostMlPerMin: 0.5 | 0.7;
  /** Parts of the chart note in the practice's own order; absent = every part that holds nothing private. */
  readonly note?: readonly NoteSection[] | undefined;
  /** What decides between regimens that fit alike; absent = fewest tasks, then lowest cost, then fewest packs. */
  readonly regimenOrder?: readonly RegimenCriterion[] | undefined;
  /** Shows what the published schedule says of fluoride drops or tablets; absent = it does not. */
  readonly considersSupplements?: boolean | undefined;
  /** Position taken where sources disagree, by the id of the disagreement; one that is absent goes by what the content proposes. */
  readonly disagreements?: ChosenPositions | undefined;
  /** Days from an order of home care to its arrival; absent = not set. */
  readonly reorderLeadDays?: number | undefined;
}

export interface PracticeFile {
  readonly name: string;
  readonly invented: boolean;
  readonly timeZone: string;
  readonly settings: PracticeSettings;
  readonly meters: readonly Meter[];
  readonly lots: readonly SwabLot[];
  readonly shelf: readonly ShelfItem[];
  /** Written by the practice itself; those retired are kept. Absent = none. */
  readonly localProtocols?: readonly LocalProtocol[] | undefined;
}

/** Who speaks today for the person, and how they understand each other. */
export interface Speaker {
  readonly who: 'patient' | 'guardian' | 'carer';
  readonly name?: string | undefined;
  readonly interpreter?: 'not-needed' | 'professional' | 'family' | 'needed-not-there' | undefined;
}

/** A private answer that a professional put on the leaflet on purpose. */
export interface ReleasedAnswer {
  readonly by: string;
  /** UTC. */
  readonly at: string;
  /** Who spoke then: it is printed only while the same speaks. */
  readonly heard?: Speaker['who'] | undefined;
}

/** One item of home care that was agreed, or turned down, at an earlier visit. */
export interface PastCare {
  readonly shelfItemId: string;
  readonly name: string;
  /** Local date, ISO. */
  readonly since: string;
  /** Absent = it was agreed. */
  readonly turnedDown?: 'declined' | 'not-affordable' | undefined;
  /** Last day, once it was stopped. */
  readonly until?: string | undefined;
  readonly adherence?: Adherence | undefined;
  /** Why it was stopped, used less, or turned down. */
  readonly stopReason?: string | undefined;
}

export type Adherence = 'as-agreed' | 'less-often' | 'stopped' | 'not-begun' | 'does-not-know';

/** Something that the person wanted at an earlier visit, in his or her own words, and that was still open then. */
export interface PastGoal {
  readonly id: string;
  readonly text: string;
  /** Local date, ISO. */
  readonly since: string;
}

/** How the days ran when that was last asked at an earlier visit. */
export interface PastRhythm {
  readonly rhythm: RhythmId;
  /** Local date, ISO. */
  readonly askedOn: string;
}

export type GoalState = 'reached' | 'still-on' | 'dropped';

export interface UsedSince {
  readonly adherence: Adherence;
  /** Why less, or why stopped, in words. */
  readonly why?: string | undefined;
}

/** Everything one assessment looks at. The same shape comes from a file, from the server and from the screen's draft. */
export interface VisitInput {
  readonly practice: PracticeFile;
  readonly person: {
    readonly name: string;
    readonly birthDate: string;
    readonly newPatient: boolean;
    /** Each home gets a leaflet of its own, in its language. */
    readonly homes?: readonly Home[] | undefined;
  };
  readonly visit: {
    readonly onDate: string;
    readonly language: LeafletLanguage;
    readonly answers: Answers;
    readonly allExamined?: boolean | undefined;
    readonly findings: readonly Finding[];
    readonly meterId?: string | undefined;
    readonly reading?: SwabReading | undefined;
    readonly pastReadings: readonly PastReading[];
    /** When the person was swabbed for a study of the practice. Absent = not that anybody knows. */
    readonly studySwabs?: readonly StudySwab[] | undefined;
    /** How the controls of meters and lots stood over the day. Absent = not known. */
    readonly controls?: readonly ControlSpan[] | undefined;
    readonly confirmed?: ConfirmedLevel | undefined;
    readonly signed: readonly SignedItem[];
    /** What a member with the right to sign did not release. Absent = nothing. */
    readonly refused?: readonly RefusedItem[] | undefined;
    /** What the person agreed to; absent = use what the plan proposes. */
    readonly agreed?:
      | {
          readonly keep?: string | undefined;
          readonly tryThis?: string | undefined;
          readonly items?: Readonly<Record<string, 'agreed' | 'declined' | 'not-affordable'>> | undefined;
          readonly declinedWhy?: Readonly<Record<string, string>> | undefined;
          /** Which pack was taken in the place of which, by shelf item id; the same pack = none was. */
          readonly instead?: Readonly<Record<string, string>> | undefined;
          /** Id of the regimen that was taken; absent = the best of those found. */
          readonly regimen?: string | undefined;
          /** How many tasks a day the person accepts, or that any number will do; absent = not asked. */
          readonly tasksAccepted?: number | 'any' | undefined;
          /** How the person's days run, as said at this visit; absent = not asked here. A described day says more. */
          readonly rhythm?: RhythmId | undefined;
        }
      | undefined;
    readonly stopUsing?: readonly string[] | undefined;
    /** Date agreed for the next visit, ISO; absent = the shorter end of the recall interval is suggested. */
    readonly nextOn?: string | undefined;
    readonly speaker?: Speaker | undefined;
    /** By question id; default none. */
    readonly released?: Readonly<Record<string, ReleasedAnswer>> | undefined;
    /** What the person wants, in his or her own words. */
    readonly goals?: readonly string[] | undefined;
    /** Goals of earlier visits that were still open. */
    readonly pastGoals?: readonly PastGoal[] | undefined;
    /** What became of them, by id. Absent = not asked. */
    readonly goalsSince?: Readonly<Record<string, GoalState>> | undefined;
    /** Home care agreed or turned down earlier, newest course of each item. */
    readonly pastCare?: readonly PastCare[] | undefined;
    /** How the days ran at the newest earlier visit at which it was said; it holds for a time. Absent = never asked before. */
    readonly pastRhythm?: PastRhythm | undefined;
    /** What became of it since, by shelf item. Absent = not asked. */
    readonly used?: Readonly<Record<string, UsedSince>> | undefined;
    /** What was told of the days: eating, drinking, mouth care. Absent = nothing. */
    readonly acidDay?: DescribedDays | undefined;
    /** Local date of the last correction after the visit was closed; printed on the leaflet. */
    readonly correctedOn?: string | undefined;
  };
}

export interface VisitAssessment {
  readonly ageYears: number;
  readonly ageMonths: number;
  readonly mouth: MouthDecision;
  readonly unknownAnswers: readonly { readonly question: string; readonly kind: UnknownKind }[];
  /** Questions of the safety check still unknown: no home-care item that depends on them is proposed. */
  readonly safetyUnknown: readonly string[];
  /** A weight that does not fit the age, asked back: nothing is computed with it. Absent = none. */
  readonly weightDoubt?: string | undefined;
  readonly facts: PersonFacts;
  readonly reading: ReadingAssessment;
  /** The practice's method on these items; null with a sentence where no level applies or no method fits the age. */
  readonly proposed: RiskResult | null;
  readonly proposedSentence: string;
  readonly compare: readonly RiskResult[];
  readonly couldChange: readonly LevelChange[];
  readonly confirmed: ConfirmedLevel | null;
  readonly needs: readonly Need[];
  readonly plan: Plan;
  /** In the language of the visit. */
  readonly leaflet: Leaflet;
  /** What is printed: one for each home in its language, or the one above. */
  readonly leaflets: readonly Leaflet[];
  readonly sources: readonly SourceRef[];
  readonly versions: { readonly code: string; readonly content: string };
}
