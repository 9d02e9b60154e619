import { type ScaleLogarithmic, scaleLog } from 'd3-scale';
import type { Plot } from './ChartFrame.tsx';

const STEPS_PERCENT = [1, 2, 5, 10, 20, 50, 100, 200, 500] as const;
const MOST_TICKS = 7;
/** Around hands that are all alike the axis still has a width. */
const NARROWEST = 1.02;

/** Up the side of a picture: a ratio on a log scale with 1 in the middle, so that half and double lie equally far. */
export function ratioScale(ratios: readonly number[], plot: Plot): ScaleLogarithmic<number, number> {
  const furthest = Math.max(NARROWEST, ...ratios.map((ratio) => Math.max(ratio, 1 / ratio))) * 1.02;
  return scaleLog()
    .domain([1 / furthest, furthest])
    .range([plot.bottom, plot.top]);
}

/** "+20 %", "as all", "−20 %". */
export function ratioTicks(y: ScaleLogarithmic<number, number>): readonly { readonly at: number; readonly says: string }[] {
  const [low = 1, high = 1] = y.domain();
  const ticksBy = (step: number) => {
    const below = Math.floor((100 * (1 - low)) / step + 1e-9);
    const above = Math.floor((100 * (high - 1)) / step + 1e-9);
    return Array.from({ length: below + above + 1 }, (_, i) => (i - below) * step);
  };
  const percents = STEPS_PERCENT.map(ticksBy).find((ticks) => ticks.length <= MOST_TICKS) ?? [0];
  return percents.map((percent) => ({ at: y(1 + percent / 100), says: sayTick(percent) }));
}

function sayTick(percent: number): string {
  if (percent === 0) return 'as all';
  return `${percent > 0 ? '+' : '−'}${Math.abs(percent)} %`;
}
