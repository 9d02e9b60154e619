import { useQueryClient } from '@tanstack/react-query';
import { type FormEvent, useRef, useState } from 'react';
import type { SessionView } from '../../../api/apiTypes.ts';
import type { ChecksView, TrainingBody } from '../../../api/swabChecks.ts';
import type { TrainingEvent } from '../../../core/checks/training.ts';
import { recordTraining } from '../../data/checkQueries.ts';
import { useSend } from '../../data/useSend.ts';
import { formatDate, joinWords } from '../../format.ts';
import { ChoiceLine, type Option, SelectLine, TextLine } from '../../parts/fields.tsx';
import { focusFirstProblem } from '../../parts/focusFirstProblem.ts';
import { OpenForm } from '../../parts/OpenForm.tsx';
import { SaveBar } from '../../parts/SaveBar.tsx';
import { parseBirthday as parseDay } from '../findPeople.ts';
import { SectionHead } from '../visit/SectionHead.tsx';
import { HandsBeside } from './HandsBeside.tsx';
import { isDue, STEP_WORDS, sayDue, sayEvent, sayEvents } from './sayTraining.ts';

type MemberLine = ChecksView['members'][number];

/** Who takes swabs, how each came to it, and for whom another supervised swab is due. */
export function Hands({ view, session }: { readonly view: ChecksView; readonly session: SessionView }) {
  const trainingOf = (id: string) => view.training.find(({ memberId }) => memberId === id);
  const due = view.members.filter(({ id }) => isDue(trainingOf(id), view.today));
  const takers = view.members.filter(({ trainedSwab }) => trainedSwab).length;
  return (
    <section aria-label="Hands">
      <SectionHead title="Hands" number={5} />
      <p className="opening">
        {takers} of {view.members.length} take swabs.{' '}
        {due.length > 0
          ? `One more supervised swab is due for ${joinWords(due.map(({ name }) => name))}.`
          : 'Nobody is due for another look.'}
      </p>
      <table className="stacks">
        <thead>
          <tr>
            <th scope="col">Member</th>
            <th scope="col">Swabs</th>
            <th scope="col">So far</th>
            <th scope="col">Looked at again by</th>
            <th scope="col">
              <span className="sr-only">Note a step</span>
            </th>
          </tr>
        </thead>
        <tbody>
          {view.members.map((member) => {
            const training = trainingOf(member.id);
            return (
              <tr key={member.id}>
                <th scope="row">{member.name}</th>
                <td data-label="Swabs">{member.trainedSwab ? 'takes swabs' : 'not yet: a swab counts with caution'}</td>
                <td data-label="So far">
                  <TrainingRecord member={member} events={training?.events ?? []} view={view} />
                </td>
                <td data-label="Looked at again by" className={isDue(training, view.today) ? 'unknown' : undefined}>
                  {sayDue(training, view.today)}
                </td>
                <td>
                  <OpenForm
                    label="note a step"
                    about={`of ${member.name}`}
                    form={(close) => <StepForm member={member} view={view} session={session} close={close} />}
                  />
                </td>
              </tr>
            );
          })}
        </tbody>
      </table>
      <HandsBeside view={view} />
    </section>
  );
}

/** Every step with its day, with whom or why, and who noted it. */
function TrainingRecord({
  member,
  events,
  view,
}: {
  readonly member: MemberLine;
  readonly events: readonly TrainingEvent[];
  readonly view: ChecksView;
}) {
  if (events.length === 0) return <>nothing noted</>;
  return (
    <>
      {sayEvents(events)}
      <details>
        <summary>
          Training record<span className="sr-only"> of {member.name}</span>
        </summary>
        <ul className="plain-list">
          {events.map((event) => (
            <li key={`${event.at} ${event.kind}`}>{sayEvent(event, view.studies)}</li>
          ))}
        </ul>
      </details>
    </>
  );
}

interface StepFormProps {
  readonly member: MemberLine;
  readonly view: ChecksView;
  readonly session: SessionView;
  readonly close: (said?: string) => void;
}

