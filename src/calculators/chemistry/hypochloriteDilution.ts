import { z } from 'zod';
import { hypochloriteLines } from '../../content/hypochloriteLines.ts';
import { regimenTables } from '../../content/regimenTables.ts';
import { diluteHypochlorite } from '../../core/chemistry/products/diluteHypochlorite.ts';
import type { Calculator } from '../calculator.ts';

const { highestHypochloritePercent } = regimenTables;
const words = z.string().trim().min(1).max(200);

const input = z.strictObject({
  protocol: z
    .strictObject({ name: words, by: words, date: z.iso.date() })
    .describe("the practice's own written and dated protocol; without one a hypochlorite rinse is off and nothing is worked out"),
  stockPercent: z.number().positive().max(20).describe('as the label of the stock says'),
  stockIs: z
    .enum(['sodium-hypochlorite', 'available-chlorine'])
    .describe('what that percentage is of; taking one for the other is 5 % off'),
  stockDensityGPerMl: z
    .number()
    .min(1)
    .max(1.3)
    .optional()
    .describe('only where the label is by weight, 1.08 to 1.10 at 6 to 8.25 %; absent: by volume'),
  targetPercent: z
    .number()
    .positive()
    .max(highestHypochloritePercent, {
      error: `must be at most ${highestHypochloritePercent} % sodium hypochlorite: no study that was read goes above it`,
    })
    .describe(`% sodium hypochlorite, weight by volume, that the protocol asks for; at most ${highestHypochloritePercent}`),
  volumeMl: z.number().positive().max(5000).describe('of the rinse'),
});
const output = z.strictObject({
  stockMl: z.number(),
  waterMl: z.number(),
  stockHypochloritePercent: z.number().describe('of the stock, % sodium hypochlorite, weight by volume'),
  availableChlorinePpm: z.number().describe('of the rinse, mg/L'),
  convention: z.string().describe('what the percentages are of'),
  cautions: z.array(z.string()),
});

export const hypochloriteDilution: Calculator<z.infer<typeof input>, z.infer<typeof output>> = {
  name: 'hypochlorite-dilution',
  summary: "How much bleach makes the rinse of the practice's own protocol, at most 0.25 %, and its available chlorine",
  input,
  output,
  run({ protocol: _, ...dilution }) {
    const recipe = diluteHypochlorite({ ...dilution, highestPercent: highestHypochloritePercent });
    return { ...recipe, cautions: hypochloriteLines.map(({ says }) => says) };
  },
};
