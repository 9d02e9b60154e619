/** Moments at which the model stood still. Grows by doubling, so that no step allocates. */
export interface Steps {
  minutes: Float64Array;
  ph: Float64Array;
  count: number;
}

const FIRST_ROOM = 4096;

export function buildSteps(startPh: number): Steps {
  const steps = { minutes: new Float64Array(FIRST_ROOM), ph: new Float64Array(FIRST_ROOM), count: 0 };
  addStep(steps, 0, startPh);
  return steps;
}

/** The first steps of an earlier curve, up to a moment. */
export function stepsUntil(stepMinutes: Float64Array, stepPh: Float64Array, minute: number): Steps {
  let count = stepMinutes.findIndex((at) => at > minute);
  if (count < 0) count = stepMinutes.length;
  const room = Math.max(FIRST_ROOM, 2 * count);
  const steps = { minutes: new Float64Array(room), ph: new Float64Array(room), count };
  steps.minutes.set(stepMinutes.subarray(0, count));
  steps.ph.set(stepPh.subarray(0, count));
  return steps;
}

export function addStep(steps: Steps, minute: number, ph: number): void {
  if (steps.count === steps.minutes.length) {
    steps.minutes = doubled(steps.minutes);
    steps.ph = doubled(steps.ph);
  }
  steps.minutes[steps.count] = minute;
  steps.ph[steps.count] = ph;
  steps.count += 1;
}

function doubled(values: Float64Array): Float64Array {
  const more = new Float64Array(2 * values.length);
  more.set(values);
  return more;
}
