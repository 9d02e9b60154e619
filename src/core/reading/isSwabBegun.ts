import type { SwabReading } from './types.ts';

/**
 * True once something became of the swab: it was activated, read, failed, or not taken for a reason. Questions asked beforehand alone
 * are no reading, and a visit that closes with only those has none on its record.
 */
export function isSwabBegun(reading: SwabReading | undefined): reading is SwabReading {
  if (reading === undefined) return false;
  const { activatedAt, rlu, failed, notTaken } = reading;
  return activatedAt !== undefined || rlu !== undefined || failed === true || notTaken !== undefined;
}
