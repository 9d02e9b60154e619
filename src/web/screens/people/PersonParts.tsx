import { ChoiceLine, TextLine } from '../../parts/fields.tsx';
import {
  EMPTY_GUARDIAN,
  EMPTY_HOME,
  type GuardianDraft,
  type HomeDraft,
  type PermissionDraft,
  type PersonDraft,
  type PersonProblems,
} from './personDraft.ts';
import { LANGUAGE_OPTIONS, PERMISSIONS, type PermissionKind } from './sayPerson.ts';

const ASKED = [
  { id: 'yes', label: 'yes' },
  { id: 'no', label: 'no' },
  { id: 'not-asked', label: 'not asked' },
] as const;

const MOST_GUARDIANS = 8;
const MOST_HOMES = 4;

const replaced = <T,>(list: readonly T[], at: number, part: Partial<T>): readonly T[] =>
  list.map((entry, i) => (i === at ? { ...entry, ...part } : entry));
const without = <T,>(list: readonly T[], at: number): readonly T[] => list.filter((_, i) => i !== at);

interface ListProps<T> {
  readonly problems: PersonProblems;
  readonly onChange: (list: readonly T[]) => void;
}

export function GuardianFields({
  guardians,
  problems,
  onChange,
}: ListProps<GuardianDraft> & { readonly guardians: readonly GuardianDraft[] }) {
  return (
    <section aria-label="Guardians">
      <h2>Guardians</h2>
      {guardians.map((guardian, i) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: a guardian has no name while it is typed
        <fieldset key={i} className="person-part">
          <legend>Guardian {i + 1}</legend>
          <TextLine
            label="Name"
            value={guardian.name}
            problem={problems[`guardians.${i}.name`]}
            onChange={(name) => onChange(replaced(guardians, i, { name }))}
          />
          <TextLine
            label="Relation"
            value={guardian.relation}
            hint="mother, foster carer ..."
            onChange={(relation) => onChange(replaced(guardians, i, { relation }))}
          />
          <TextLine label="Phone" value={guardian.phone} onChange={(phone) => onChange(replaced(guardians, i, { phone }))} />
          <ChoiceLine
            label="May say yes to care"
            value={guardian.mayConsent}
            hint="Who may is local law."
            onChange={(mayConsent) => onChange(replaced(guardians, i, { mayConsent }))}
            options={ASKED}
          />
          <button type="button" className="link" onClick={() => onChange(without(guardians, i))}>
            Take guardian {i + 1} off
          </button>
        </fieldset>
      ))}
      {guardians.length < MOST_GUARDIANS && (
        <button type="button" className="link" onClick={() => onChange([...guardians, EMPTY_GUARDIAN])}>
          Add a guardian
        </button>
      )}
    </section>
  );
}

export function HomeFields({ homes, problems, onChange }: ListProps<HomeDraft> & { readonly homes: readonly HomeDraft[] }) {
  return (
    <section aria-label="Homes">
      <h2>Homes</h2>
      {homes.map((home, i) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: a home has no name while it is typed
        <fieldset key={i} className="person-part">
          <legend>Home {i + 1}</legend>
          <TextLine
            label="Name"
            value={home.name}
            problem={problems[`homes.${i}.name`]}
            hint='Printed after "For the home", so in the language of the home: with her father.'
            onChange={(name) => onChange(replaced(homes, i, { name }))}
          />
          <ChoiceLine
            label="Leaflet in"
            value={home.language}
            onChange={(language) => onChange(replaced(homes, i, { language }))}
            options={LANGUAGE_OPTIONS}
          />
          <button type="button" className="link" onClick={() => onChange(without(homes, i))}>
            Take home {i + 1} off
          </button>
        </fieldset>
      ))}
      {homes.length < MOST_HOMES && (
        <button type="button" className="link" onClick={() => onChange([...homes, EMPTY_HOME])}>
          Add a home
        </button>
      )}
    </section>
  );
}

interface PermissionFieldsProps {
  readonly permissions: PersonDraft['permissions'];
  readonly problems: PersonProblems;
  readonly onChange: (permissions: PersonDraft['permissions']) => void;
}

export function PermissionFields({ permissions, problems, onChange }: PermissionFieldsProps) {
  const change = (kind: PermissionKind, part: Partial<PermissionDraft>) =>
    onChange({ ...permissions, [kind]: { ...permissions[kind], ...part } });
  return (
    <section aria-label="Permissions">
      <h2>Permissions</h2>
      {PERMISSIONS.map(({ id, label }) => (
        <fieldset key={id} className="person-part">
          <legend>{label}</legend>
          <ChoiceLine label="Given" value={permissions[id].given} onChange={(given) => change(id, { given })} options={ASKED} />
          {permissions[id].given !== 'not-asked' && (
            <>
              <TextLine
                label="Said by"
                value={permissions[id].by}
                problem={problems[`permissions.${id}.by`]}
                hint="The person, or a guardian by name."
                onChange={(by) => change(id, { by })}
              />
              <TextLine
                label="On"
                value={permissions[id].on}
                problem={problems[`permissions.${id}.on`]}
                hint="Year, month and day."
                onChange={(on) => change(id, { on })}
              />
            </>
          )}
        </fieldset>
      ))}
    </section>
  );
}
