import { censoredNormalFit, type NoFitReason } from '../stats/censoredNormalFit.ts';
import { normalCdf, Z_95 } from '../stats/normal.ts';
import type { Result } from '../stats/result.ts';
import { requirePositive } from './requirePositive.ts';
import type { Bound } from './types.ts';

export interface BoundedRlu {
  readonly rlu: number;
  /** Default exact. */
  readonly bound?: Bound | undefined;
}

export interface CensoredSummary {
  readonly meanLog: number;
  /** Maximum likelihood: divisor n without bounds. */
  readonly sdLog: number;
  readonly geometricMeanRlu: number;
  readonly geometricSd: number;
  /** 95 %, Wald on the log from the observed information. */
  readonly geometricMeanInterval: { readonly low: number; readonly high: number };
  /** Densities on the RLU scale. */
  readonly logLikelihood: number;
  /** null without a threshold. */
  readonly probabilityAboveThreshold: number | null;
}

/**
 * Log-normal summary of readings some of which only hit a limit of the meter, by maximum likelihood.
 * A limit is never averaged as if it were a number.
 * @param readings       at least one; rlu above 0, one meter
 * @param thresholdRlu   optional, above 0: adds the estimated share of readings above it
 * @returns estimates, or ok: false with the reason where none are defined (all bounds on one side, no spread)
 * @throws RangeError naming the reading
 * @source olsen1978
 */
export function censoredSummary(readings: readonly BoundedRlu[], thresholdRlu?: number): Result<CensoredSummary, NoFitReason> {
  readings.forEach(({ rlu }, i) => {
    requirePositive(rlu, `readings.${i}.rlu`);
  });
  if (thresholdRlu !== undefined) requirePositive(thresholdRlu, 'thresholdRlu');
  const fit = censoredNormalFit(readings.map(({ rlu, bound = 'exact' }) => ({ value: Math.log(rlu), bound })));
  if (!fit.ok) return fit;
  const { mean, sd, meanSe, logLikelihood } = fit.value;
  const sumOfLogs = readings.reduce((sum, { rlu, bound = 'exact' }) => (bound === 'exact' ? sum + Math.log(rlu) : sum), 0);
  return {
    ok: true,
    value: {
      meanLog: mean,
      sdLog: sd,
      geometricMeanRlu: Math.exp(mean),
      geometricSd: Math.exp(sd),
      geometricMeanInterval: { low: Math.exp(mean - Z_95 * meanSe), high: Math.exp(mean + Z_95 * meanSe) },
      logLikelihood: logLikelihood - sumOfLogs,
      probabilityAboveThreshold: thresholdRlu === undefined ? null : normalCdf((mean - Math.log(thresholdRlu)) / sd),
    },
  };
}
