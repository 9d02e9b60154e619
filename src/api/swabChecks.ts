/** Controls, studies and training: what the pages read, and the bodies they send. */
import { z } from 'zod';
import {
  type Control,
  type ControlPlan,
  STOP_ANSWERS,
  type StopOverride,
  type StopReadings,
  type StopResolution,
} from '../core/checks/control.ts';
import type { MeterCheck, MeterCheckPlan } from '../core/checks/meterCheck.ts';
import type { Study, StudyReading } from '../core/checks/study.ts';
import type { Training } from '../core/checks/training.ts';
import { type Bound, type Meter, STUDY_KINDS, type SwabLot } from '../core/reading/types.ts';
import { MULTI_RULES } from '../core/stats/multiRules.ts';

/** Everything that Swab checks shows. The page judges the controls itself, by the same code as a visit. */
export interface ChecksView {
  /** Local date. */
  readonly today: string;
  readonly timeZone: string;
  readonly meters: readonly { readonly meter: Meter; readonly version: number }[];
  readonly lots: readonly SwabLot[];
  readonly plans: readonly { readonly plan: ControlPlan; readonly version: number }[];
  /** Oldest first, void ones too. */
  readonly controls: readonly Control[];
  /** Of meters themselves, oldest first, void ones too. */
  readonly meterChecks: readonly MeterCheck[];
  readonly meterCheckPlans: readonly { readonly plan: MeterCheckPlan; readonly version: number }[];
  /** Those of today. */
  readonly overrides: readonly StopOverride[];
  /** What was done about stops, whenever it was. */
  readonly resolutions: readonly StopResolution[];
  /** What was said of readings before a stop, whenever it was. */
  readonly questions: readonly { readonly question: StopReadings; readonly version: number }[];
  /** The newest first. */
  readonly studies: readonly StudyLine[];
  readonly training: readonly Training[];
  /** Members who are active. */
  readonly members: readonly {
    readonly id: string;
    readonly name: string;
    readonly roles: readonly string[];
    readonly trainedSwab: boolean;
  }[];
}

/** A study without its run sheet. */
export interface StudyLine extends Omit<Study, 'runs'> {
  readonly version: number;
  readonly swabs: number;
  /** Swabs with a reading that counts. */
  readonly taken: number;
}

/** One study with its run sheet and its readings. */
export interface StudyView {
  readonly study: Study;
  readonly version: number;
  /** Void ones too. */
  readonly readings: readonly StudyReading[];
  readonly people: readonly StudyPersonLine[];
}

/** One person of a study who is or was linked to a chart. */
export interface StudyPersonLine {
  readonly part: string;
  /** Null = linked to nobody. */
  readonly name: string | null;
  readonly version: number;
}

/** The readings of people that a stop may put under question, oldest first. */
export interface ReadingsBeforeStop {
  readonly question: StopReadings;
  /** 0 = nothing was said of them yet. */
  readonly version: number;
  readonly readings: readonly {
    readonly id: string;
    readonly visitId: string | null;
    readonly name: string;
    readonly takenAt: string;
    readonly rlu: number;
    readonly bound: Bound;
    readonly state: 'valid' | 'flagged' | 'void';
  }[];
}

const text = (longest: number) => z.string().trim().min(1).max(longest);
const id = text(100);
const bound = z.enum(['exact', 'at-most', 'at-least']);
const time = z.iso.datetime({ offset: true, error: 'must be a time with its zone, like 2026-11-25T10:36:00+01:00' });
const rlu = z.number({ error: 'must be a number' }).positive({ error: 'must be above 0' });
const version = z.int().nonnegative();
const reason = text(500);

const solution = z.strictObject({ name: text(200), lot: text(100).optional() });
const note = z.strictObject({
  solution: solution.optional(),
  temperatureDegC: z.number().optional(),
  storage: z.enum(['fridge', 'room', 'fridge-then-room', 'other']).optional(),
});

const did = z.strictObject({ answer: z.enum(STOP_ANSWERS), note: text(500).optional() });

export const NewControl = z.strictObject({
  meterId: id,
  lotId: id,
  rlu,
  bound: bound.optional(),
  takenAt: time.optional(),
  operator: text(200).optional(),
  note: note.optional(),
  did: did.optional(),
});
export type NewControl = z.infer<typeof NewControl>;

export const VoidBody = z.strictObject({ version, reason });

