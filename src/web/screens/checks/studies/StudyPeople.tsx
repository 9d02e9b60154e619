import { useQueryClient } from '@tanstack/react-query';
import type { StudyPersonLine } from '../../../../api/swabChecks.ts';
import { linkStudyPerson, type StudyRecord } from '../../../data/studyQueries.ts';
import { useSend } from '../../../data/useSend.ts';
import { OpenForm } from '../../../parts/OpenForm.tsx';
import { ChartSearch } from '../../people/ChartSearch.tsx';
import { peopleOf, sayNotChecked } from './sayPeople.ts';

/** Who stands behind each label, where that is said; the run sheet and the numbers stay without a name. */
export function StudyPeople({ record }: { readonly record: StudyRecord }) {
  const notChecked = sayNotChecked(record);
  return (
    <section aria-label="People">
      <h2>People</h2>
      <p>
        Where a chart is linked, swabs at visits and for this study keep their 24 hours: the Swab page says when one is too soon, and a
        number for the study is refused. The run sheet and the file of numbers never have a name.
      </p>
      {notChecked && <p className="side-note">{notChecked}</p>}
      <ul className="plain-list study-people">
        {peopleOf(record).map((person) => (
          <li key={person.part}>
            <PersonLine person={person} studyId={record.study.id} />
          </li>
        ))}
      </ul>
    </section>
  );
}

interface PersonProps {
  readonly person: StudyPersonLine;
  readonly studyId: string;
}

function PersonLine({ person, studyId }: PersonProps) {
  const { part, name } = person;
  if (name === null) {
    return (
      <OpenForm label="link a chart" about={`to ${part}`} form={(close) => <LinkForm person={person} studyId={studyId} close={close} />}>
        {part}: no chart is linked.{' '}
      </OpenForm>
    );
  }
  return <Linked person={person} name={name} studyId={studyId} />;
}

function Linked({ person, name, studyId }: PersonProps & { readonly name: string }) {
  const { part, version } = person;
  const reread = useReread(studyId);
  const sending = useSend();
  const unlink = () =>
    void sending.send(() =>
      linkStudyPerson(studyId, { part, patientId: null, version })
        .then(() => undefined)
        .finally(reread),
    );
  return (
    <>
      {part}: <bdi>{name}</bdi>{' '}
      <button type="button" className="link" disabled={sending.isSending} onClick={unlink}>
        unlink<span className="sr-only"> {part}</span>
      </button>
      <span className="problem" role="alert">
        {sending.problem}
      </span>
    </>
  );
}

function LinkForm({ person: { part, version }, studyId, close }: PersonProps & { readonly close: (said?: string) => void }) {
  const reread = useReread(studyId);
  const sending = useSend();
  const link = (patientId: string) =>
    void sending.send(async () => {
      await linkStudyPerson(studyId, { part, patientId, version });
      close();
      await reread();
    });
  return (
    <ChartSearch
      title={`Choose the chart of ${part}`}
      label={`The chart of ${part}`}
      onChoose={({ id }) => link(id)}
      problem={sending.problem}
      leaveWords="Leave without linking"
      onLeave={() => close()}
    />
  );
}

/** A visit of the person knows of the study's swabs from now on. */
function useReread(studyId: string): () => Promise<void> {
  const client = useQueryClient();
  return async () => {
    for (const queryKey of [['study', studyId], ['visit']]) await client.invalidateQueries({ queryKey });
  };
}
