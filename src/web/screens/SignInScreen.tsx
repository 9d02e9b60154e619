import { type FormEvent, useId, useState } from 'react';
import { DEMO_CODE, DEMO_PASSWORD } from '../../content/demo/members.ts';
import { useMembers, useSignIn } from '../data/queries.ts';
import { LoadState } from '../parts/LoadState.tsx';

/** Choose your name, give your password. */
export function SignInScreen() {
  const members = useMembers();
  const signIn = useSignIn();
  const id = useId();
  const [memberId, setMemberId] = useState<string | null>(null);
  const [password, setPassword] = useState('');
  const chosen = memberId ?? (members.data?.members.length === 1 ? (members.data.members[0]?.id ?? null) : null);
  const submit = (event: FormEvent) => {
    event.preventDefault();
    if (chosen) signIn.mutate({ memberId: chosen, password });
  };
  return (
    <main className="page sign-in">
      <h1>Ebbline</h1>
      {members.data?.inventedPractice && (
        <p className="hint">
          {members.data.inventedPractice} is an invented practice. Every person here is invented. Every member has the password{' '}
          {DEMO_PASSWORD} and the code {DEMO_CODE}.
        </p>
      )}
      <p className="opening">Who is working?</p>
      {members.data ? (
        <form onSubmit={submit}>
          <fieldset>
            <legend className="sr-only">Your name</legend>
            {members.data.members.map((member) => (
              <label key={member.id} className="choice-row">
                <input
                  type="radio"
                  name="member"
                  value={member.id}
                  checked={chosen === member.id}
                  onChange={() => setMemberId(member.id)}
                />
                <span>{member.name}</span>
                <span className="aside">{member.roles.join(', ')}</span>
              </label>
            ))}
          </fieldset>
          <label htmlFor={id}>Password</label>
          <input
            id={id}
            type="password"
            autoComplete="current-password"
            value={password}
            onChange={(event) => setPassword(event.target.value)}
          />
          <button type="submit" className="action primary" disabled={!chosen || password === '' || signIn.isPending}>
            Sign in
          </button>
          {signIn.error && (
            <p className="problem" role="alert">
              {signIn.error.message}
            </p>
          )}
        </form>
      ) : (
        <LoadState query={members} what="the names" />
      )}
    </main>
  );
}
