/** What the pages read. Plain types: the server builds them from its own rows, so they are trusted here. */
import type { Leaflet, LeafletLanguage } from '../core/leaflet/types.ts';
import type { FirstReadings } from '../core/reading/expectedFall.ts';
import type { StoredVerdict } from '../core/reading/recomputeReading.ts';
import type { Bound, Meter, ReadingState, SwabLot } from '../core/reading/types.ts';
import type { ConfirmedLevel, ShelfItem, SignedBy } from '../core/regimen/types.ts';
import type { Level } from '../core/risk/types.ts';
import type { VisitCorrection } from '../core/visit/correction.ts';
import type { DaysRecord } from '../core/visit/dayRecord.ts';
import type { DescribedDays } from '../core/visit/describedDays.ts';
import type { PatientProfile } from '../core/visit/patientProfile.ts';
import type { Finding, Speaker, VisitAssessment, VisitInput } from '../core/visit/types.ts';
import type { PastSignature } from '../core/visit/withReleases.ts';
import type { PersonDetails } from './personSchema.ts';

/** One visit as the Visit page needs it; the page runs `assessVisit(input)` itself after every answer. */
export interface VisitBundle {
  readonly visitId: string;
  readonly patientId: string;
  /** Who the person is to the practice: guardians, interpreter, permissions. */
  readonly profile: PatientProfile;
  readonly state: 'open' | 'closed' | 'void';
  readonly input: VisitInput;
  /** Version of every saved field by path; absent = never saved in this visit. */
  readonly fieldVersions: Readonly<Record<string, number>>;
  /** Fields with a value saved in this visit; one that was taken out again has a version but is not here. */
  readonly savedFields: readonly string[];
  readonly lastSavedAt: string | null;
  readonly lastVisitOn: string | null;
  /** Members who may be named as swab takers. */
  readonly members: readonly { readonly id: string; readonly name: string; readonly trainedSwab: boolean; readonly maySign: boolean }[];
  /** Of the visit itself, for a correction after it was closed. */
  readonly visitVersion: number;
  /** What was corrected since it was closed, oldest first. */
  readonly corrections: readonly VisitCorrection[];
  /** The stored assessment of a closed visit; null while open. */
  readonly stored: VisitAssessment | null;
  /** Answers as they were carried into this visit, before anything was asked today: what "was 2 in December" reads. */
  readonly carried?: VisitInput['visit']['answers'] | undefined;
  /** The newest day that was told at a visit before this one; null = none was. */
  readonly earlierDay: EarlierDay | null;
  /** What was said of the described days when the visit closed or was last corrected; null while open, and where no day was told. */
  readonly dayRecord: DaysRecord | null;
}

/** A day told at an earlier visit. */
export interface EarlierDay {
  readonly visitId: string;
  readonly onDate: string;
  readonly told: DescribedDays;
}

/** One value that a field had. */
export interface HistoryEntry {
  /** UTC, or the local date of an earlier visit. */
  readonly at: string;
  readonly by: string | null;
  readonly value: unknown;
  /** `visit`: what an earlier visit closed with. */
  readonly kind: 'saved' | 'corrected' | 'visit';
  readonly reason?: string | undefined;
}

export interface FieldHistory {
  /** Newest first. */
  readonly entries: readonly HistoryEntry[];
}

export interface StoredReading {
  readonly id: string;
  readonly takenAt: string;
  readonly rlu: number | null;
  readonly bound: Bound;
  readonly state: ReadingState;
  readonly reasons: readonly string[];
  readonly meterId: string;
  readonly meterName: string;
  readonly cutoffRlu: number;
  readonly cvAnalytical: number;
  readonly cvWithinPerson: number;
  readonly cvAnalyticalAssumed: boolean;
  readonly cvWithinPersonAssumed: boolean;
  readonly lowestRlu: number;
  readonly highestRlu: number;
  /** What the practice's own studies found on this meter; absent = none yet. */
  readonly own?: Meter['own'];
  /** null = not noted. */
  readonly operator: string | null;
  readonly lotId: string | null;
  /** Local date of its visit. */
  readonly onDate: string | null;
  /** What was told at its visit; null where no number counted, or the visit keeps none. */
  readonly told: StoredVerdict | null;
}

