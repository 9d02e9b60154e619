import { foodsById } from '../../../content/foods.ts';
import type { DayEvent, Portion } from '../../../core/plaque/day/types.ts';
import { sayMinute } from '../../../core/visit/sayDescribedDays.ts';
import { formatNumber, plural } from '../../format.ts';

const KINDS = {
  gum: 'Gum without sugar',
  cheese: 'Cheese',
  water: 'Water',
  brushing: 'Brushing',
  nap: 'Nap',
} as const;
const RINSES = { fluoride: 'Fluoride rinse', alkaline: 'Bicarbonate rinse', urea: 'Urea rinse' } as const;

/** The person's own word for it, or what it is. */
export function nameEvent(event: DayEvent): string {
  if (event.label) return event.label;
  if (event.kind === 'rinse') return RINSES[event.rinse];
  if (event.kind !== 'eating') return KINDS[event.kind];
  const [first, ...others] = event.portions.map(namePortion);
  const more = others.length > 0 ? ` and ${others.length} more` : '';
  return `${first ?? 'Food'}${more}${event.sipped ? ', sipped' : ''}`;
}

export const namePortion = (portion: Portion): string =>
  'typed' in portion ? portion.typed.name : (foodsById.get(portion.food)?.name.en ?? portion.food);

/** "Cola, 330 mL". */
export function sayPortion(portion: Portion): string {
  const unit = 'typed' in portion ? portion.typed.unit : (foodsById.get(portion.food)?.unit ?? 'g');
  return `${namePortion(portion)}, ${formatNumber(portion.amount)} ${unit}`;
}

/** "15:15, for 60 minutes". */
export const sayWhen = ({ startMinute, minutes }: Pick<DayEvent, 'startMinute' | 'minutes'>): string =>
  `${sayMinute(startMinute)}, for ${minutes < 1 ? 'less than a minute' : plural(Math.round(minutes), 'minute')}`;
