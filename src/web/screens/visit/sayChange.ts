import type { LevelChange } from '../../../core/risk/types.ts';
import { itemLabel } from '../../content.ts';
import { capitalise, formatNumber } from '../../format.ts';

type Part = LevelChange['changes'][number];

/** "To moderate: snacks between meals from 4 to 3." */
export function sayChange({ to, changes }: LevelChange): string {
  return `${capitalise(to)} with: ${changes.map(sayPart).join('; ')}.`;
}

function sayPart({ item, from, to }: Part): string {
  const label = itemLabel(item);
  if (typeof to === 'boolean') return `${label}: ${to ? 'yes' : 'no'}`;
  return typeof from === 'number' ? `${label}: ${formatNumber(to)} instead of ${formatNumber(from)}` : `${label}: ${formatNumber(to)}`;
}
