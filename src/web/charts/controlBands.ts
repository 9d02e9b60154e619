import type { ControlTarget } from '../../core/checks/control.ts';
import type { JudgedLot } from '../../core/checks/judgeControls.ts';

/** The usual band holds about 95 in 100 controls. */
const BAND_SD = 2;

/** One stretch of time over which a lot's controls were held against one target. */
export interface ControlBand {
  /** UTC of its first and last control. */
  readonly first: string;
  readonly last: string;
  /** UTC at which the target took the place of another, where the lot had one before. */
  readonly since?: string | undefined;
  /** UTC at which another took its place, where the lot has controls of that one. */
  readonly until?: string | undefined;
  /** RLU. */
  readonly mean: number;
  readonly low: number;
  readonly high: number;
}

/** The bands of one lot, oldest first: each control stands on the one by which it was judged. */
export function listControlBands({ controls }: Pick<JudgedLot, 'controls'>): readonly ControlBand[] {
  const stretches: { readonly target: ControlTarget; readonly taken: string[] }[] = [];
  for (const { control, target } of controls) {
    if (!target) continue;
    const open = stretches.at(-1);
    if (open?.target === target) open.taken.push(control.takenAt);
    else stretches.push({ target, taken: [control.takenAt] });
  }
  return stretches.map(({ target, taken }, i) => {
    const [first = '', last = first] = [taken[0], taken.at(-1)];
    const { meanLn, sdLn } = target;
    const atSd = (sd: number) => Math.exp(meanLn + sd * sdLn);
    const bounds = { since: i > 0 ? (target.since ?? first) : undefined, until: stretches[i + 1]?.target.since };
    return { first, last, ...bounds, mean: atSd(0), low: atSd(-BAND_SD), high: atSd(BAND_SD) };
  });
}
