import { z } from 'zod';
import { protocolTables } from '../../content/protocols/protocolTables.ts';
import { evaluateProtocol } from '../../core/risk/evaluateProtocol.ts';
import type { Calculator } from '../calculator.ts';
import { ageYears, answers, itemsOf, lowSalivaMeansExtreme, type RiskOutput, riskOutput, toRiskOutput } from './riskFields.ts';

const input = z.strictObject({
  protocol: z.enum(protocolTables.map((table) => table.id)),
  edition: z.string().optional().describe('refused unless it is the edition held here; default: that one'),
  ageYears,
  answers,
  lowSalivaMeansExtreme,
});

export const riskAssessment: Calculator<z.infer<typeof input>, RiskOutput> = {
  name: 'risk-assessment',
  summary: 'What one published caries risk list says of a set of answers, with what is unknown and could change it',
  input,
  output: riskOutput,
  run({ protocol, edition, ageYears: age, answers: given, lowSalivaMeansExtreme: isExtreme = false }) {
    const table = protocolTables.find((t) => t.id === protocol);
    if (!table) throw new RangeError(`protocol ${protocol} is not known`);
    if (edition !== undefined && edition !== table.edition) {
      throw new RangeError(`edition ${edition} of ${table.screenName} is not held here: ${table.edition}`);
    }
    return toRiskOutput(evaluateProtocol(table, itemsOf(given), age, { lowSalivaMeansExtreme: isExtreme }));
  },
};