const every = z.discriminatedUnion('kind', [
  z.strictObject({ kind: z.literal('daily') }),
  z.strictObject({ kind: z.literal('weekly-and-new-lot') }),
  z.strictObject({ kind: z.literal('own'), days: z.int().min(1, { error: 'must be a whole number of days, 1 or more' }).max(365) }),
]);
const target = z.strictObject({
  lotId: id,
  meanLn: z.number(),
  sdLn: z.number().positive(),
  count: z.int().nonnegative(),
  from: z.enum(['first-controls', 'comparison', 'hand']),
  since: time.optional(),
  set: z.strictObject({ by: text(200), reason }).optional(),
});
const pastTarget = target.extend({ until: time, isFromItsFirst: z.boolean().optional() });
export const ControlPlanBody = z.strictObject({
  plan: z.strictObject({
    meterId: id,
    every,
    rules: z.array(z.enum(MULTI_RULES)).min(1, { error: 'must have one control rule at least' }),
    solution,
    swabPriceCents: z.int({ error: 'must be whole cents' }).nonnegative().max(1_000_000).optional(),
    targets: z.array(target).max(200),
    pastTargets: z.array(pastTarget).max(1000).optional(),
  }),
  version,
});

/** Mean in RLU and spread as a fraction, as a practice would say them. */
export const TargetBody = z.strictObject({
  meanRlu: z.number({ error: 'must be a number' }).positive({ error: 'must be above 0' }),
  cv: z.number({ error: 'must be a number' }).gt(0, { error: 'must be above 0' }).max(1, { error: 'must be 100 % at most' }),
  reason,
  version,
});
export type TargetBody = z.infer<typeof TargetBody>;

export const UncomparedBody = z.strictObject({ reason });

export const OverrideBody = z.strictObject({ controlId: id, reason });

export const ResolveBody = z.strictObject({ controlId: id.optional(), did });
export type ResolveBody = z.infer<typeof ResolveBody>;
export const QuestionBody = z.strictObject({ decision: z.enum(['under-question', 'left']), reason, version });
export type QuestionBody = z.infer<typeof QuestionBody>;

export const NewStudy = z.strictObject({
  kind: z.enum(STUDY_KINDS),
  meterId: id,
  lotIds: z.array(id).max(20),
  design: z.strictObject({
    medium: z.enum(['atp-solution', 'coated-coupon', 'people']),
    parts: z.int().nonnegative().max(500),
    operators: z.array(text(200)).max(50),
    replicates: z.int().nonnegative().max(100),
    seed: z.int().nonnegative(),
    wantedRatio: z.number().gt(1).optional(),
  }),
  runs: z
    .array(
      z.strictObject({
        index: z.int().nonnegative(),
        part: text(100).optional(),
        operator: text(200).optional(),
        lotId: id.optional(),
        meterId: id.optional(),
        replicate: z.int().nonnegative(),
      }),
    )
    .max(2000),
});
export type NewStudy = z.infer<typeof NewStudy>;

export const NewStudyReading = z.strictObject({
  run: z.int().nonnegative(),
  rlu,
  bound: bound.optional(),
  takenAt: time.optional(),
  operator: text(200).optional(),
  lotId: id.optional(),
});
export type NewStudyReading = z.infer<typeof NewStudyReading>;

export const StudyTable = z.strictObject({ text: z.string().max(900_000, { error: 'is longer than 900,000 letters' }) });
/** The chart behind one person of a study, null to take the link away; `version` as last seen, 0 for a first link. */
export const StudyPersonBody = z.strictObject({ part: text(100), patientId: id.nullable(), version });
export type StudyPersonBody = z.infer<typeof StudyPersonBody>;

export const ReportBody = z.strictObject({ version });

const step = z.discriminatedUnion('kind', [
  z.strictObject({ kind: z.literal('read-card') }),
  z.strictObject({ kind: z.literal('watched') }),
  z.strictObject({ kind: z.literal('supervised-swab'), with: text(200) }),
  z.strictObject({ kind: z.literal('qualified-by-study'), studyId: id }),
  z.strictObject({ kind: z.literal('qualified-by-lead'), reason }),
]);
export const TrainingBody = z.strictObject({ step, onDate: z.iso.date(), dueOn: z.iso.date().optional() });
export type TrainingBody = z.infer<typeof TrainingBody>;

/** What the report of two lots or meters holds beside its sentences; new over old. */
export const PairFigures = z.object({
  oldId: z.string(),
  newId: z.string(),
  pairs: z.int().positive(),
  verdict: z.enum(['same-within', 'differs', 'too-few']),
  ratio: z.number().positive(),
  low: z.number().positive(),
  high: z.number().positive(),
});
