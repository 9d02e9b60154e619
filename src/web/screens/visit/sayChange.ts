import type { LevelChange } from '../../../core/risk/types.ts';
import { itemLabel } from '../../content.ts';
import { capitalise, formatNumber, joinWords, uncapitalise } from '../../format.ts';

type Part = LevelChange['changes'][number];

/** "Low with fluoride paste twice a day or more and fluoride varnish in the last 6 months." */
export function sayChange({ to, changes }: LevelChange): string {
  return `${capitalise(to)} with ${joinWords(changes.map(sayPart))}.`;
}

function sayPart({ item, from, to }: Part): string {
  const label = uncapitalise(itemLabel(item));
  if (typeof to === 'boolean') return to ? label : `no ${label}`;
  return typeof from === 'number' ? `${label}: ${formatNumber(to)} instead of ${formatNumber(from)}` : `${label}: ${formatNumber(to)}`;
}
