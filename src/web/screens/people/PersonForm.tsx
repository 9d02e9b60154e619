import { type FormEvent, useRef, useState } from 'react';
import type { PersonPage } from '../../../api/bundles.ts';
import type { PersonDetails } from '../../../api/personSchema.ts';
import { ApiError } from '../../data/api.ts';
import { readDetails, saveDetails } from '../../data/personQueries.ts';
import { useVersionedSave } from '../../data/useVersionedSave.ts';
import { ChoiceLine, TextLine, TickLine } from '../../parts/fields.tsx';
import { focusFirstProblem } from '../../parts/focusFirstProblem.ts';
import { SaveBar } from '../../parts/SaveBar.tsx';
import { GuardianFields, HomeFields, PermissionFields } from './PersonParts.tsx';
import { buildPerson, type PersonDraft, type PersonProblems, personDraftOf } from './personDraft.ts';
import { LANGUAGE_OPTIONS, sayPerson } from './sayPerson.ts';

interface PersonFormProps {
  readonly person: PersonPage;
  readonly today: string;
  readonly reread: () => Promise<void>;
  readonly close: (said?: string) => void;
}

export function PersonForm({ person, today, reread, close }: PersonFormProps) {
  const form = useRef<HTMLFormElement>(null);
  const [draft, setDraft] = useState<PersonDraft>(() => personDraftOf(person.details, today));
  const [problems, setProblems] = useState<PersonProblems>({});
  const [isAskedBack, setAskedBack] = useState(false);
  const change = (part: Partial<PersonDraft>) => setDraft({ ...draft, ...part });
  const saving = useVersionedSave<PersonDetails>({
    version: person.version,
    write: async (details, version) => {
      try {
        const reason = draft.reason.trim();
        const said = { ...(reason && { reason }), ...(draft.isAnotherPerson && { isAnotherPerson: true as const }) };
        return await saveDetails(person.id, details, version, said);
      } catch (error) {
        if (error instanceof ApiError && error.code === 'LIKELY_SAME_PERSON') setAskedBack(true);
        throw error;
      }
    },
    readAgain: () => readDetails(person.id),
    onSaved: async () => {
      await reread();
      close('Saved.');
    },
  });
  const isNamedAnew = draft.name.trim() !== person.details.name || draft.birthday !== person.details.birthDate;
  const submit = (event: FormEvent) => {
    event.preventDefault();
    const built = buildPerson(draft);
    const reasonMissing = isNamedAnew && draft.reason.trim() === '' ? { reason: 'A changed name or birthday needs a reason.' } : {};
    const found = { ...(built.ok ? {} : built.problems), ...reasonMissing };
    setProblems(found);
    if (!built.ok || Object.keys(found).length > 0) return focusFirstProblem(form.current);
    void saving.save(built.details);
  };
  return (
    <form ref={form} className="form" noValidate onSubmit={submit} aria-label="Person">
      <TextLine label="Name" value={draft.name} problem={problems['name']} onChange={(name) => change({ name })} />
      <TextLine
        label="Birthday"
        value={draft.birthday}
        problem={problems['birthday']}
        hint="Year, month and day, like 20190307."
        onChange={(birthday) => change({ birthday })}
      />
      {isNamedAnew && (
        <TextLine
          label="Why the name or birthday changes"
          value={draft.reason}
          problem={problems['reason']}
          hint="Kept on the record: a typing error, a new family name."
          onChange={(reason) => change({ reason })}
        />
      )}
      <TextLine
        label="Chart number"
        value={draft.chartNumber}
        hint="The practice's own number, if it has one."
        onChange={(chartNumber) => change({ chartNumber })}
      />
      {isAskedBack && (
        <TickLine
          label="Asked back"
          says="This is another person, with a chart of their own"
          isTicked={draft.isAnotherPerson}
          onChange={(isAnotherPerson) => change({ isAnotherPerson })}
        />
      )}
      <ChoiceLine
        label="Language of the leaflet"
        value={draft.language}
        onChange={(language) => change({ language })}
        options={[...LANGUAGE_OPTIONS, { id: 'not-asked', label: 'not asked' }]}
      />
      <ChoiceLine
        label="Large print of the leaflet"
        value={draft.largePrint}
        onChange={(largePrint) => change({ largePrint })}
        options={[
          { id: 'yes', label: 'yes' },
          { id: 'no', label: 'no' },
          { id: 'not-asked', label: 'not asked' },
        ]}
      />
      <ChoiceLine
        label="Interpreter"
        value={draft.interpreter}
        onChange={(interpreter) => change({ interpreter })}
        options={[
          { id: 'needed', label: 'needed' },
          { id: 'none', label: 'asked, none needed' },
          { id: 'not-asked', label: 'not asked' },
        ]}
      />
      {draft.interpreter === 'needed' && (
        <TextLine
          label="Language to interpret"
          value={draft.interpreterLanguage}
          problem={problems['interpreterLanguage']}
          onChange={(interpreterLanguage) => change({ interpreterLanguage })}
        />
      )}
      <GuardianFields guardians={draft.guardians} problems={problems} onChange={(guardians) => change({ guardians })} />
      <HomeFields homes={draft.homes} problems={problems} onChange={(homes) => change({ homes })} />
      <PermissionFields permissions={draft.permissions} problems={problems} onChange={(permissions) => change({ permissions })} />
      <SaveBar
        saving={saving}
        say={sayPerson}
        problemCount={Object.keys(problems).length}
        onLeave={() => {
          void reread();
          close();
        }}
      />
    </form>
  );
}
