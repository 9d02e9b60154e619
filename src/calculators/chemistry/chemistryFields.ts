import { z } from 'zod';
import { COMPONENTS, type Component, MAX_TOTAL_MMOL_PER_KG, PH_RANGE } from '../../core/chemistry/types.ts';

const total = z.number().min(0).max(MAX_TOTAL_MMOL_PER_KG).optional();
const fields = Object.fromEntries(COMPONENTS.map((name) => [name, total])) as Record<Component, typeof total>;

export const totalsMmolPerKg = z.strictObject(fields).describe('total (analytical) amounts in mmol per kg of water; absent = 0');
export const pH = z.number().min(PH_RANGE.from).max(PH_RANGE.to).describe('-log10 of the activity of protons, 37 °C');
export const pairs = z
  .enum(['calcium', 'with-background'])
  .optional()
  .describe('with-background: pairs of magnesium, sodium and potassium with phosphate as well; default calcium, as the reference');
