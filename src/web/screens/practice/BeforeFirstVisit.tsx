import { usePractice } from '../../data/practiceQueries.ts';
import { useRules, useShelf } from '../../data/queries.ts';
import { Link } from '../../parts/Link.tsx';
import { listToDos } from './listToDos.ts';

/** A short list on the first page while a new practice is not ready; gone when it is. */
export function BeforeFirstVisit({ isAnyoneSeen }: { readonly isAnyoneSeen: boolean }) {
  const { data: practice } = usePractice();
  const { data: shelf } = useShelf();
  const { data: rules } = useRules();
  if (!practice || !shelf || !rules) return null;
  const todos = listToDos({ jurisdiction: rules.settings.jurisdiction, shelfSize: shelf.length, practice, isAnyoneSeen });
  if (todos.length === 0) return null;
  return (
    <section className="to-do" aria-label="Before the first visit">
      <h2>Before the first visit</h2>
      <ul>
        {todos.map(({ id, says, link, to }) => (
          <li key={id}>
            <span>{says}</span> <Link to={to}>{link}</Link>
          </li>
        ))}
      </ul>
    </section>
  );
}
