import { type FormEvent, useState } from 'react';
import type { Role } from '../../../api/apiTypes.ts';
import type { PracticeView } from '../../../api/bundles.ts';
import { changeMember } from '../../data/practiceQueries.ts';
import { useSend } from '../../data/useSend.ts';
import { TickLine, TicksLine } from '../../parts/fields.tsx';
import { SaveBar } from '../../parts/SaveBar.tsx';
import { ROLES } from './memberDraft.ts';

interface ChangeMemberFormProps {
  readonly member: PracticeView['members'][number];
  readonly onChanged: () => Promise<unknown>;
  readonly close: (said?: string) => void;
}

/** What a member may do, or that a member has left. The server keeps the last lead, and lets nobody take the role of a dentist. */
export function ChangeMemberForm({ member, onChanged, close }: ChangeMemberFormProps) {
  const [roles, setRoles] = useState(member.roles);
  const [trainedSwab, setTrained] = useState(member.trainedSwab);
  const [active, setActive] = useState(member.active);
  const [isTried, setTried] = useState(false);
  const sending = useSend();
  const submit = (event: FormEvent) => {
    event.preventDefault();
    setTried(true);
    if (roles.length === 0) return;
    void sending.send(async () => {
      await changeMember(member.id, { roles: roles as Role[], trainedSwab, active, version: member.version });
      await onChanged();
      close(`${member.name} is changed.`);
    });
  };
  return (
    <form noValidate onSubmit={submit} aria-label={`Change ${member.name}`}>
      <TicksLine
        label="Roles"
        options={ROLES}
        ticked={roles}
        problem={isTried && roles.length === 0 ? 'Tick at least one role.' : undefined}
        onChange={setRoles}
      />
      <TickLine label="Swabs" says="Trained to take swabs" isTicked={trainedSwab} onChange={setTrained} />
      <TickLine
        label="Works here"
        says="Works here"
        isTicked={active}
        hint="Without it nobody signs in by this name any more. What was answered and signed stays."
        onChange={setActive}
      />
      <SaveBar saving={sending} problemCount={isTried && roles.length === 0 ? 1 : 0} onLeave={() => close()} />
    </form>
  );
}
