/**
 * The visit as a JSON document: what `ebbline assess` reads, what the examples are, and what the server checks before a field is saved.
 * Parsed once at the edge and trusted afterwards. Every message names the field.
 */
import { z } from 'zod';
import { LEAFLET_LANGUAGES } from '../core/leaflet/languages.ts';
import { NOTE_SECTIONS } from '../core/note/noteSections.ts';
import { NOISE_PARTS, NOT_TAKEN_REASONS, STUDY_KINDS } from '../core/reading/types.ts';
import { RHYTHM_IDS } from '../core/regimen/dayStrip/types.ts';
import { LEGAL_STATUSES } from '../core/regimen/legalStatus.ts';
import { DescribedDaysSchema } from './describedDaysSchema.ts';
import { LocalProtocolSchema } from './localProtocols.ts';
import { HomesSchema } from './personSchema.ts';
import { JurisdictionSchema } from './placeSchema.ts';

const isoDate = z.iso.date({ error: 'must be a date like 2026-11-25' });
const isoTime = z.iso.datetime({ offset: true, error: 'must be a time like 2026-11-25T10:36:00+01:00' });
const level = z.enum(['low', 'moderate', 'high', 'extreme']);
const text = (max: number) => z.string().trim().min(1).max(max);

export const AnswerSchema = z
  .strictObject({
    how: z.enum(['asked', 'carried', 'declined', 'does-not-know', 'not-asked']),
    value: z.union([z.boolean(), z.number(), z.string().max(200), z.array(z.string().max(100)).max(100)]).optional(),
    askedOn: isoDate.optional(),
    alone: z.literal(true).optional(),
  })
  .refine((a) => (a.how === 'asked' || a.how === 'carried') === (a.value !== undefined), {
    error: 'an asked or carried answer has a value, an unknown one has none',
    path: ['value'],
  })
  .refine((a) => a.how !== 'carried' || a.askedOn !== undefined, { error: 'a carried answer says when it was asked', path: ['askedOn'] });

export const FindingSchema = z.strictObject({
  tooth: z.string().regex(/^([1-4][1-8]|[5-8][1-5])$/, { error: 'must be a two-digit tooth number, 11 to 48 or 51 to 85' }),
  surface: z.enum(['occlusal', 'mesial', 'distal', 'facial', 'lingual', 'root']).optional(),
  kind: z.enum([
    'white-spot',
    'cavity',
    'dentine-radiograph',
    'enamel-radiograph',
    'root-lesion',
    'restoration',
    'restoration-defective',
    'root-exposed',
    'acid-wear',
  ]),
  activity: z.enum(['active', 'inactive', 'not-assessed']).optional(),
  isNew: z.boolean(),
});

const minutes = z.number().min(0).max(10_080);
export const SwabReadingSchema = z.strictObject({
  activatedAt: isoTime.optional(),
  takenAt: isoTime.optional(),
  rlu: z.number({ error: 'must be a number' }).nonnegative({ error: 'a reading cannot be below 0' }).optional(),
  bound: z.enum(['exact', 'at-most', 'at-least']).optional(),
  lotId: text(100).optional(),
  operator: z.strictObject({ name: text(200), trained: z.boolean() }).optional(),
  site: z.enum(['lower-front-tongue-side', 'other']).optional(),
  beforeCleaning: z.boolean().optional(),
  minutesSinceEating: minutes.optional(),
  minutesSinceBrushing: minutes.optional(),
  minutesSinceRinsing: minutes.optional(),
  failed: z.boolean().optional(),
  notTaken: z.enum(NOT_TAKEN_REASONS).optional(),
  notTakenNote: text(120).optional(),
});

export const PastReadingSchema = z.strictObject({
  takenAt: isoTime,
  rlu: z.number().nonnegative(),
  bound: z.enum(['exact', 'at-most', 'at-least']),
  state: z.enum(['valid', 'flagged', 'void']),
  meterId: text(100),
  operator: text(200).optional(),
  lotId: text(100).optional(),
});

