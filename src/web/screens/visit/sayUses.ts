import { placedByItem } from '../../../core/regimen/dayStrip/placedByItem.ts';
import type { DayRhythm, DayStrip, RhythmId } from '../../../core/regimen/dayStrip/types.ts';
import { sayMinute } from '../../../core/visit/sayDescribedDays.ts';
import { capitalise, formatMonth, joinWords, plural, uncapitalise } from '../../format.ts';

/** How a day runs, as it is chosen and said. */
export const RHYTHM_NAMES: Readonly<Record<RhythmId, string>> = {
  home: 'at home',
  school: 'school',
  work: 'day work',
  early: 'early shift',
  late: 'late shift',
  night: 'night shift',
};

/** "Paste 07:10 and 22:25; gum 07:55, 13:10 and 19:10." */
export function sayUses({ placed }: Pick<DayStrip, 'placed'>, wordOf: (shelfItemId: string) => string): string {
  const said = placedByItem(placed).map(
    ({ shelfItemId, uses }) => `${wordOf(shelfItemId)} ${joinWords(uses.map(({ minute }) => sayMinute(minute)))}`,
  );
  return said.length === 0 ? 'Nothing is used at home.' : `${capitalise(said.join('; '))}.`;
}

/** "Once all that waits is signed, 3 uses a day: paste 07:10 and 22:25; gum 13:10." */
export function sayOnceSigned(strip: Pick<DayStrip, 'placed'>, wordOf: (shelfItemId: string) => string): string {
  const { length } = strip.placed;
  const uses = length === 0 ? 'nothing at a fixed time.' : `${plural(length, 'use')} a day: ${uncapitalise(sayUses(strip, wordOf))}`;
  return `Once all that waits is signed${length === 0 ? ': ' : ', '}${uses}`;
}

/** On what ground the times stand; a usual day says that nobody asked, or that it is too long ago. */
export function sayBasis({ basis, rhythm = 'home', askedOn }: Pick<DayRhythm, 'basis' | 'rhythm' | 'askedOn'>): string {
  if (basis === 'told') return 'By the day as it was described.';
  const usual = `usual times (${RHYTHM_NAMES[rhythm]})`;
  const asked = askedOn === undefined ? '' : `asked in ${formatMonth(askedOn)}`;
  if (basis === 'named') return `By ${usual}${asked && `, ${asked}`}; own times may differ.`;
  return asked
    ? `How the days run was last ${asked}, which is out of date: ${usual} assumed.`
    : `How the days run was not asked: ${usual} assumed.`;
}
