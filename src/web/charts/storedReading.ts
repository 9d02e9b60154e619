import type { StoredReading } from '../../api/bundles.ts';
import { formatNumber } from '../format.ts';

export const isCounted = ({ state }: Pick<StoredReading, 'state'>): boolean => state === 'valid' || state === 'flagged';

/** "5,150", "40 or less". */
export function sayRlu({ rlu, bound }: Pick<StoredReading, 'rlu' | 'bound'>): string {
  if (rlu === null) return 'none';
  const limit = bound === 'at-most' ? ' or less' : bound === 'at-least' ? ' or more' : '';
  return `${formatNumber(rlu)}${limit}`;
}
