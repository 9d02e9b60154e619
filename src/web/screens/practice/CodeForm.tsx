import { type FormEvent, useRef, useState } from 'react';
import { setCode } from '../../data/practiceQueries.ts';
import { useSend } from '../../data/useSend.ts';
import { TextLine } from '../../parts/fields.tsx';
import { focusFirstProblem } from '../../parts/focusFirstProblem.ts';
import { SaveBar } from '../../parts/SaveBar.tsx';

interface CodeFormProps {
  readonly memberId: string;
  readonly onSet: () => Promise<unknown>;
  readonly close: (said?: string) => void;
}

/** One's own short code, with the password asked once. */
export function CodeForm({ memberId, onSet, close }: CodeFormProps) {
  const form = useRef<HTMLFormElement>(null);
  const [password, setPassword] = useState('');
  const [code, setTyped] = useState('');
  const [isTried, setTried] = useState(false);
  const sending = useSend();
  const problems = {
    password: password === '' ? 'Your password is needed once.' : undefined,
    code: /^\d{4,8}$/.test(code) ? undefined : 'A code has 4 to 8 digits.',
  };
  const count = Object.values(problems).filter(Boolean).length;
  const submit = (event: FormEvent) => {
    event.preventDefault();
    setTried(true);
    if (count > 0) return focusFirstProblem(form.current);
    void sending.send(async () => {
      await setCode(memberId, password, code);
      await onSet();
      close('Your code is set.');
    });
  };
  return (
    <form ref={form} noValidate onSubmit={submit} aria-label="Your code">
      <TextLine
        label="Your password"
        kind="password"
        autoComplete="current-password"
        value={password}
        problem={isTried ? problems.password : undefined}
        onChange={setPassword}
      />
      <TextLine
        label="New code"
        kind="password"
        value={code}
        problem={isTried ? problems.code : undefined}
        hint="4 to 8 digits. With your name it brings you to this screen; after five wrong tries it is shut until you give the password."
        onChange={setTyped}
      />
      <SaveBar saving={sending} problemCount={isTried ? count : 0} saveWords="Set the code" onLeave={() => close()} />
    </form>
  );
}
