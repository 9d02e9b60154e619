/** What the pages send and read about the practice's own protocols, and how one stands in a practice file. */
import { z } from 'zod';
import type { LocalProtocol } from '../core/regimen/local/localProtocol.ts';

const text = (longest: number) => z.string().trim().min(1).max(longest);
const ids = z.array(text(100)).max(300);
const LEVELS = ['low', 'moderate', 'high', 'extreme'] as const;
const NEEDS = [
  'fluoride-base',
  'fluoride-extra',
  'professional-fluoride',
  'antimicrobial',
  'acid-control',
  'sweetener',
  'calcium-phosphate',
  'saliva',
  'sealing',
] as const;

export const NewLocalProtocol = z.strictObject({
  name: text(200),
  /** From this day on. */
  date: z.iso.date(),
  agentId: text(100),
  percentAtMost: z.number().positive().max(100).optional(),
  timesPerWeekAtMost: z.number().positive().max(70),
  courseDaysAtMost: z.int().positive().max(366),
  levels: z.array(z.enum(LEVELS)).min(1).max(LEVELS.length),
  needs: z.array(z.enum(NEEDS)).min(1).max(NEEDS.length),
  fromAgeYears: z.int().min(0).max(130),
  belowAgeYears: z.int().min(1).max(131).optional(),
  exclusions: z.strictObject({ conditions: ids, medicines: ids, allergies: ids, pregnant: z.literal(true).optional() }),
});

export const LocalProtocolSchema = NewLocalProtocol.extend({
  id: text(100),
  author: text(200),
  retired: z.strictObject({ on: z.iso.date(), by: text(200), reason: text(500) }).optional(),
});

export const RetireBody = z.strictObject({ reason: text(500), version: z.int().nonnegative() });

export interface LocalProtocolView {
  readonly protocol: LocalProtocol;
  readonly version: number;
}
