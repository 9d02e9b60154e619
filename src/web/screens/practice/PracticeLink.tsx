import type { SessionView } from '../../../api/apiTypes.ts';
import { usePractice } from '../../data/practiceQueries.ts';
import { capitalise } from '../../format.ts';
import { Link } from '../../parts/Link.tsx';
import { LoadState } from '../../parts/LoadState.tsx';
import { sayPractice } from './sayPractice.ts';

/** On the page of rules: where the practice's own meters, lots and members stand. */
export function PracticeLink({ session }: { readonly session: SessionView }) {
  const practice = usePractice();
  return (
    <section id="practice" aria-label="Meters, swab lots and team">
      <h2>Meters, swab lots and team</h2>
      {practice.data ? <p>{capitalise(sayPractice(practice.data, session.today))}.</p> : <LoadState query={practice} what="the practice" />}
      <p>
        <Link to="/practice">Open the page of the practice</Link>
      </p>
    </section>
  );
}
