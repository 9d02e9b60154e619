import { z } from 'zod';
import { type DescribedDays, MOST_DESCRIBED_DAYS } from '../core/visit/describedDays.ts';
import { AcidDaySchema } from './acidDaySchema.ts';

const mmolPerL = (most: number) => z.number().min(0.01).max(most);
const dayNumber = z
  .int()
  .min(0)
  .max(MOST_DESCRIBED_DAYS - 1);

/** The form of what was told of a person's days; what the days themselves may hold is looked at by `findDayProblems`. */
export const DescribedDaysSchema = z
  .strictObject({
    days: z.array(AcidDaySchema).min(1).max(MOST_DESCRIBED_DAYS),
    changed: z.strictObject({ of: dayNumber, day: AcidDaySchema }).optional(),
    mouth: z.enum(['average', 'lowAcid', 'highAcid', 'approximal', 'thin', 'dryMouth', 'upperFront']).optional(),
    saliva: z.strictObject({ calciumMmolPerL: mmolPerL(10), phosphateMmolPerL: mmolPerL(40) }).optional(),
    onLeaflet: dayNumber.optional(),
  })
  .refine(({ days, changed }) => changed === undefined || changed.of < days.length, {
    error: 'names a day that is not described, counted from 0',
    path: ['changed', 'of'],
  })
  .refine(({ days, onLeaflet = 0 }) => onLeaflet < days.length, {
    error: 'names a day that is not described, counted from 0',
    path: ['onLeaflet'],
  }) satisfies z.ZodType<DescribedDays>;
