import type { PracticeView } from '../../../api/bundles.ts';
import { joinWords, plural } from '../../format.ts';
import { isExpired } from './Lots.tsx';

/** "1 meter, 2 swab lots in date and 3 members" */
export function sayPractice({ meters, lots, members }: PracticeView, today: string): string {
  const inDate = lots.filter(({ lot }) => !isExpired(lot, today)).length;
  const working = members.filter((m) => m.active).length;
  return joinWords([plural(meters.length, 'meter'), `${plural(inDate, 'swab lot')} in date`, plural(working, 'member')]);
}
