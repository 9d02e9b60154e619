import { requirePositive } from '../../reading/requirePositive.ts';

/** Between what volumes saliva rises and is swallowed. */
export interface SwallowVolumes {
  /** Left after a swallow, mL. */
  readonly residualVolumeMl: number;
  /** At which one swallows, mL. */
  readonly swallowVolumeMl: number;
}

/** Swallows per minute at a constant flow. @throws RangeError unless flow and volumes are above 0 and the second volume is the larger */
export function swallowsPerMin(volumes: SwallowVolumes, flowMlPerMin: number): number {
  return requireFlow(flowMlPerMin) / swallowedMl(volumes);
}

/**
 * Continuous rate that clears as much per swallow as the swallows do: each leaves the share residual / swallow volume of what was there.
 * @returns per minute
 * @throws RangeError unless flow and volumes are above 0 and the second volume is the larger
 * @source dawes1983
 */
export function clearancePerMin(volumes: SwallowVolumes, flowMlPerMin: number): number {
  return (requireFlow(flowMlPerMin) * Math.log(volumes.swallowVolumeMl / volumes.residualVolumeMl)) / swallowedMl(volumes);
}

/** Minutes in which half is cleared at a constant flow. Errors as `clearancePerMin`. @source dawes1983 */
export function clearanceHalfTimeMin(volumes: SwallowVolumes, flowMlPerMin: number): number {
  return Math.LN2 / clearancePerMin(volumes, flowMlPerMin);
}

function swallowedMl({ residualVolumeMl, swallowVolumeMl }: SwallowVolumes): number {
  requirePositive(residualVolumeMl, 'residualVolumeMl');
  if (!(swallowVolumeMl > residualVolumeMl && swallowVolumeMl < Number.POSITIVE_INFINITY)) {
    throw new RangeError(`swallowVolumeMl must be above residualVolumeMl (${residualVolumeMl}): ${swallowVolumeMl}`);
  }
  return swallowVolumeMl - residualVolumeMl;
}

function requireFlow(flowMlPerMin: number): number {
  requirePositive(flowMlPerMin, 'flowMlPerMin');
  return flowMlPerMin;
}
