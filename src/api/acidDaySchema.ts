import { z } from 'zod';
import type { AcidDay } from '../core/plaque/day/types.ts';

const text = (most: number) => z.string().min(1).max(most);
const held = z.literal(true).optional();

const TypedFoodSchema = z.strictObject({
  name: text(80),
  unit: z.enum(['g', 'mL']),
  sugarsGPer100: z.number(),
  retention: z.enum(['clears', 'lingers', 'sticks']),
  pH: z.number().optional(),
});
const PortionSchema = z.union([
  z.strictObject({ food: text(100), amount: z.number() }),
  z.strictObject({ typed: TypedFoodSchema, amount: z.number() }),
]);

const base = {
  id: text(100),
  label: z.string().max(80).optional(),
  startMinute: z.number(),
  minutes: z.number(),
  keep: held,
};

export const DayEventSchema = z.discriminatedUnion('kind', [
  z.strictObject({
    ...base,
    kind: z.literal('eating'),
    occasion: z.enum(['meal', 'between-meals']),
    portions: z.array(PortionSchema),
    sipped: held,
    inBottleOrCup: held,
  }),
  z.strictObject({ ...base, kind: z.literal('gum') }),
  z.strictObject({ ...base, kind: z.literal('cheese') }),
  z.strictObject({ ...base, kind: z.literal('water') }),
  z.strictObject({ ...base, kind: z.literal('brushing'), fluoridePpm: z.number().optional() }),
  z.strictObject({
    ...base,
    kind: z.literal('rinse'),
    rinse: z.enum(['fluoride', 'alkaline', 'urea']),
    fluoridePpm: z.number().optional(),
    bicarbonateMmolPerL: z.number().optional(),
    ureaPercent: z.number().optional(),
  }),
  z.strictObject({ ...base, kind: z.literal('nap') }),
]);

/** The form of a day. Ranges, overlaps and the table of foods are looked at by `findDayProblems`, which names the field as well. */
export const AcidDaySchema = z.strictObject({
  label: z.string().max(80).optional(),
  wakeMinute: z.number(),
  sleepMinute: z.number(),
  events: z.array(DayEventSchema),
}) satisfies z.ZodType<AcidDay>;
