import { readyDays } from '../../../content/readyDays.ts';
import type { AcidDay } from '../../../core/plaque/day/types.ts';
import { sayDescribedDays } from '../../../core/visit/sayDescribedDays.ts';
import { formatDate } from '../../format.ts';
import { Key } from '../../parts/Key.tsx';
import { Link } from '../../parts/Link.tsx';
import type { DayWork } from './dayWork.ts';

/** A day that nothing was told of yet, with the hours at which most people sleep. */
const EMPTY: AcidDay = { wakeMinute: 420, sleepMinute: 1380, events: [] };

/** What a key begins a day from, by its letter. */
export function listBeginnings({ bundle: { earlierDay } }: Pick<DayWork, 'bundle'>) {
  const ready = readyDays.map(({ name, day }, i) => ({ key: String(i + 1), says: name.en, begin: { days: [day] } }));
  const earlier = earlierDay
    ? [
        {
          key: 'e',
          says: `The day told on ${formatDate(earlierDay.onDate)}: ${sayDescribedDays(earlierDay.told)}`,
          begin: withoutTried(earlierDay.told),
        },
      ]
    : [];
  return [...earlier, ...ready, { key: '0', says: 'An empty day', begin: { days: [EMPTY] } }];
}

/** What was tried then, and what stood on that leaflet, is not begun with. */
const withoutTried = ({ days, mouth, saliva }: NonNullable<DayWork['told']>): NonNullable<DayWork['told']> => ({
  days,
  ...(mouth && { mouth }),
  ...(saliva && { saliva }),
});

/** Nothing is told yet: a day that is near is quicker to change than an empty one to fill. */
export function BeginDay({ work }: { readonly work: DayWork }) {
  const { isClosed, save, bundle } = work;
  if (isClosed) return <p className="opening">No day was told at this visit.</p>;
  return (
    <section aria-label="Begin">
      <p className="opening">No day is told yet. Which of these is nearest? It is changed in a few keys.</p>
      <ul className="day-moves">
        {listBeginnings(work).map(({ key, says, begin }) => (
          <li key={key}>
            <button type="button" className="answer" aria-keyshortcuts={key} onClick={() => save(begin)}>
              <Key>{key}</Key>
              <span>{says}</span>
            </button>
          </li>
        ))}
      </ul>
      <p className="small">
        The ready-made days are invented and nobody's. <Link to={`/visits/${bundle.visitId}/diary`}>A paper diary to take home</Link>, in
        the language of the visit.
      </p>
    </section>
  );
}
