import type { Meter } from '../src/core/reading/types.ts';

/** An invented meter whose noise is typed and not measured, wide enough that verdicts differ from plain comparisons. */
export const testMeter: Meter = {
  id: 'a',
  name: 'Demo meter A',
  lowestRlu: 40,
  highestRlu: 60_000,
  cutoffRlu: 4200,
  countdownS: 25,
  cvAnalytical: 0.3,
  cvAnalyticalAssumed: true,
  cvWithinPerson: 0.5,
  cvWithinPersonAssumed: true,
};
