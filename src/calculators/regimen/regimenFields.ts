import { z } from 'zod';

export const compound = z.enum(['NaF', 'SnF2', 'Na2PO3F', 'AgF(NH3)2']);
export const percent = z.number().min(0).max(100).describe('percentage of the compound');

export const source = z.strictObject({
  key: z.string(),
  status: z.enum(['read', 'memory', 'mixed', 'common-practice', 'derived', 'proposal']),
  note: z.string().optional(),
  cite: z.string(),
});
