import { type FormEvent, type KeyboardEvent, type ReactNode, useEffect, useId, useRef, useState } from 'react';
import { DEMO_CODE, DEMO_PASSWORD } from '../../content/demo/members.ts';
import { ApiError } from '../data/api.ts';
import { sayWho } from '../data/hiding.ts';
import { type MemberName, signInAs, useMembers } from '../data/queries.ts';
import { LoadState } from './LoadState.tsx';

interface WhoFormProps {
  /** Then the password signs in anew. */
  readonly isSignedOut?: boolean;
  readonly lastHere: string;
  /** What stands in the way of a change; null = nothing. Asked before each try. */
  readonly findObstacle: () => Promise<string | null>;
  readonly onBack: () => Promise<void>;
  readonly children?: ReactNode;
}

/** A name and a code. A letter typed into the field chooses the next name that begins with it, so the hands stay where they are. */
export function WhoForm({ isSignedOut = false, lastHere, findObstacle, onBack, children }: WhoFormProps) {
  const members = useMembers();
  const id = useId();
  const field = useRef<HTMLInputElement>(null);
  const [memberId, setMemberId] = useState(lastHere);
  const [byPassword, setByPassword] = useState(isSignedOut);
  const [typed, setTyped] = useState('');
  const [problem, setProblem] = useState<string | null>(null);
  const [isSending, setSending] = useState(false);
  const isReady = members.data !== undefined;
  // biome-ignore lint/correctness/useExhaustiveDependencies: to the field when it comes, and when it changes what it takes
  useEffect(() => field.current?.focus(), [isReady, byPassword]);
  if (!members.data) return <LoadState query={members} what="the names" />;
  const list = members.data.members;

  const submit = async (event: FormEvent) => {
    event.preventDefault();
    setSending(true);
    try {
      const obstacle = await findObstacle();
      setProblem(obstacle);
      if (obstacle !== null) return;
      if (isSignedOut) await signInAs(memberId, typed);
      else await sayWho(memberId, byPassword ? { password: typed } : { code: typed });
      await onBack();
    } catch (error) {
      if (!(error instanceof ApiError)) throw error;
      setProblem(error.status === 429 ? 'Too many tries in a minute. Wait a little.' : error.message);
    } finally {
      setTyped('');
      setSending(false);
      field.current?.focus();
    }
  };
  const onKey = (event: KeyboardEvent) => {
    if (byPassword || event.ctrlKey || event.metaKey || event.altKey || !/^\p{L}$/u.test(event.key)) return;
    event.preventDefault();
    setMemberId(nextByLetter(list, memberId, event.key) ?? memberId);
  };
  return (
    <form className="who-form" onSubmit={(event) => void submit(event)}>
      <fieldset>
        <legend className="sr-only">Your name</legend>
        {list.map((member) => (
          <label key={member.id} className="choice-row">
            <input type="radio" name={`${id}-who`} checked={memberId === member.id} onChange={() => setMemberId(member.id)} />
            <span>{member.name}</span>
            <span className="aside">{member.roles.join(', ')}</span>
          </label>
        ))}
      </fieldset>
      <label htmlFor={id}>{byPassword ? 'Password' : 'Code'}</label>
      <input
        key={byPassword ? 'password' : 'code'}
        id={id}
        ref={field}
        type="password"
        inputMode={byPassword ? undefined : 'numeric'}
        autoComplete="off"
        value={typed}
        aria-describedby={`${id}-hint`}
        onKeyDown={onKey}
        onChange={(event) => setTyped(byPassword ? event.target.value : event.target.value.replace(/\D/g, '').slice(0, 8))}
      />
      <p id={`${id}-hint`} className="hint">
        {byPassword ? !isSignedOut && 'The password opens a code again that was shut.' : 'A letter chooses a name, digits are the code.'}
        {members.data.inventedPractice !== null &&
          ` Every member of this invented practice has the code ${DEMO_CODE} and the password ${DEMO_PASSWORD}.`}
      </p>
      <p className="problem" role="alert">
        {problem}
      </p>
      <div className="actions">
        <button type="submit" className="action primary" disabled={isSending || typed === ''}>
          Go on as {list.find((member) => member.id === memberId)?.name ?? 'this member'}
        </button>
        {!isSignedOut && (
          <button type="button" className="action" onClick={() => setByPassword(!byPassword)}>
            {byPassword ? 'Use the code' : 'Use the password'}
          </button>
        )}
        {children}
      </div>
    </form>
  );
}

/** The next member, after the chosen one, with a word of the name that begins with the letter. */
export function nextByLetter(members: readonly Pick<MemberName, 'id' | 'name'>[], chosen: string, letter: string): string | undefined {
  const at = members.findIndex((member) => member.id === chosen);
  const inOrder = [...members.slice(at + 1), ...members.slice(0, at + 1)];
  const plain = (text: string) => text.normalize('NFD').toLowerCase();
  return inOrder.find(({ name }) => name.split(/\s+/).some((word) => plain(word).startsWith(plain(letter))))?.id;
}