export interface StoredVisit {
  readonly id: string;
  readonly onDate: string;
  readonly kind: string;
  readonly state: 'open' | 'closed' | 'void';
  readonly confirmed: ConfirmedLevel | null;
  readonly level: Level | null;
  readonly findings: readonly Finding[];
  /** Noted by mistake, with the reason. */
  readonly voided: readonly { readonly finding: Finding; readonly reason: string }[];
  readonly corrections: readonly VisitCorrection[];
  /** Null = not noted. */
  readonly speaker: Speaker | null;
  readonly goals: readonly string[];
  /** A day of eating and drinking was told. */
  readonly hasDay: boolean;
  readonly leaflet: Leaflet | null;
}

/** One entry of the history of a person's details: all of them as they stood from then on. */
export interface PersonChange {
  /** UTC. */
  readonly at: string;
  /** Name of the member; null where it is not known. */
  readonly by: string | null;
  readonly action: string;
  readonly reason: string | null;
  /** Undefined once erased. */
  readonly details?: PersonDetails | undefined;
  readonly state?: 'active' | 'merged' | 'erased' | undefined;
}

/** A chart that is read as a part of another. */
export interface MergedChart {
  readonly id: string;
  readonly version: number;
  readonly name: string;
  readonly birthDate: string;
  readonly chartNumber: string | null;
  readonly visits: number;
  readonly merged: Pick<PersonChange, 'at' | 'by' | 'reason'> | null;
}

/** The page of one person: always of the chart that is kept. */
export interface PersonPage {
  readonly id: string;
  readonly version: number;
  readonly details: PersonDetails;
  readonly ageYears: number;
  readonly openVisitId: string | null;
  /** Whose acid day is the newest: that of the open visit, or of the last one at which a day was told. */
  readonly dayVisitId: string | null;
  /** Of this chart and of those merged into it. */
  readonly visits: number;
  readonly mergedCharts: readonly MergedChart[];
  /** Oldest first. */
  readonly history: readonly PersonChange[];
}

/** What the page of leaflets shows. */
export interface LeafletBundle {
  readonly patientId: string;
  /** What is kept of the person; null = not asked. */
  readonly kept: { readonly language: LeafletLanguage | null; readonly largePrint: boolean | null };
  /** What the visit asks for where nothing else is chosen; null = each home asks for its own. */
  readonly asks: LeafletLanguage | null;
  readonly leaflets: readonly Leaflet[];
  /** Left out, because their signature held to a day before today. */
  readonly past: readonly PastSignature[];
}

export interface CoversSaid extends Pick<SignedBy, 'packs' | 'until'> {
  readonly left: number;
}

/** One person over time. */
export interface PersonRecord {
  readonly id: string;
  readonly name: string;
  readonly birthDate: string;
  readonly ageYears: number;
  readonly visits: readonly StoredVisit[];
  readonly readings: readonly StoredReading[];
  /** Visits without a number that can be drawn, with the reason. */
  readonly notTaken: readonly { readonly onDate: string; readonly reason: string }[];
  /** First counted readings of the practice's people, for each meter of this person; absent where they give no summary. */
  readonly firstReadings: readonly (FirstReadings & { readonly meterId: string })[];
  readonly courses: readonly {
    readonly shelfItemId: string;
    readonly name: string;
    readonly state: string;
    readonly from: string;
    readonly to: string | null;
    readonly release: string;
    readonly adherence: string | null;
    readonly signedBy: string | null;
    /** For how many packs for home it was signed, to which day, and how many are left today; null = not signed, or used at the visit. */
    readonly covers: CoversSaid | null;
    readonly reason: string | null;
  }[];
  readonly nextOn: string | null;
}

export interface VersionedShelfItem {
  readonly item: ShelfItem;
  readonly version: number;
}

/** What the practice says of its own meters, swab lots and team. Versions are for the next change. */
export interface PracticeView {
  readonly meters: readonly { readonly meter: Meter; readonly version: number }[];
  readonly lots: readonly { readonly lot: SwabLot; readonly version: number }[];
  readonly members: readonly {
    readonly id: string;
    readonly name: string;
    readonly roles: readonly string[];
    readonly trainedSwab: boolean;
    readonly active: boolean;
    readonly hasPassword: boolean;
    readonly hasCode: boolean;
    readonly version: number;
  }[];
  readonly hideAfter: {
    readonly minutes: number;
    /** As proposed, not set by the practice. */
    readonly isProposal: boolean;
    readonly version: number;
  };
}
