import type { SessionView } from '../../../api/apiTypes.ts';
import { usePractice } from '../../data/practiceQueries.ts';
import { Link } from '../../parts/Link.tsx';
import { LoadState } from '../../parts/LoadState.tsx';
import { useHashTarget } from '../../parts/useHashTarget.ts';
import { Lots } from './Lots.tsx';
import { Meters } from './Meters.tsx';
import { StandingOrders } from './StandingOrders.tsx';
import { sayPractice } from './sayPractice.ts';
import { Team } from './Team.tsx';
import { ThisMachine } from './ThisMachine.tsx';

/** Meters, swab lots and team: what the practice says of itself. */
export function PracticeScreen({ session }: { readonly session: SessionView }) {
  const practice = usePractice();
  useHashTarget(practice.data !== undefined);
  if (!practice.data) return <LoadState query={practice} what="the practice" />;
  const { meters, lots, members, hideAfter } = practice.data;
  return (
    <>
      <h1>Practice</h1>
      <p className="opening">
        {session.practice.name}: {sayPractice(practice.data, session.today)}.
      </p>
      <p className="form-note">
        Place, methods and intervals stand under <Link to="/rules">Rules</Link>, what is in stock on the <Link to="/shelf">Shelf</Link>.
      </p>
      <Meters meters={meters} mayChange={session.member.roles.some((role) => role !== 'assistant')} />
      <Lots lots={lots} today={session.today} />
      <StandingOrders session={session} />
      <Team members={members} self={session.member} />
      <ThisMachine hideAfter={hideAfter} isLead={session.member.roles.includes('lead')} />
    </>
  );
}
