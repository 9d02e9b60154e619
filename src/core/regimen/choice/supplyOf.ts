import { addDays } from '../../visit/calendar.ts';
import type { PlannedUse } from '../planFluoride.ts';
import type { Supply } from '../types.ts';
import { packDays } from './packDays.ts';

/** Days that come out a hair below a whole number are that number. */
const SAME_WITHIN = 1e-9;
/** No refill is planned further ahead. */
const TEN_YEARS_DAYS = 3_650;

/**
 * How long each pack for the home lasts, and when the next one is needed if it is begun on a date. What waits for a signature has not begun.
 * @param startsOn  ISO local date; absent = no refill date
 */
export function supplyOf(uses: readonly PlannedUse[], startsOn: string | undefined): readonly Supply[] {
  return uses
    .filter(({ use }) => use.atVisit !== true)
    .map(({ item, use, state }) => {
      const exact = packDays(item, use);
      const days = exact === undefined ? null : Math.floor(exact + SAME_WITHIN);
      const isEnough = days === null || days > TEN_YEARS_DAYS || (use.courseDays !== undefined && use.courseDays <= days);
      const hasBegun = startsOn !== undefined && state !== 'waiting-for-signature';
      return { shelfItemId: item.id, days, refillOn: hasBegun && !isEnough ? addDays(startsOn, days) : null };
    });
}

/** The first of the refill dates; null where there is none. */
export const firstRefill = (supply: readonly Supply[]): string | null => supply.flatMap(({ refillOn }) => refillOn ?? []).sort()[0] ?? null;
