/** Checks of meters themselves: the bodies that the page sends. */
import { z } from 'zod';

const id = z.string().trim().min(1).max(100);
const rlu = z.number({ error: 'must be a number' }).positive({ error: 'must be above 0' });

export const NewMeterCheck = z.strictObject({
  meterId: id,
  checkedBy: z.enum(['device', 'solution']),
  rlu: rlu.optional(),
  bound: z.enum(['exact', 'at-most', 'at-least']).optional(),
  passed: z.boolean().optional(),
  takenAt: z.iso.datetime({ offset: true, error: 'must be a time with its zone, like 2026-11-25T10:36:00+01:00' }).optional(),
  temperatureDegC: z.number().optional(),
  words: z.string().trim().min(1).max(500).optional(),
});
export type NewMeterCheck = z.infer<typeof NewMeterCheck>;

export const MeterCheckPlanBody = z.strictObject({
  plan: z.strictObject({
    meterId: id,
    everyDays: z.int().min(1, { error: 'must be a whole number of days, 1 or more' }).max(3650),
    limits: z.strictObject({ lowRlu: z.number().nonnegative(), highRlu: z.number().positive() }).optional(),
  }),
  version: z.int().nonnegative(),
});
