import { z } from 'zod';
import { DayEventSchema } from './acidDaySchema.ts';
import { JurisdictionSchema } from './placeSchema.ts';

const known = <T extends z.ZodType>(schema: T) => schema.optional();
const ids = z.array(z.string().min(1).max(100)).max(100);

/** What the safety lines ask of a person; what is absent is not known, and holds a suggestion back. */
export const PersonFactsSchema = z.strictObject({
  ageYears: z.int().min(0).max(130),
  ageMonths: z.int().min(0).max(1560),
  weightKg: known(z.number().positive().max(500)),
  pregnant: known(z.boolean()),
  breastfeeding: known(z.boolean()),
  canSpit: known(z.boolean()),
  allergies: known(ids),
  medicines: known(ids),
  conditions: known(ids),
  dogAtHome: known(z.boolean()),
  youngChildAtHome: known(z.boolean()),
  dryMouth: known(z.boolean()),
  dentures: known(z.boolean()),
  braces: known(z.boolean()),
  jawPain: known(z.boolean()),
});

const fluid = z.strictObject({
  calciumMmolPerL: z.number().positive().max(100),
  phosphateMmolPerL: z.number().positive().max(200),
});

/**
 * A described day with the mouth that it is worked out for: what `ebbline day` and the calculator take. Ranges of saliva, plaque and events are
 * looked at by the core, which names the field as well.
 */
export const AcidDayFileSchema = z.strictObject({
  label: z.string().max(80).optional(),
  preset: z
    .enum(['average', 'lowAcid', 'highAcid', 'approximal', 'thin', 'dryMouth', 'upperFront'])
    .describe('where the numbers of saliva and plaque come from that are not given'),
  saliva: z
    .strictObject({
      restingFlowMlPerMin: z.number().optional(),
      sleepFlowMlPerMin: z.number().optional(),
      highestFlowMlPerMin: z.number().optional(),
      residualVolumeMl: z.number().optional(),
      swallowVolumeMl: z.number().optional(),
    })
    .optional(),
  plaque: z
    .strictObject({
      thicknessMm: z.number().optional(),
      filmVelocityMmPerMin: z.number().optional(),
      uptakeMmolPerLPerS: z.number().optional(),
      aciduricShare: z.number().optional(),
    })
    .optional(),
  measured: z.strictObject({ saliva: fluid.optional(), plaqueFluid: fluid.optional() }).optional(),
  wakeMinute: z.number(),
  sleepMinute: z.number(),
  events: z.array(DayEventSchema),
  person: PersonFactsSchema.optional().describe('absent: no change is suggested'),
  jurisdiction: JurisdictionSchema.optional(),
  unwanted: z.array(z.enum(['drop', 'join', 'water', 'gum'])).optional(),
  samples: z.int().min(2).max(2000).optional().describe('draws for the band; 40 when absent'),
  seed: z.int().min(0).optional().describe('of the draws; 1 when absent'),
  mostMoves: z.int().min(0).max(3).optional().describe('most changes in one suggestion, 0 for none; 1 when absent'),
});
export type AcidDayFile = z.infer<typeof AcidDayFileSchema>;
