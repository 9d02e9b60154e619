import type { PlannedUse } from '../planFluoride.ts';
import { onceSigned, tasksPerDay } from './rankCandidates.ts';

/** Two brushings and as much again: up to here nothing lighter is looked for. Our proposal. */
const LIGHT_TASKS_PER_DAY = 4;

/**
 * How many tasks a day a lighter regimen than this may ask for: half of its own once all that waits is signed, but never fewer than four.
 * @returns undefined where it asks for four or fewer itself
 */
export function lighterLimit(lines: readonly PlannedUse[]): number | undefined {
  const tasks = [lines.filter((l) => l.state !== 'waiting-for-signature'), onceSigned(lines)].map((day) => tasksPerDay(day));
  const most = Math.max(...tasks);
  return most <= LIGHT_TASKS_PER_DAY ? undefined : Math.max(LIGHT_TASKS_PER_DAY, Math.floor(most / 2));
}
