import { z } from 'zod';
import { fluorideContentPpm } from '../../core/regimen/fluorideContentPpm.ts';
import type { Calculator } from '../calculator.ts';
import { compound, percent } from './regimenFields.ts';

const input = z.strictObject({ compound, percent });
const output = z.strictObject({ fluoridePpm: z.number().describe('mg F per kg, or per L for a percentage by volume; not rounded') });

export const fluorideContent: Calculator<z.infer<typeof input>, z.infer<typeof output>> = {
  name: 'fluoride-content',
  summary: 'Fluoride (ppm) of a product from its compound and percentage',
  input,
  output,
  run: (given) => ({ fluoridePpm: fluorideContentPpm(given.compound, given.percent) }),
};
