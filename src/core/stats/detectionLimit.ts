import { centredValues } from './centredValues.ts';
import { normalQuantile } from './normal.ts';
import { quantileAtRank } from './quantileAtRank.ts';
import type { Result } from './result.ts';
import { sampleSd } from './sampleSd.ts';

export interface LowReading {
  /** Known low amount, any unit; readings of one level are replicates. */
  readonly level: number;
  readonly rlu: number;
}

export interface DetectionLimit {
  /** A blank stays at or below this 95 times in 100: mean + z · sd of the blanks. */
  readonly limitOfBlankRlu: Result<number, 'too-few-blanks' | 'blanks-equal'>;
  /** The same from the ranks alone, whatever the shape of the blanks; needs ten of them. */
  readonly limitOfBlankRankRlu: Result<number, 'too-few-blanks'>;
  /** A true amount whose readings exceed the limit of blank 95 times in 100. */
  readonly limitOfDetectionRlu: Result<number, 'too-few-blanks' | 'blanks-equal' | 'no-low-replicates' | 'lows-equal'>;
  /** Of the low readings, pooled within levels. */
  readonly sdLowRlu: number | undefined;
  /** Degrees of freedom of `sdLowRlu`. */
  readonly dfLow: number;
}

/** One-sided 95 % point, 1.644853626951472. */
const Z_ONE_SIDED = normalQuantile(0.95);

/**
 * Limit of blank and limit of detection from readings of blanks and of known low amounts.
 * The correction of the low sd is c_p = z / (1 - 1 / (4 f)), f its degrees of freedom.
 * @param blanksRlu  readings of unused swabs, RLU, finite
 * @param lows       readings of low amounts, replicates at each level
 * @returns each limit, or the reason why the readings do not give it
 * @throws RangeError naming the reading that is not finite
 * @accuracy 1e-12 against R 4.2.2 (detectionLimit.test.ts)
 * @source clsi-ep17
 */
export function detectionLimit(blanksRlu: readonly number[], lows: readonly LowReading[]): DetectionLimit {
  for (const [i, rlu] of blanksRlu.entries()) if (!Number.isFinite(rlu)) throw new RangeError(`blanksRlu.${i} must be finite: ${rlu}`);
  for (const [i, { rlu }] of lows.entries()) if (!Number.isFinite(rlu)) throw new RangeError(`lows.${i}.rlu must be finite: ${rlu}`);
  const limitOfBlankRlu = limitOfBlank(blanksRlu);
  const { sd: sdLowRlu, df: dfLow } = pooledWithinLevels(lows);
  const limitOfDetection = (): DetectionLimit['limitOfDetectionRlu'] => {
    if (!limitOfBlankRlu.ok) return limitOfBlankRlu;
    if (sdLowRlu === undefined) return { ok: false, reason: 'no-low-replicates' };
    if (sdLowRlu === 0) return { ok: false, reason: 'lows-equal' };
    return { ok: true, value: limitOfBlankRlu.value + (Z_ONE_SIDED / (1 - 1 / (4 * dfLow))) * sdLowRlu };
  };
  const rank = 0.5 + 0.95 * blanksRlu.length;
  return {
    limitOfBlankRlu,
    limitOfBlankRankRlu:
      rank <= blanksRlu.length ? { ok: true, value: quantileAtRank(blanksRlu, rank) } : { ok: false, reason: 'too-few-blanks' },
    limitOfDetectionRlu: limitOfDetection(),
    sdLowRlu,
    dfLow,
  };
}

function limitOfBlank(blanksRlu: readonly number[]): DetectionLimit['limitOfBlankRlu'] {
  if (blanksRlu.length < 2) return { ok: false, reason: 'too-few-blanks' };
  const sd = sampleSd(blanksRlu);
  if (sd === 0) return { ok: false, reason: 'blanks-equal' };
  return { ok: true, value: centredValues(blanksRlu).mean + Z_ONE_SIDED * sd };
}

function pooledWithinLevels(lows: readonly LowReading[]): { readonly sd: number | undefined; readonly df: number } {
  const atLevel = new Map<number, number[]>();
  for (const { level, rlu } of lows) atLevel.set(level, [...(atLevel.get(level) ?? []), rlu]);
  const df = lows.length - atLevel.size;
  if (df < 1) return { sd: undefined, df };
  const squares = [...atLevel.values()].flatMap((readings) => centredValues(readings).deviations.map((d) => d * d));
  return { sd: Math.sqrt(squares.reduce((sum, s) => sum + s, 0) / df), df };
}