export const OwnEstimateSchema = z
  .strictObject({
    component: z.enum(NOISE_PARTS).describe('the part of the noise that the study estimated'),
    variance: z
      .number()
      .min(-9)
      .max(9)
      .describe('variance of ln RLU, as computed; below 0 where the study saw less than chance alone would give'),
    degreesOfFreedom: z.number().positive().max(1_000_000).describe('of this variance; need not be whole'),
    readings: z.int().positive().optional().describe('readings that the estimate rests on'),
    studyId: text(100),
    reportedOn: isoDate,
    kind: z.enum(STUDY_KINDS),
  })
  .refine((own) => own.component !== 'repeatability' || own.variance > 0, {
    error: 'a variance between single swabs is above 0',
    path: ['variance'],
  });

export const MeterSchema = z
  .strictObject({
    id: text(100),
    name: text(200),
    lowestRlu: z.number().nonnegative(),
    highestRlu: z.number().positive(),
    cutoffRlu: z.number().positive(),
    countdownS: z.number().nonnegative(),
    cvAnalytical: z.number().positive().max(2),
    cvAnalyticalAssumed: z.boolean(),
    cvWithinPerson: z.number().positive().max(5),
    cvWithinPersonAssumed: z.boolean(),
    own: z.array(OwnEstimateSchema).max(500).optional().describe("what the practice's own reported studies found on this meter"),
  })
  .refine((m) => m.lowestRlu < m.cutoffRlu && m.cutoffRlu < m.highestRlu, {
    error: "the cut-off lies between the meter's lowest and highest reading",
    path: ['cutoffRlu'],
  })
  .refine(({ own = [] }) => new Set(own.map((o) => `${o.component} ${o.studyId}`)).size === own.length, {
    error: 'a study gives each part of the noise once',
    path: ['own'],
  });

export const SwabLotSchema = z.strictObject({
  id: text(100),
  name: text(200),
  expiresOn: isoDate,
  compared: z
    .strictObject({ lotId: text(100), studyId: text(100), onDate: isoDate, verdict: z.enum(['same-within', 'differs', 'too-few']) })
    .optional()
    .describe('with the lot before it, by a reported study'),
  uncompared: z.strictObject({ by: text(200), at: isoTime, reason: text(500) }).optional(),
});

export const NeedKindSchema = z.enum([
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
  'acid-wear-advice',
  'referral',
]);
export const ShelfItemSchema = z.strictObject({
  id: text(100),
  name: text(200),
  leafletName: z.strictObject({ en: text(200), es: text(200), fr: text(200).optional(), ar: text(200).optional() }),
  agentId: text(100),
  form: z.enum(['paste', 'rinse', 'gel', 'varnish', 'gum', 'lozenge', 'spray', 'drops', 'powder', 'sealant']),
  traits: z.array(text(100)).optional(),
  compound: z.enum(['NaF', 'SnF2', 'Na2PO3F', 'AgF(NH3)2']).optional(),
  percent: z.number().positive().max(100).optional(),
  fluoridePpm: z.number().nonnegative().max(60_000).optional(),
  pH: z.number().min(0).max(14).optional(),
  packAmount: z.strictObject({ value: z.number().positive(), unit: z.enum(['g', 'mL', 'piece']) }).optional(),
  priceCents: z.int().nonnegative().optional(),
  flavour: text(100).optional().describe('"none" = no flavour; absent = not noted'),
  label: z
    .strictObject({
      value: z.number().positive().max(60_000),
      of: z.enum(['compound', 'ion', 'ppm']),
      per: z.enum(['w/w', 'w/v']).optional(),
    })
    .optional()
    .describe('the strength as the label has it'),
  minimumLevel: z.int().min(0).max(100_000).optional().describe('packs at which to order more'),
  inStock: z.boolean(),
  release: z.enum(['anyone', 'prescription', 'dentist']),
  meets: z.array(NeedKindSchema),
  use: z.strictObject({
    timesPerDay: z.number().nonnegative().max(24),
    amount: text(200),
    amountG: z.number().positive().optional(),
    amountMl: z.number().positive().optional(),
    courseDays: z.int().positive().optional(),
    atVisit: z.boolean().optional(),
  }),
});

