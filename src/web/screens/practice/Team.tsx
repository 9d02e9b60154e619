import { useQueryClient } from '@tanstack/react-query';
import { type FormEvent, useRef, useState } from 'react';
import type { SessionView } from '../../../api/apiTypes.ts';
import type { PracticeView } from '../../../api/bundles.ts';
import { addMember, setPassword } from '../../data/practiceQueries.ts';
import { useSend } from '../../data/useSend.ts';
import { TextLine, TickLine, TicksLine } from '../../parts/fields.tsx';
import { focusFirstProblem } from '../../parts/focusFirstProblem.ts';
import { OpenForm } from '../../parts/OpenForm.tsx';
import { SaveBar } from '../../parts/SaveBar.tsx';
import { ChangeMemberForm } from './ChangeMemberForm.tsx';
import { CodeForm } from './CodeForm.tsx';
import { emptyMember, findMemberProblems, type MemberProblems, memberOf, passwordProblem, ROLES } from './memberDraft.ts';

type Member = PracticeView['members'][number];

interface TeamProps {
  readonly members: readonly Member[];
  readonly self: SessionView['member'];
}

export function Team({ members, self }: TeamProps) {
  const isLead = self.roles.includes('lead');
  return (
    <section id="team" tabIndex={-1} aria-label="Team">
      <h2>Team</h2>
      <p>Who works here, and what each may do. Everyone signs in by their own name, because each answer and signature carries it.</p>
      <table className="practice-table">
        <thead>
          <tr>
            <th scope="col">Name</th>
            <th scope="col">Roles</th>
            <th scope="col">Swabs</th>
            <th scope="col">Password</th>
            <th scope="col">Code</th>
            <th scope="col">
              <span className="sr-only">Change</span>
            </th>
          </tr>
        </thead>
        <tbody>
          {members.map((member) => (
            <tr key={member.id}>
              <th scope="row">{member.name}</th>
              <td data-label="Roles">{member.roles.join(', ')}</td>
              <td data-label="Swabs">{member.trainedSwab ? 'trained' : 'not trained'}</td>
              <td data-label="Password">{passwordWords(member)}</td>
              <td data-label="Code">{member.active && (member.hasCode ? 'set' : 'none yet')}</td>
              <td>
                <MemberForms member={member} self={self} />
              </td>
            </tr>
          ))}
        </tbody>
      </table>
      {isLead ? (
        <div className="actions">
          <OpenForm label="Add a member" isAction form={(close) => <MemberForm close={close} />} />
        </div>
      ) : (
        <p className="hint">A lead of the practice adds members.</p>
      )}
    </section>
  );
}

/** Password and code of one's own; a lead also changes what the others may do. */
function MemberForms({ member, self }: { readonly member: Member; readonly self: TeamProps['self'] }) {
  const reread = useReread();
  const isLead = self.roles.includes('lead');
  const isSelf = member.id === self.id;
  return (
    <>
      {member.active && (isLead || isSelf) && (
        <OpenForm
          label={member.hasPassword ? 'new password' : 'set a password'}
          about={`for ${member.name}`}
          form={(close) => <PasswordForm member={member} isSelf={isSelf} close={close} />}
        />
      )}
      {isSelf && member.hasPassword && (
        <OpenForm
          label={member.hasCode ? 'new code' : 'set a code'}
          about={`for ${member.name}`}
          form={(close) => <CodeForm memberId={member.id} onSet={reread} close={close} />}
        />
      )}
      {isLead && (
        <OpenForm
          label="roles"
          about={`of ${member.name}`}
          form={(close) => <ChangeMemberForm key={member.version} member={member} onChanged={reread} close={close} />}
        />
      )}
    </>
  );
}

function passwordWords({ active, hasPassword }: Member) {
  if (!active) return 'no longer works here';
  return hasPassword ? 'set' : <span className="problem">none yet</span>;
}

/** Read again by every page that shows the team. */
function useReread() {
  const client = useQueryClient();
  return () =>
    Promise.all([
      client.invalidateQueries({ queryKey: ['practice'] }),
      client.invalidateQueries({ queryKey: ['members'] }),
      client.invalidateQueries({ queryKey: ['session'] }),
    ]);
}

interface PasswordFormProps {
  readonly member: Member;
  readonly isSelf: boolean;
  readonly close: (said?: string) => void;
}

function PasswordForm({ member, isSelf, close }: PasswordFormProps) {
  const form = useRef<HTMLFormElement>(null);
  const [typed, setTyped] = useState('');
  const [again, setAgain] = useState('');
  const [isTried, setTried] = useState(false);
  const sending = useSend();
  const reread = useReread();
  const problem = passwordProblem(typed);
  const differs = typed === again ? undefined : 'The two differ.';
  const submit = (event: FormEvent) => {
    event.preventDefault();
    setTried(true);
    if (problem || differs) return focusFirstProblem(form.current);
    void sending.send(async () => {
      await setPassword(member.id, typed);
      await reread();
      close(`Password of ${member.name} set.`);
    });
  };
  return (
    <form ref={form} noValidate onSubmit={submit} aria-label={`Password for ${member.name}`}>
      <TextLine
        label="New password"
        kind="password"
        autoComplete="new-password"
        value={typed}
        problem={isTried ? problem : undefined}
        hint={
          member.hasPassword
            ? `8 characters or more. ${isSelf ? 'You sign in again with it.' : `${member.name} is signed out everywhere.`}`
            : '8 characters or more.'
        }
        onChange={setTyped}
      />
      <TextLine
        label="The same again"
        kind="password"
        autoComplete="new-password"
        value={again}
        problem={isTried ? differs : undefined}
        onChange={setAgain}
      />
      <SaveBar saving={sending} problemCount={isTried ? [problem, differs].filter(Boolean).length : 0} onLeave={() => close()} />
    </form>
  );
}

function MemberForm({ close }: { readonly close: (said?: string) => void }) {
  const form = useRef<HTMLFormElement>(null);
  const [draft, setDraft] = useState(emptyMember);
  const [problems, setProblems] = useState<MemberProblems>({});
  const sending = useSend();
  const reread = useReread();
  const change = (part: Partial<typeof draft>) => setDraft({ ...draft, ...part });
  const submit = (event: FormEvent) => {
    event.preventDefault();
    const found = findMemberProblems(draft);
    setProblems(found);
    if (Object.keys(found).length > 0) return focusFirstProblem(form.current);
    void sending.send(async () => {
      await addMember(memberOf(draft));
      await reread();
      close(`${draft.name.trim()} is in the team.`);
    });
  };
  return (
    <form ref={form} noValidate onSubmit={submit} aria-label="New member">
      <TextLine label="Name" value={draft.name} problem={problems.name} onChange={(name) => change({ name })} />
      <TicksLine
        label="Roles"
        options={ROLES}
        ticked={draft.roles}
        problem={problems.roles}
        onChange={(ticked) => change({ roles: ROLES.map(({ id }) => id).filter((id) => ticked.includes(id)) })}
      />
      <TickLine
        label="Swabs"
        says="Trained to take swabs"
        isTicked={draft.trainedSwab}
        hint="A reading by a hand that is not trained is counted with caution."
        onChange={(trainedSwab) => change({ trainedSwab })}
      />
      <TextLine
        label="First password"
        kind="password"
        autoComplete="new-password"
        value={draft.password}
        problem={problems.password}
        hint="8 characters or more. The member can change it on this page."
        onChange={(password) => change({ password })}
      />
      <SaveBar saving={sending} problemCount={Object.keys(problems).length} saveWords="Add to the team" onLeave={() => close()} />
    </form>
  );
}
