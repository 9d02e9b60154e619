export const HOURS_BETWEEN_SWABS = 24;
const HOUR_MS = 3_600_000;

/** A swab of a person, whatever it was for. */
export interface OtherSwab {
  readonly takenAt: string;
  readonly from: 'visit' | 'study';
}

/** Either may be the first: a number is sometimes typed a day late. Exactly 24 hours are enough. */
export const isTooNear = (takenAt: string, other: string): boolean =>
  Math.abs(Date.parse(takenAt) - Date.parse(other)) < HOURS_BETWEEN_SWABS * HOUR_MS;

/** The swab that forbids another at this time, the nearest where there are several. */
export function findNearSwab<S extends OtherSwab>(takenAt: string, others: readonly S[]): S | undefined {
  const away = (other: OtherSwab) => Math.abs(Date.parse(takenAt) - Date.parse(other.takenAt));
  return others.filter((other) => isTooNear(takenAt, other.takenAt)).sort((a, b) => away(a) - away(b))[0];
}