type StepKind = TrainingEvent['kind'];

function StepForm({ member, view, session, close }: StepFormProps) {
  const client = useQueryClient();
  const form = useRef<HTMLFormElement>(null);
  const sending = useSend();
  const studies = view.studies.filter(({ kind, state }) => kind === 'hands' && state === 'reported');
  const supervisors = view.members.filter(({ id, trainedSwab }) => trainedSwab && id !== member.id);
  const [kind, setKind] = useState<StepKind>('supervised-swab');
  const [supervisor, setSupervisor] = useState(supervisors[0]?.name ?? '');
  const [studyId, setStudyId] = useState(studies[0]?.id ?? '');
  const [reason, setReason] = useState('');
  const [due, setDue] = useState('');
  const [isTried, setTried] = useState(false);
  const dueOn = due.trim() === '' ? undefined : parseDay(due);
  const problems = {
    reason: isTried && kind === 'qualified-by-lead' && reason.trim() === '' ? 'A reason is needed.' : undefined,
    due:
      isTried && due.trim() !== '' && dueOn === undefined
        ? 'This is no day of the calendar. Year, month and day, like 20270307.'
        : undefined,
  };
  const isLead = session.member.roles.includes('lead');
  const mayReport = session.member.roles.some((role) => role !== 'assistant');
  const kinds: readonly Option<StepKind>[] = (Object.keys(STEP_WORDS) as StepKind[])
    .filter((k) => (k === 'qualified-by-lead' ? isLead : k === 'qualified-by-study' ? mayReport && studies.length > 0 : true))
    .map((k) => ({ id: k, label: STEP_WORDS[k] }));
  const submit = (event: FormEvent) => {
    event.preventDefault();
    setTried(true);
    if ((kind === 'qualified-by-lead' && reason.trim() === '') || (due.trim() !== '' && dueOn === undefined))
      return focusFirstProblem(form.current);
    const body: TrainingBody = { step: stepOf(kind, { supervisor, studyId, reason }), onDate: view.today, ...(dueOn && { dueOn }) };
    void sending.send(async () => {
      await recordTraining(member.id, body);
      await client.invalidateQueries({ queryKey: ['checks'] });
      close('Noted.');
    });
  };
  return (
    <form ref={form} noValidate onSubmit={submit} aria-label={`A step of ${member.name}`}>
      <ChoiceLine label="Today" value={kind} options={kinds} onChange={setKind} />
      {kind === 'supervised-swab' && (
        <SelectLine
          label="With"
          value={supervisor}
          options={supervisors.map(({ name }) => ({ id: name, label: name }))}
          onChange={setSupervisor}
        />
      )}
      {kind === 'qualified-by-study' && (
        <SelectLine
          label="Study"
          value={studyId}
          options={studies.map(({ id, report }) => ({ id, label: report ? formatDate(report.onDate) : id }))}
          onChange={setStudyId}
        />
      )}
      {kind === 'qualified-by-lead' && <TextLine label="Because" value={reason} problem={problems.reason} onChange={setReason} />}
      <TextLine
        label="Looked at again by"
        kind="number"
        value={due}
        problem={problems.due}
        hint="Empty: as it stands. Year, month and day, like 20270307."
        onChange={setDue}
      />
      <SaveBar saving={sending} problemCount={Object.values(problems).filter(Boolean).length} onLeave={() => close()} />
    </form>
  );
}

interface StepSaid {
  readonly supervisor: string;
  readonly studyId: string;
  readonly reason: string;
}

function stepOf(kind: StepKind, { supervisor, studyId, reason }: StepSaid): TrainingBody['step'] {
  switch (kind) {
    case 'supervised-swab':
      return { kind, with: supervisor };
    case 'qualified-by-study':
      return { kind, studyId };
    case 'qualified-by-lead':
      return { kind, reason: reason.trim() };
    default:
      return { kind };
  }
}
