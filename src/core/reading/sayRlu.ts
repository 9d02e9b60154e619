import type { Bound } from './types.ts';

const FORMAT = new Intl.NumberFormat('en-GB', { maximumFractionDigits: 1 });

/** "5,150 RLU", "60,000 RLU or more", "40 RLU or less". */
export function sayRlu(rlu: number, bound: Bound = 'exact'): string {
  const number = `${FORMAT.format(rlu)} RLU`;
  if (bound === 'at-least') return `${number} or more`;
  return bound === 'at-most' && rlu > 0 ? `${number} or less` : number;
}

/** "60,000". */
export const sayNumber = (value: number): string => FORMAT.format(value);
