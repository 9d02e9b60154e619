import { noiseOfMeter } from '../../core/reading/blendNoise.ts';
import { occasionSdLog } from '../../core/reading/noiseSums.ts';
import type { NoiseTable } from '../../core/reading/noiseTable.ts';
import type { Meter } from '../../core/reading/types.ts';
import { Z_95 } from '../../core/stats/normal.ts';

/** 95 % band about a reading from the noise of one occasion alone, swab noise and day-to-day variation together, RLU. */
export function noiseBand(rlu: number, meter: Meter, table: NoiseTable): [low: number, high: number] {
  const reach = Math.exp(Z_95 * occasionSdLog(noiseOfMeter(table, meter)));
  return [rlu / reach, rlu * reach];
}