export const PracticeSettingsSchema = z.strictObject({
  jurisdiction: JurisdictionSchema,
  legal: z.record(text(100), z.enum(LEGAL_STATUSES)).optional(),
  methodByAge: z.array(z.strictObject({ fromAgeYears: z.int().min(0), belowAgeYears: z.int().nullable(), protocol: text(100) })),
  bitewingMonths: z.record(level, z.tuple([z.int().positive(), z.int().positive()])).nullable(),
  lowSalivaMeansExtreme: z.boolean(),
  stimulatedFlowLowAtMostMlPerMin: z.union([z.literal(0.5), z.literal(0.7)]),
  note: z.array(z.enum(NOTE_SECTIONS)).max(NOTE_SECTIONS.length).optional(),
  regimenOrder: z
    .array(z.enum(['tasks', 'cost', 'items']))
    .max(3)
    .optional(),
  considersSupplements: z
    .boolean()
    .optional()
    .describe('shows what the published schedule says of fluoride drops or tablets; none is added'),
  disagreements: z.record(text(100), text(100)).optional().describe('position taken where sources disagree, by its id'),
  reorderLeadDays: z.int().min(0).max(365).optional().describe('days from an order of home care to its arrival'),
});

export const PracticeFileSchema = z.strictObject({
  name: text(200),
  invented: z.boolean(),
  timeZone: text(100),
  settings: PracticeSettingsSchema,
  meters: z.array(MeterSchema),
  lots: z.array(SwabLotSchema),
  shelf: z.array(ShelfItemSchema),
  localProtocols: z.array(LocalProtocolSchema).max(200).optional().describe("the practice's own protocols; absent = none"),
});

export const ConfirmedLevelSchema = z.strictObject({
  level,
  protocol: text(100),
  edition: text(100),
  by: text(200),
  at: isoTime,
  reason: z.string().max(500).optional(),
  changedFrom: level.optional(),
});

export const SignedItemSchema = z.strictObject({
  shelfItemId: text(100),
  by: text(200),
  at: isoTime,
  packs: z.int().min(1).max(100).optional().describe('packs that it covers in all; absent = one'),
  until: isoDate.optional().describe('last day on which a pack may go by it'),
  standingOrder: z.strictObject({ name: text(200), date: isoDate, by: text(200).optional() }).optional(),
  override: z.strictObject({ ruleId: text(20), reason: text(500) }).optional(),
});

export const RefusedItemSchema = z.strictObject({ shelfItemId: text(100), by: text(200), at: isoTime, reason: text(500) });

export const AgreedSchema = z.strictObject({
  keep: z.string().max(300).optional(),
  tryThis: z.string().max(300).optional(),
  items: z.record(z.string(), z.enum(['agreed', 'declined', 'not-affordable'])).optional(),
  declinedWhy: z.record(z.string(), z.string().max(300)).optional(),
  instead: z.record(z.string(), text(100)).optional(),
  regimen: text(2_000).optional().describe('ids of the packs of the regimen that was taken, joined by "+"'),
  tasksAccepted: z
    .union([z.int().min(0).max(20), z.literal('any')])
    .optional()
    .describe('tasks a day that the person accepts'),
  rhythm: z.enum(RHYTHM_IDS).optional().describe('how the days of the person run; absent = not asked at this visit'),
});

const adherence = z.enum(['as-agreed', 'less-often', 'stopped', 'not-begun', 'does-not-know']);
export const SpeakerSchema = z.strictObject({
  who: z.enum(['patient', 'guardian', 'carer']),
  name: text(200).optional(),
  interpreter: z.enum(['not-needed', 'professional', 'family', 'needed-not-there']).optional(),
});
const ReleasedSchema = z.record(
  text(100),
  z.strictObject({ by: text(200), at: isoTime, heard: z.enum(['patient', 'guardian', 'carer']).optional() }),
);
export const GoalsSchema = z.array(text(300)).max(5);
export const GoalsSinceSchema = z.record(text(100), z.enum(['reached', 'still-on', 'dropped']));
const PastGoalSchema = z.strictObject({ id: text(100), text: text(300), since: isoDate });
export const UsedSchema = z.record(text(100), z.strictObject({ adherence, why: z.string().trim().max(300).optional() }));
const PastCareSchema = z.strictObject({
  shelfItemId: text(100),
  name: text(200),
  since: isoDate,
  turnedDown: z.enum(['declined', 'not-affordable']).optional(),
  until: isoDate.optional(),
  adherence: adherence.optional(),
  stopReason: z.string().max(300).optional(),
});

