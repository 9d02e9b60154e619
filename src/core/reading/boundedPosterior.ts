import { inverseMills, normalLogCdf, normalLogPdf } from '../stats/normal.ts';

/** All on the natural log scale. */
export interface BoundedReading {
  readonly priorMean: number;
  readonly priorSd: number;
  /** The bound, and the sd of the noise of the reading that hit it. */
  readonly bound: number;
  readonly noiseSd: number;
  readonly side: 'at-most' | 'at-least';
}

export interface Posterior {
  readonly mean: number;
  readonly sd: number;
  /** Probability that the true level is at most `x`. */
  readonly cdf: (x: number) => number;
  readonly quantile: (p: number) => number;
}

/**
 * What is known of the true level when the reading only hit a limit of the meter.
 * The noisy reading is what was cut off, not the true level, so the density is prior(level) x P(reading beyond the bound | level):
 * a normal prior truncated in the reading, not in the level. Mean and sd are exact; cdf and quantiles by Gauss-Legendre quadrature.
 * @returns the posterior on the log scale; mean and bound on the side that the bound points to
 * @accuracy cdf 1e-10 against the closed moments and against a seeded simulation (1e-2)
 */
export function boundedPosterior(reading: BoundedReading): Posterior {
  const { priorMean, priorSd, bound, noiseSd } = reading;
  // An at-most bound is the mirror image of an at-least bound.
  if (reading.side === 'at-most') {
    const mirror = boundedPosterior({ ...reading, priorMean: -priorMean, bound: -bound, side: 'at-least' });
    return { mean: -mirror.mean, sd: mirror.sd, cdf: (x) => 1 - mirror.cdf(-x), quantile: (p) => -mirror.quantile(1 - p) };
  }
  const total = Math.hypot(priorSd, noiseSd);
  const distance = (priorMean - bound) / total;
  const pull = inverseMills(distance);
  const share = priorSd / total;

  const table = cumulate(priorSd / noiseSd, (priorMean - bound) / noiseSd);
  return {
    mean: priorMean + priorSd * share * pull,
    sd: priorSd * Math.sqrt(1 - share ** 2 * pull * (pull + distance)),
    cdf: (x) => table.cdf((x - priorMean) / priorSd),
    quantile: (p) => priorMean + priorSd * table.quantile(p),
  };
}

/** Nodes and weights of the 10-point Gauss-Legendre rule on [-1, 1], positive half. */
const NODES = [
  [0.1488743389816312, 0.2955242247147529],
  [0.4333953941292472, 0.2692667193099963],
  [0.6794095682990244, 0.219086362515982],
  [0.8650633666889845, 0.1494513491505806],
  [0.9739065285171717, 0.0666713443086881],
] as const;

function integrate(f: (u: number) => number, from: number, to: number): number {
  const [middle, half] = [(from + to) / 2, (to - from) / 2];
  return half * NODES.reduce((sum, [node, weight]) => sum + weight * (f(middle + half * node) + f(middle - half * node)), 0);
}

/** Distribution of u with density proportional to phi(u) Phi(offset + slope u), by panels that follow its peak and its edge. */
function cumulate(slope: number, offset: number): { cdf: (u: number) => number; quantile: (p: number) => number } {
  const logDensity = (u: number) => normalLogPdf(u) + normalLogCdf(offset + slope * u);
  const peak = peakOf(slope, offset);
  const height = logDensity(peak);
  const density = (u: number) => Math.exp(logDensity(u) - height);

  const mills = inverseMills(offset + slope * peak);
  const width = 1 / Math.sqrt(1 + slope ** 2 * mills * (mills + offset + slope * peak));
  const edge = -offset / slope;
  const steps = Array.from({ length: 41 }, (_, i) => i - 20);
  const marks = steps.flatMap((k) => [peak + 0.5 * k, peak + 0.6 * width * k, edge + (0.5 * k) / slope]);
  const cuts = [...new Set(marks)].filter((u) => u >= peak - 10 && u <= peak + 10).sort((a, b) => a - b);

  let all = 0;
  const panels = cuts.slice(1).map((to, i) => {
    const panel = { from: cuts[i] ?? to, to, before: all };
    all += integrate(density, panel.from, to);
    return panel;
  });
  const cdf = (u: number) => {
    const panel = panels.findLast(({ from }) => from <= u);
    if (panel === undefined) return 0;
    return u >= panel.to ? 1 : Math.min(1, (panel.before + integrate(density, panel.from, u)) / all);
  };
  return { cdf, quantile: (p) => bisect((u) => cdf(u) - p, peak - 10, peak + 10) };
}

/** The mode: where u = slope * inverseMills(offset + slope u), whose two sides cross once. */
const peakOf = (slope: number, offset: number): number =>
  bisect((u) => u - slope * inverseMills(offset + slope * u), 0, slope * inverseMills(offset));

/** The root of a rising function, to the last digit. */
function bisect(f: (u: number) => number, from: number, to: number): number {
  let [low, high] = [from, to];
  for (let i = 0; i < 200; i++) {
    const middle = (low + high) / 2;
    if (middle === low || middle === high) break;
    if (f(middle) < 0) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}
