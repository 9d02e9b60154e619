import type { Span } from './nightSpans.ts';
import type { AcidDay, EatingEvent } from './types.ts';

/**
 * Acid minutes of a day by the id of what was eaten: each minute on the acid side is laid to what was begun last before it, the day before
 * included. What made none has 0.
 * @param stretches  minutes after midnight, of the same day
 */
export function acidMinutesOf({ events }: Pick<AcidDay, 'events'>, stretches: readonly Span[]): Readonly<Record<string, number>> {
  const eaten = events.filter((event): event is EatingEvent => event.kind === 'eating').sort((a, b) => a.startMinute - b.startMinute);
  const last = eaten.at(-1);
  const minutes = Object.fromEntries(eaten.map(({ id }) => [id, 0]));
  const lay = (id: string | undefined, from: number, to: number) => {
    if (id !== undefined && to > from) minutes[id] = (minutes[id] ?? 0) + to - from;
  };
  for (const { from, to } of stretches) {
    lay(last?.id, from, Math.min(to, eaten[0]?.startMinute ?? to));
    eaten.forEach(({ id, startMinute }, i) => {
      lay(id, Math.max(from, startMinute), Math.min(to, eaten[i + 1]?.startMinute ?? to));
    });
  }
  return minutes;
}
