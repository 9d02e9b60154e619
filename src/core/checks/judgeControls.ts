import { firesRule, MULTI_RULES, type MultiRule, NO_RUNS, nextRuns, STOP_RULES } from '../stats/multiRules.ts';
import type { Control, ControlPlan, ControlTarget, PastTarget, StopDone, StopResolution } from './control.ts';
import type { ControlSpan } from './controlSpan.ts';
import { sayControlRule } from './sayControlRule.ts';

/** A lot's own first controls make its target; fewer say too little of the spread. */
export const CONTROLS_FOR_TARGET = 10;

export interface JudgedControl {
  readonly control: Control;
  /** `void` = it does not count, so nothing is said of it. */
  readonly state: ControlSpan['state'] | 'void';
  /** Of its time; absent where there was none, or where it does not count. */
  readonly target?: ControlTarget | undefined;
  /** Distance from the target in sd; absent without a target. */
  readonly z?: number | undefined;
  /** The rule that decided, the strongest first. */
  readonly rule?: MultiRule | undefined;
  readonly says: string;
}

export interface JudgedLot {
  readonly meterId: string;
  readonly lotId: string;
  readonly target?: ControlTarget | undefined;
  /** Why nothing can be judged yet, in words; empty with a target. */
  readonly waitsFor: string;
  /** Oldest first. */
  readonly controls: readonly JudgedControl[];
}

/**
 * The controls of one practice, by meter and lot, each against its target by the rules of the meter's plan. Without a target in the plan
 * the first ten of a lot make it and are not judged themselves. All on ln(RLU); a number at the meter's limit counts as that limit.
 * No rule reaches over a repair: the first control after it begins a new run.
 * @param controls  any order
 * @param plans     a meter without one is judged by every rule
 * @param resolutions  what was done about stops
 * @returns in the order in which meter and lot first appear
 */
export function judgeControls(
  controls: readonly Control[],
  plans: readonly ControlPlan[],
  resolutions: readonly StopResolution[],
): readonly JudgedLot[] {
  const repairs = resolutions.filter(isRepair);
  const inOrder = [...controls].sort((a, b) => (a.takenAt < b.takenAt ? -1 : a.takenAt > b.takenAt ? 1 : a.id < b.id ? -1 : 1));
  const byLot = new Map<string, Control[]>();
  for (const control of inOrder) {
    const key = JSON.stringify([control.meterId, control.lotId]);
    byLot.set(key, [...(byLot.get(key) ?? []), control]);
  }
  return [...byLot.values()].map((ofLot) =>
    judgeLot(
      ofLot,
      plans.find(({ meterId }) => meterId === ofLot[0]?.meterId),
      repairs,
    ),
  );
}

/** To take the control again mends nothing: what stopped the lot is still looked at together. */
const isRepair = ({ answer }: StopDone): boolean => answer !== 'repeated-control';

function judgeLot(controls: readonly Control[], plan: ControlPlan | undefined, repairs: readonly StopResolution[]): JudgedLot {
  const [first] = controls;
  if (!first) throw new RangeError('a lot is judged by its controls, and there is none');
  const { meterId, lotId } = first;
  const planned = plan?.targets.find((target) => target.lotId === lotId);
  const counted = controls.filter(({ state }) => state === 'valid');
  const own = planned ? undefined : targetOf(lotId, counted.slice(0, CONTROLS_FOR_TARGET));
  const target = planned ?? (own && 'meanLn' in own ? own : undefined);
  const past = (plan?.pastTargets ?? []).filter((one) => one.lotId === lotId);
  const madeFrom = planned ? (past.find(({ isFromItsFirst }) => isFromItsFirst)?.count ?? 0) : CONTROLS_FOR_TARGET;
  const learning = new Set(counted.slice(0, madeFrom).map(({ id }) => id));
  const rules = plan?.rules ?? MULTI_RULES;
  const repaired = new Set(repairs.filter((one) => one.lotId === lotId).map(({ controlId }) => controlId));
  // With the control itself the words stand in its note before there is a record.
  const isAfterRepair = ({ id, note }: Control) => repaired.has(id) || (note.did !== undefined && isRepair(note.did));
  return {
    meterId,
    lotId,
    target,
    waitsFor: own && 'waitsFor' in own ? own.waitsFor : '',
    controls: judgeEach(controls, { targetAt: (at) => targetAt(at, target, past), learning, rules, isAfterRepair }),
  };
}

interface Judging {
  readonly targetAt: (takenAt: string) => ControlTarget | undefined;
  readonly learning: ReadonlySet<string>;
  readonly rules: readonly MultiRule[];
  readonly isAfterRepair: (control: Control) => boolean;
}

/** A control stays held against the target of its time. */
function targetAt(takenAt: string, current: ControlTarget | undefined, past: readonly PastTarget[]): ControlTarget | undefined {
  const then = past.find(({ since = '', until }) => since <= takenAt && takenAt < until);
  return then ?? (current && (current.since ?? '') <= takenAt ? current : undefined);
}

function judgeEach(controls: readonly Control[], { targetAt, learning, rules, isAfterRepair }: Judging): JudgedControl[] {
  let runs = NO_RUNS;
  let isStopped = false;
  let last: ControlTarget | undefined;
  return controls.map((control): JudgedControl => {
    if (control.state === 'void') return { control, state: 'void', says: '' };
    const target = targetAt(control.takenAt);
    if (!target) return { control, state: 'no-target', says: '' };
    // Distances from one target say nothing beside those from another.
    if (target !== last || (isStopped && isAfterRepair(control))) runs = NO_RUNS;
    last = target;
    const z = (Math.log(control.rlu) - target.meanLn) / target.sdLn;
    if (learning.has(control.id)) return { control, target, state: 'no-target', z, says: '' };
    const after = nextRuns(runs, z);
    const fired = rules.filter((rule) => firesRule(rule, runs, after, z));
    runs = after;
    const stop = STOP_RULES.find((rule) => fired.includes(rule));
    isStopped = stop !== undefined;
    const rule = stop ?? fired[0];
    if (rule === undefined) return { control, target, state: 'in-control', z, says: '' };
    return { control, target, state: stop ? 'out' : 'warning', z, rule, says: sayControlRule(rule, z) };
  });
}

/** Mean and spread of ln(RLU) of a lot's first controls, or what is missing. */
function targetOf(lotId: string, first: readonly Control[]): ControlTarget | { readonly waitsFor: string } {
  const count = first.length;
  if (count < CONTROLS_FOR_TARGET) return { waitsFor: `${count} of ${CONTROLS_FOR_TARGET} first controls` };
  // By the numbers themselves: the spread of equal logarithms is not exactly 0.
  if (first.every(({ rlu }) => rlu === first[0]?.rlu))
    return { waitsFor: 'a control with another number: all are the same, so there is no spread to judge by' };
  const logs = first.map(({ rlu }) => Math.log(rlu));
  const meanLn = logs.reduce((sum, value) => sum + value, 0) / count;
  const sdLn = Math.sqrt(logs.reduce((sum, value) => sum + (value - meanLn) ** 2, 0) / (count - 1));
  return { lotId, meanLn, sdLn, count, from: 'first-controls' };
}
