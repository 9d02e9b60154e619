import type { ControlSpan } from '../../../core/checks/controlSpan.ts';
import type { Meter, PastReading, StudySwab, SwabCondition, SwabLot, SwabReading } from '../../../core/reading/types.ts';
import type { MouthDecision } from '../../../core/visit/types.ts';

/** What stands on the page, one at a time. The first ten are the way to a number; the next eight stop it. */
export type SwabStep =
  | 'before-cleaning'
  | 'since'
  | 'since-eating'
  | 'since-brushing'
  | 'since-rinsing'
  | 'taken-by'
  | 'site'
  | 'start'
  | 'count-down'
  | 'number'
  | 'no-site'
  | 'too-soon'
  | 'no-meter'
  | 'control-out'
  | 'not-compared'
  | 'after-cleaning'
  | 'other-site'
  | 'stopped'
  | 'choose-reason'
  | 'type-note'
  | 'not-taken'
  | 'failed'
  | 'read';

/** What the practice and the record say; the same all through one swab. */
export interface SwabSetting {
  readonly meters: readonly Meter[];
  readonly lots: readonly SwabLot[];
  /** In the order in which they are offered. */
  readonly members: readonly { readonly name: string; readonly trainedSwab: boolean }[];
  readonly pastReadings: readonly PastReading[];
  readonly studySwabs?: readonly StudySwab[] | undefined;
  readonly conditions: readonly SwabCondition[];
  readonly onDate: string;
  readonly timeZone: string | undefined;
  /** How the controls of meters and lots stand today; absent = not known. */
  readonly controls?: readonly ControlSpan[] | undefined;
  /** What this mouth means for a swab; null where the usual site is there. */
  readonly mouth: MouthDecision['swab'];
}

/** What time it is: `sinceActivationS` undefined = not known, because a clock was set back. */
export interface SwabMoment {
  readonly now: string;
  readonly sinceActivationS: number | undefined;
}

export type SinceField = 'minutesSinceEating' | 'minutesSinceBrushing' | 'minutesSinceRinsing';

/** What undo gives back. */
export interface Noted {
  readonly reading: SwabReading;
  readonly meterId: string | undefined;
  /** Asked, and not known: they stay unknown and are not asked again. */
  readonly notKnown: readonly (SinceField | 'since')[];
  readonly menu: 'choose-reason' | 'type-note' | null;
}

export interface SwabFlow extends Noted {
  /** Why the last key or number was not taken over. */
  readonly problem: string | null;
  /** As it was before each key, for undo. */
  readonly before: readonly Noted[];
}

export type SwabEvent = { readonly key: string } | { readonly typed: string };

export const SINCE_STEPS = {
  'since-eating': 'minutesSinceEating',
  'since-brushing': 'minutesSinceBrushing',
  'since-rinsing': 'minutesSinceRinsing',
} as const satisfies Partial<Record<SwabStep, SinceField>>;

export function beginFlow(reading: SwabReading, meterId: string | undefined): SwabFlow {
  return { reading, meterId, notKnown: [], menu: null, problem: null, before: [] };
}

/** When the person was swabbed, at visits and for studies: each time the plaque was wiped off. */
export const swabTimes = ({ pastReadings, studySwabs = [] }: SwabSetting): string[] =>
  [...pastReadings, ...studySwabs].map(({ takenAt }) => takenAt);

export function findMeter({ meters }: SwabSetting, meterId: string | undefined): Meter | undefined {
  return meters.find((m) => m.id === meterId) ?? (meters.length === 1 ? meters[0] : undefined);
}

export function enoughMinutes(step: keyof typeof SINCE_STEPS, { conditions }: SwabSetting): number {
  const limit = conditions.find((c) => c.id === step)?.limit;
  if (limit === undefined) throw new RangeError(`the swab condition ${step} needs its limit`);
  return limit;
}

/** Whole seconds left, never below 0. */
export function secondsLeft(countdownS: number, { sinceActivationS }: SwabMoment): number {
  return sinceActivationS === undefined ? 0 : Math.max(0, Math.ceil(countdownS - sinceActivationS));
}
