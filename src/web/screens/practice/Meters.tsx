import { useQueryClient } from '@tanstack/react-query';
import { type FormEvent, useRef, useState } from 'react';
import type { PracticeView } from '../../../api/bundles.ts';
import type { Meter } from '../../../core/reading/types.ts';
import { readMeter, saveMeter } from '../../data/practiceQueries.ts';
import { useVersionedSave } from '../../data/useVersionedSave.ts';
import { TextLine, UnitChoice } from '../../parts/fields.tsx';
import { focusFirstProblem } from '../../parts/focusFirstProblem.ts';
import { OpenForm } from '../../parts/OpenForm.tsx';
import { SaveBar } from '../../parts/SaveBar.tsx';
import { makeId, randomBytes } from '../../slug.ts';
import { buildMeter, draftOfMeter, emptyMeter, type MeterDraft, type MeterProblems, sayMeter } from './meterDraft.ts';

type Entry = PracticeView['meters'][number];

export function Meters({ meters, mayChange }: { readonly meters: readonly Entry[]; readonly mayChange: boolean }) {
  return (
    <section id="meters" tabIndex={-1} aria-label="Meters">
      <h2>Meters</h2>
      <p>
        Range, cut-off and count-down come from the meter's own instructions; noise is assumed until the practice has measured it. Two
        meters have two scales; their readings are never set side by side.
      </p>
      {meters.map(({ meter, version }) => (
        <div key={meter.id}>
          <h3 className="meter-head">{meter.name}</h3>
          {mayChange ? (
            <OpenForm label="Change" about={meter.name} form={(close) => <MeterForm entry={{ meter, version }} close={close} />}>
              <MeterLines meter={meter} />
            </OpenForm>
          ) : (
            <MeterLines meter={meter} />
          )}
        </div>
      ))}
      {mayChange && (
        <div className="actions">
          <OpenForm label="Add a meter" isAction form={(close) => <MeterForm close={close} />} />
        </div>
      )}
    </section>
  );
}

function MeterLines({ meter }: { readonly meter: Meter }) {
  return (
    <dl className="settings">
      {sayMeter(meter)
        .filter(([name]) => name !== 'Name')
        .map(([name, value]) => (
          <div key={name}>
            <dt>{name}</dt>
            <dd>{value}</dd>
          </div>
        ))}
    </dl>
  );
}

const FROM = [
  { id: 'assumed', label: 'assumed' },
  { id: 'measured', label: 'measured here' },
] as const;

interface FormProps {
  readonly entry?: Entry;
  readonly close: (said?: string) => void;
}

function MeterForm({ entry, close }: FormProps) {
  const client = useQueryClient();
  const form = useRef<HTMLFormElement>(null);
  const [draft, setDraft] = useState(() => (entry ? draftOfMeter(entry.meter) : emptyMeter));
  const [problems, setProblems] = useState<MeterProblems>({});
  const [newId, setNewId] = useState<string | null>(null);
  const idOf = (name: string) => entry?.meter.id ?? newId ?? makeId(name, randomBytes);
  const reread = () => client.invalidateQueries({ queryKey: ['practice'] });
  const saving = useVersionedSave<Meter>({
    version: entry?.version ?? 0,
    write: saveMeter,
    readAgain: () => readMeter(idOf('')),
    onSaved: async (meter) => {
      await reread();
      close(`${meter.name} is saved.`);
    },
  });
  const submit = (event: FormEvent) => {
    event.preventDefault();
    const built = buildMeter(draft, idOf);
    setProblems(built.ok ? {} : built.problems);
    if (!built.ok) return focusFirstProblem(form.current);
    setNewId(built.meter.id);
    void saving.save(built.meter);
  };
  return (
    <form ref={form} noValidate onSubmit={submit} aria-label={entry ? `Change ${entry.meter.name}` : 'New meter'}>
      <MeterFields draft={draft} problems={problems} onChange={(part) => setDraft({ ...draft, ...part })} />
      <SaveBar
        saving={saving}
        say={sayMeter}
        problemCount={Object.keys(problems).length}
        onLeave={() => {
          void reread();
          close();
        }}
      />
    </form>
  );
}

interface MeterFieldsProps {
  readonly draft: MeterDraft;
  readonly problems: MeterProblems;
  readonly onChange: (part: Partial<MeterDraft>) => void;
}

const NUMBERS = [
  { field: 'lowest', label: 'Lowest number it shows', unit: 'RLU', hint: undefined },
  { field: 'highest', label: 'Highest number it shows', unit: 'RLU', hint: undefined },
  { field: 'cutoff', label: 'Cut-off', unit: 'RLU', hint: "From the meter's instructions; there is no usual one." },
  { field: 'countdown', label: 'Count-down', unit: 's', hint: 'Until the number appears.' },
] as const;

function MeterFields({ draft, problems, onChange }: MeterFieldsProps) {
  return (
    <>
      <TextLine label="Name, as you call it" value={draft.name} problem={problems.name} onChange={(name) => onChange({ name })} />
      {NUMBERS.map(({ field, ...line }) => (
        <TextLine
          key={field}
          {...line}
          kind="number"
          value={draft[field]}
          problem={problems[field]}
          onChange={(value) => onChange({ [field]: value })}
        />
      ))}
      <TextLine
        label="Swab noise"
        kind="number"
        unit="%"
        value={draft.swabNoise}
        problem={problems.swabNoise}
        hint="How much two swabs of the same plaque differ, as a coefficient of variation. Published: 12 to 50 %."
        beside={
          <UnitChoice
            label="Where the swab noise comes from"
            value={draft.swabNoiseFrom}
            options={FROM}
            onChange={(swabNoiseFrom) => onChange({ swabNoiseFrom })}
          />
        }
        onChange={(swabNoise) => onChange({ swabNoise })}
      />
      <TextLine
        label="Day to day"
        kind="number"
        unit="%"
        value={draft.dayNoise}
        problem={problems.dayNoise}
        hint="How much one person differs from day to day, as a coefficient of variation. An assumed noise is said beside every sentence that uses it."
        beside={
          <UnitChoice
            label="Where the day-to-day noise comes from"
            value={draft.dayNoiseFrom}
            options={FROM}
            onChange={(dayNoiseFrom) => onChange({ dayNoiseFrom })}
          />
        }
        onChange={(dayNoise) => onChange({ dayNoise })}
      />
    </>
  );
}
