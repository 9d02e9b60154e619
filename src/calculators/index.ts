import { methodAgreement } from './agreement/methodAgreement.ts';
import { raterAgreement } from './agreement/raterAgreement.ts';
import { raterAgreementMany } from './agreement/raterAgreementMany.ts';
import { raterAlpha } from './agreement/raterAlpha.ts';
import { raterIcc } from './agreement/raterIcc.ts';
import type { Calculator } from './calculator.ts';
import { criticalPh } from './chemistry/criticalPh.ts';
import { hypochloriteDilution } from './chemistry/hypochloriteDilution.ts';
import { saturation } from './chemistry/saturation.ts';
import { saturationMap } from './chemistry/saturationMap.ts';
import { titratableLoad } from './chemistry/titratableLoad.ts';
import { controlChart } from './control/controlChart.ts';
import { runLength } from './control/runLength.ts';
import { acidDay } from './day/acidDay.ts';
import { cutoffStudy } from './diagnostic/cutoffStudy.ts';
import { diagnosticTable } from './diagnostic/diagnosticTable.ts';
import { detectionLimit } from './measurement/detectionLimit.ts';
import { dilutionLinearity } from './measurement/dilutionLinearity.ts';
import { gaugeCrossed } from './measurement/gaugeCrossed.ts';
import { gaugeNested } from './measurement/gaugeNested.ts';
import { readingTrend } from './measurement/readingTrend.ts';
import { censoredSummary } from './readings/censoredSummary.ts';
import { changeLimits } from './readings/changeLimits.ts';
import { readingChange } from './readings/readingChange.ts';
import { readingInterpretation } from './readings/readingInterpretation.ts';
import { fluorideContent } from './regimen/fluorideContent.ts';
import { fluorideIntake } from './regimen/fluorideIntake.ts';
import { regimenProposal } from './regimen/regimenProposal.ts';
import { riskAssessment } from './risk/riskAssessment.ts';
import { riskComparison } from './risk/riskComparison.ts';

/** Every public calculator. Command line, HTTP and documentation are made from this list. */
export const calculators: readonly Calculator[] = [
  readingInterpretation,
  readingChange,
  changeLimits,
  censoredSummary,
  readingTrend,
  gaugeCrossed,
  gaugeNested,
  methodAgreement,
  cutoffStudy,
  diagnosticTable,
  raterAgreement,
  raterAgreementMany,
  raterAlpha,
  raterIcc,
  controlChart,
  runLength,
  detectionLimit,
  dilutionLinearity,
  riskAssessment,
  riskComparison,
  saturation,
  criticalPh,
  saturationMap,
  titratableLoad,
  hypochloriteDilution,
  fluorideContent,
  fluorideIntake,
  regimenProposal,
  acidDay,
];

/** undefined for an unknown name. */
export const findCalculator = (name: string): Calculator | undefined => calculators.find((c) => c.name === name);
