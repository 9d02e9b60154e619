import { requirePositive } from '../../reading/requirePositive.ts';
import type { SwallowVolumes } from './clearanceRate.ts';
import { swallowsPerMin } from './clearanceRate.ts';
import { type FlowDrive, salivaFlow } from './flow.ts';

export interface Mouthful extends SwallowVolumes {
  readonly drive: FlowDrive;
  /** Sugar in saliva at the start, the mouth full and about to swallow. mmol/L, 0 or more. */
  readonly startMmolPerL: number;
  /** Food that stays between the teeth: what it holds at the start, mmol per litre of the swallow volume, and how long half of it takes. */
  readonly retained?: { readonly mmolPerL: number; readonly halfTimeMinutes: number };
}

export interface Clearance {
  /** One for each minute asked for, mmol/L. */
  readonly mmolPerL: readonly number[];
  /** When one swallowed, minutes; the first at 0. */
  readonly swallowMinutes: readonly number[];
}

const STEPS_PER_SWALLOW = 64;
const HALVINGS = 50;

/**
 * Clearance swallow by swallow: between swallows saliva flows in and dilutes, at the swallow volume one swallows down to the residual
 * volume, and the concentration stays as it is at that moment.
 * @param atMinutes  rising, 0 or more, at most 1,440
 * @throws RangeError for a concentration, volume or flow out of range, or minutes that do not rise
 * @accuracy 1e-8 of the concentration against the closed forms (Runge-Kutta, 64 steps between swallows)
 * @source dawes1983
 */
export function clearBySwallows(mouthful: Mouthful, atMinutes: readonly number[]): Clearance {
  checkMouthful(mouthful, atMinutes);
  const { residualVolumeMl, swallowVolumeMl, startMmolPerL } = mouthful;
  const mmolPerL: number[] = [];
  const swallowMinutes = [0];
  let now: Fluid = { minute: 0, volumeMl: residualVolumeMl, micromol: startMmolPerL * residualVolumeMl };
  for (const until of atMinutes) {
    while (now.minute < until) {
      const flow = salivaFlow(mouthful.drive, now.micromol / now.volumeMl);
      const step = Math.min(1 / (STEPS_PER_SWALLOW * swallowsPerMin(mouthful, flow)), until - now.minute);
      const next = flowIn(mouthful, now, step);
      if (next.volumeMl < swallowVolumeMl) now = next;
      else {
        const full = fillUp(mouthful, now, step);
        swallowMinutes.push(full.minute);
        now = { ...full, volumeMl: residualVolumeMl, micromol: (full.micromol * residualVolumeMl) / full.volumeMl };
      }
    }
    mmolPerL.push(now.micromol / now.volumeMl);
  }
  return { mmolPerL, swallowMinutes };
}

interface Fluid {
  readonly minute: number;
  readonly volumeMl: number;
  readonly micromol: number;
}

/** One classical Runge-Kutta step without a swallow. */
function flowIn(mouthful: Mouthful, from: Fluid, step: number): Fluid {
  const slope = (at: Fluid) => ({ flow: salivaFlow(mouthful.drive, at.micromol / at.volumeMl), release: releaseAt(mouthful, at.minute) });
  const move = (by: number, { flow, release }: ReturnType<typeof slope>): Fluid => ({
    minute: from.minute + by,
    volumeMl: from.volumeMl + by * flow,
    micromol: from.micromol + by * release,
  });
  const first = slope(from);
  const second = slope(move(step / 2, first));
  const third = slope(move(step / 2, second));
  const fourth = slope(move(step, third));
  const mean = (key: 'flow' | 'release') => (first[key] + 2 * second[key] + 2 * third[key] + fourth[key]) / 6;
  return move(step, { flow: mean('flow'), release: mean('release') });
}

/** The moment within the step at which the mouth is full. */
function fillUp(mouthful: Mouthful, from: Fluid, step: number): Fluid {
  let [low, high] = [0, step];
  for (let i = 0; i < HALVINGS; i += 1) {
    const middle = (low + high) / 2;
    if (flowIn(mouthful, from, middle).volumeMl < mouthful.swallowVolumeMl) low = middle;
    else high = middle;
  }
  return flowIn(mouthful, from, high);
}

/** µmol per minute. */
function releaseAt({ retained, swallowVolumeMl }: Mouthful, minute: number): number {
  if (retained === undefined) return 0;
  const perMin = Math.LN2 / retained.halfTimeMinutes;
  return retained.mmolPerL * swallowVolumeMl * perMin * Math.exp(-perMin * minute);
}

function checkMouthful(mouthful: Mouthful, atMinutes: readonly number[]): void {
  const { startMmolPerL, retained, drive } = mouthful;
  swallowsPerMin(mouthful, salivaFlow(drive, 0));
  if (!(startMmolPerL >= 0 && startMmolPerL <= 6000)) throw new RangeError(`startMmolPerL must be 0 to 6,000: ${startMmolPerL}`);
  if (retained !== undefined) {
    requirePositive(retained.halfTimeMinutes, 'retained.halfTimeMinutes');
    if (!(retained.mmolPerL >= 0 && retained.mmolPerL <= 6000)) {
      throw new RangeError(`retained.mmolPerL must be 0 to 6,000: ${retained.mmolPerL}`);
    }
  }
  atMinutes.forEach((minute, i) => {
    if (!(minute >= (atMinutes[i - 1] ?? 0) && minute <= 1440)) throw new RangeError(`atMinutes must rise from 0 to 1,440: ${minute}`);
  });
}
