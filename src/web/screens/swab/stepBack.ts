import type { SwabReading } from '../../../core/reading/types.ts';

/** In the order in which a swab is noted. */
const ORDER: readonly (readonly (keyof SwabReading)[])[] = [
  ['beforeCleaning'],
  ['minutesSinceEating', 'minutesSinceBrushing', 'minutesSinceRinsing'],
  ['operator'],
  ['site'],
  ['activatedAt'],
  ['failed', 'takenAt'],
  ['notTaken', 'notTakenNote'],
];

/** The reading without what was noted last, where the page was opened anew and remembers no keys. A number is only taken back by whoever typed it. */
export function stepBack(reading: SwabReading): SwabReading | undefined {
  const last = reading.rlu === undefined ? ORDER.findLast((fields) => fields.some((f) => reading[f] !== undefined)) : undefined;
  if (!last) return undefined;
  return Object.fromEntries(Object.entries(reading).filter(([field]) => !last.includes(field as keyof SwabReading)));
}