const PastRhythmSchema = z.strictObject({ rhythm: z.enum(RHYTHM_IDS), askedOn: isoDate });

export const ControlSpanSchema = z.strictObject({
  meterId: text(100),
  lotId: text(100).optional().describe("absent = the meter's own check, which holds for every lot"),
  controlId: text(100),
  from: isoTime,
  state: z.enum(['in-control', 'warning', 'out', 'no-target']),
  says: z.string().max(200),
  override: z.strictObject({ by: text(200), at: isoTime, reason: text(500) }).optional(),
  notResolvedSince: isoTime.optional(),
  question: z.strictObject({ by: text(200), at: isoTime, reason: text(800) }).optional(),
});

export const VisitSchema = z.strictObject({
  onDate: isoDate,
  language: z.enum(LEAFLET_LANGUAGES),
  answers: z.record(z.string(), AnswerSchema),
  allExamined: z.boolean().optional(),
  findings: z.array(FindingSchema),
  meterId: text(100).optional(),
  reading: SwabReadingSchema.optional(),
  pastReadings: z.array(PastReadingSchema),
  studySwabs: z
    .array(z.strictObject({ takenAt: isoTime }))
    .optional()
    .describe('when this person was swabbed for a study of the practice'),
  controls: z.array(ControlSpanSchema).optional().describe('how the controls of meters and lots stood over the day'),
  confirmed: ConfirmedLevelSchema.optional(),
  signed: z.array(SignedItemSchema),
  refused: z.array(RefusedItemSchema).optional(),
  agreed: AgreedSchema.optional(),
  stopUsing: z.array(z.string().max(200)).optional(),
  nextOn: isoDate.optional(),
  speaker: SpeakerSchema.optional(),
  released: ReleasedSchema.optional(),
  goals: GoalsSchema.optional(),
  pastGoals: z.array(PastGoalSchema).optional(),
  goalsSince: GoalsSinceSchema.optional(),
  pastCare: z.array(PastCareSchema).optional(),
  pastRhythm: PastRhythmSchema.optional().describe('how the days ran when that was last asked at an earlier visit'),
  used: UsedSchema.optional(),
  acidDay: DescribedDaysSchema.optional().describe('what was told of eating, drinking and mouth care over the day'),
  correctedOn: isoDate.optional(),
});

/** A visit file. `practice` is the practice in full, or the word "demo" for the invented practice Tern Quay Dental. */
export const VisitFileSchema = z.strictObject({
  ebbline: z.literal('visit-1'),
  about: z.string().max(500).optional(),
  practice: z.union([z.literal('demo'), PracticeFileSchema]),
  person: z.strictObject({ name: text(200), birthDate: isoDate, newPatient: z.boolean(), homes: HomesSchema.optional() }),
  visit: VisitSchema,
});
export type VisitFile = z.infer<typeof VisitFileSchema>;

/** Schema of each draft field by the first part of its path. */
export const FIELD_SCHEMAS = {
  answers: AnswerSchema,
  reading: SwabReadingSchema,
  findings: z.array(FindingSchema),
  allExamined: z.boolean(),
  agreed: AgreedSchema,
  stopUsing: z.array(z.string().max(200)),
  nextOn: isoDate,
  language: z.enum(LEAFLET_LANGUAGES),
  meterId: text(100),
  speaker: SpeakerSchema,
  goals: GoalsSchema,
  used: UsedSchema,
  goalsSince: GoalsSinceSchema,
  acidDay: DescribedDaysSchema,
} as const;
