/** ratio = share / (1 - share): shares of the variance are bounded, ratios are not. */
export const ratioOfShare = (share: number): number => share / (1 - share);

/** Shares at which the slope is looked at first; the last stands for a residual variance of nothing. */
const SHARES = [0, 0.01, 0.05, 0.2, 0.4, 0.6, 0.8, 0.9, 0.97, 0.99, 0.999, 0.99999, 1 - 1e-10] as const;

/**
 * The ratio 0 or more at which a function is lowest, found by the zeros of its slope between fixed shares.
 * @param at  value and slope by the ratio; undefined where there is none
 * @returns 0 where the function only rises; undefined where it falls without end or has no value
 */
export function lowestRatio(at: (ratio: number) => { readonly value: number; readonly slope: number } | undefined): number | undefined {
  let best: { readonly ratio: number; readonly value: number } | undefined;
  const consider = (share: number) => {
    const ratio = ratioOfShare(share);
    const value = at(ratio)?.value;
    if (value !== undefined && (best === undefined || value < best.value)) best = { ratio, value };
  };
  // By the share: it stays finite where the slope by the ratio fades away.
  const slopeAt = (share: number) => {
    const slope = at(ratioOfShare(share))?.slope;
    return slope === undefined ? undefined : slope / (1 - share) ** 2;
  };
  let [left, leftSlope] = [0, slopeAt(0)];
  if (leftSlope === undefined) return undefined;
  if (leftSlope >= 0) consider(0);
  for (const share of SHARES.slice(1)) {
    const slope = slopeAt(share);
    if (slope === undefined) return undefined;
    if (leftSlope < 0 && slope >= 0) consider(findZero(slopeAt, { left, leftSlope, right: share, rightSlope: slope }));
    [left, leftSlope] = [share, slope];
  }
  if (leftSlope < 0) return undefined;
  return best?.ratio;
}

const MOST_STEPS = 60;
/** Relative change of a share and of its complement, so also of the ratio, below which only rounding is left. */
const CLOSE = 1e-11;

/** Zero of a function between two places where it has different signs: false position, the Illinois variant. */
function findZero(
  slopeAt: (share: number) => number | undefined,
  start: { readonly left: number; readonly leftSlope: number; readonly right: number; readonly rightSlope: number },
): number {
  let { left, leftSlope, right, rightSlope } = start;
  let before: number | undefined;
  let lastSide = 0;
  for (let step = 0; step < MOST_STEPS; step++) {
    // Every fourth step halves the bracket, so that it closes whatever the function does.
    const middle = step % 4 === 3 ? (left + right) / 2 : right - (rightSlope * (right - left)) / (rightSlope - leftSlope);
    const slope = slopeAt(middle) ?? 0;
    if (slope === 0 || Math.abs(middle - (before ?? left)) <= CLOSE * Math.min(middle, 1 - middle)) return middle;
    const side = Math.sign(slope);
    if (side < 0) {
      [left, leftSlope] = [middle, slope];
      if (lastSide === side) rightSlope /= 2;
    } else {
      [right, rightSlope] = [middle, slope];
      if (lastSide === side) leftSlope /= 2;
    }
    lastSide = side;
    before = middle;
  }
  return (left + right) / 2;
}
