/**
 * Sum that loses no digits to the order or the size of the terms (Neumaier): what each addition rounds away is added up apart.
 * @accuracy as if summed in twice the digits, then rounded once, unless the terms cancel almost wholly
 */
export function compensatedSum(values: Iterable<number>): number {
  let sum = 0;
  let lost = 0;
  for (const value of values) {
    const next = sum + value;
    lost += Math.abs(sum) >= Math.abs(value) ? sum - next + value : value - next + sum;
    sum = next;
  }
  return sum + lost;
}
