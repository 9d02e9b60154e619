/**
 * What the server sends and takes, as zod schemas shared by server and web. Bodies are strict: an unknown field is refused by name.
 * Clinical objects (answers, findings, readings) have one schema each in `visitSchema.ts`, used for files, HTTP and the screen.
 */
import { z } from 'zod';
import { JurisdictionSchema } from './placeSchema.ts';

export const Role = z.enum(['hygienist', 'assistant', 'dentist', 'lead']);
export type Role = z.infer<typeof Role>;

export const SessionView = z.object({
  practice: z.object({ name: z.string(), invented: z.boolean(), jurisdiction: JurisdictionSchema }),
  member: z.object({ id: z.string(), name: z.string(), roles: z.array(Role), hasCode: z.boolean(), hasPassword: z.boolean() }),
  today: z.string(),
  /** UTC, by the server's clock: since when this member is here. Tells one arrival from another, and is compared with no other clock. */
  since: z.string(),
  /** How long that is, measured by the server alone; 0 where its clock was set back meanwhile. */
  hereForMs: z.number().nonnegative(),
  /** Minutes without a key after which the screen hides. */
  hideAfterMinutes: z.number(),
});
export type SessionView = z.infer<typeof SessionView>;

/** All that a hidden screen is told: who was here last. */
export interface HiddenView {
  readonly hidden: true;
  readonly memberId: string;
}

const code = z.string().regex(/^\d{4,8}$/, { error: 'must have 4 to 8 digits' });
export const NewCode = z.strictObject({ password: z.string().max(200), code });
/** A code, or the password in its place. */
export const WhoBody = z.union([
  z.strictObject({ memberId: z.string().max(100), code: z.string().max(20) }),
  z.strictObject({ memberId: z.string().max(100), password: z.string().max(200) }),
]);
export type WhoBody = z.infer<typeof WhoBody>;
export const HideAfter = z.strictObject({ minutes: z.int().min(1).max(60), version: z.int().nonnegative() });

/** The clock of the computer against the record. Times are UTC. */
export interface ClockView {
  readonly now: string;
  readonly newestAt: string | null;
  readonly isBehind: boolean;
}

/** One line of the first page. */
export const PersonLine = z.object({
  id: z.string(),
  name: z.string(),
  birthDate: z.string(),
  /** Words by which a search finds the person: names and chart numbers, those of merged charts too. */
  searchKey: z.string().optional(),
  ageYears: z.number().int(),
  lastVisitOn: z.string().nullable(),
  lastLevel: z.string().nullable(),
  openVisitId: z.string().nullable(),
  nextOn: z.string().nullable(),
  /** What is due and why, in words. */
  due: z.string(),
  /** Items of an open visit that wait for a signature. */
  waiting: z.number().int(),
});
export type PersonLine = z.infer<typeof PersonLine>;

export const NewPerson = z.strictObject({
  name: z.string().trim().min(1).max(200),
  birthDate: z.iso.date(),
  chartNumber: z.string().trim().min(1).max(50).optional(),
  /** Somebody was asked whether it is the same person as one on record, and said no. */
  isAnotherPerson: z.literal(true).optional(),
});
export type NewPerson = z.infer<typeof NewPerson>;

export const OpenVisitBody = z.strictObject({ clockIsRight: z.boolean().optional() });

/** One saved field of an open visit: path in the visit input ("answers.can_spit", "reading", "findings", "agreed", "allExamined", "language", ...). */
export const FieldWrite = z.strictObject({
  path: z
    .string()
    .regex(
      /^(answers\.[a-z0-9_]+|reading|findings|allExamined|agreed|stopUsing|nextOn|language|meterId|speaker|goals|used|goalsSince|acidDay)$/,
    ),
  /** null takes the field out again. */
  value: z.unknown(),
  /** Version of the field as the page last saw it; absent for a first write. A mismatch is a conflict that returns both values. */
  version: z.number().int().nonnegative().optional(),
});
export type FieldWrite = z.infer<typeof FieldWrite>;

export const FieldSaved = z.object({ path: z.string(), version: z.number().int(), savedAt: z.string() });
export type FieldSaved = z.infer<typeof FieldSaved>;

export const ConfirmLevelBody = z.strictObject({
  level: z.enum(['low', 'moderate', 'high', 'extreme']),
  /** Needed when the level differs from the proposed one. */
  reason: z.string().trim().max(500).optional(),
});
export const WithdrawLevelBody = z.strictObject({
  /** When the decision was made that is taken back. */
  decidedAt: z.string().max(40),
});
export const CorrectionBody = z.strictObject({
  /** Version of the visit as the page read it. */
  version: z.int().positive(),
  reason: z.string().trim().min(1).max(500),
  changes: z.array(z.strictObject({ path: FieldWrite.shape.path, value: z.unknown() })).max(200),
  level: z.enum(['low', 'moderate', 'high', 'extreme']).optional(),
});
export type CorrectionBody = z.infer<typeof CorrectionBody>;
export const ReleaseBody = z.strictObject({
  question: z.string().max(100),
  isReleased: z.boolean(),
  heard: z.enum(['patient', 'guardian', 'carer']).optional(),
});
export const SignInBody = z.strictObject({ memberId: z.string(), password: z.string() });

const password = z.string().min(8, { error: 'must have 8 characters or more' }).max(200);
export const NewMember = z.strictObject({
  name: z.string().trim().min(1).max(200),
  roles: z.array(Role).min(1),
  trainedSwab: z.boolean(),
  password,
});
export type NewMember = z.infer<typeof NewMember>;
export const MemberChange = z.strictObject({
  roles: z.array(Role).min(1),
  trainedSwab: z.boolean(),
  active: z.boolean(),
  version: z.int().positive(),
});
export type MemberChange = z.infer<typeof MemberChange>;
export const NewPassword = z.strictObject({ password });
