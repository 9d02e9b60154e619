/**
 * The same observations with the natural log of their value.
 * @throws RangeError naming the value that has no logarithm: a reading of 0 is a bound of the meter, not a number to take the log of
 */
export function logValues<Observation extends { readonly value: number }>(observations: readonly Observation[]): Observation[] {
  return observations.map((observation, i) => {
    if (!(observation.value > 0)) {
      throw new RangeError(
        `observations.${i}.value must be above 0 to take its logarithm: ${observation.value}. Leave the reading out, or measure something the meter can see`,
      );
    }
    return { ...observation, value: Math.log(observation.value) };
  });
}
