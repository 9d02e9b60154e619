import { z } from 'zod';
import type { Jurisdiction } from '../core/regimen/types.ts';

/** Whose law and labels hold. */
export const JurisdictionSchema = z.enum(['US', 'UK', 'EU', 'by-hand', 'unknown'] as const satisfies readonly Jurisdiction[]);
