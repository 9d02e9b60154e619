import { z } from 'zod';
import { protocolTables } from '../../content/protocols/protocolTables.ts';
import { compareProtocols } from '../../core/risk/compareProtocols.ts';
import type { Calculator } from '../calculator.ts';
import { ageYears, answers, itemsOf, lowSalivaMeansExtreme, riskOutput, toRiskOutput } from './riskFields.ts';

const input = z.strictObject({ ageYears, answers, lowSalivaMeansExtreme });

const output = z.strictObject({
  results: z.array(riskOutput).describe('one for each list that fits the age'),
  partsOn: z
    .array(
      z.strictObject({
        item: z.string(),
        byProtocol: z.record(z.string(), z.enum(['decides', 'raises', 'lowers', 'no-effect', 'not-on-this-list'])),
      }),
    )
    .describe('known items that the lists treat differently; empty where the levels agree'),
});

export const riskComparison: Calculator<z.infer<typeof input>, z.infer<typeof output>> = {
  name: 'risk-comparison',
  summary: 'The published caries risk lists that fit an age on the same answers, and the items on which they part',
  input,
  output,
  run({ ageYears: age, answers: given, lowSalivaMeansExtreme: isExtreme = false }) {
    const { results, partsOn } = compareProtocols(protocolTables, itemsOf(given), age, { lowSalivaMeansExtreme: isExtreme });
    return { results: results.map(toRiskOutput), partsOn: partsOn.map((row) => ({ item: row.item, byProtocol: { ...row.byProtocol } })) };
  },
};
