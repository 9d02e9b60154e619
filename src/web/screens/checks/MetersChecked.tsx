import { useQueryClient } from '@tanstack/react-query';
import { type FormEvent, useRef, useState } from 'react';
import type { ChecksView } from '../../../api/swabChecks.ts';
import type { ControlEvery, ControlPlan } from '../../../core/checks/control.ts';
import { sayControlRuleName } from '../../../core/checks/sayControlRule.ts';
import { type BlendedPart, noiseOfMeter } from '../../../core/reading/blendNoise.ts';
import { cvOfLogVariance, sayPercent } from '../../../core/reading/sayNoise.ts';
import { type Meter, NOISE_PARTS, type NoisePart } from '../../../core/reading/types.ts';
import { MULTI_RULES, type MultiRule } from '../../../core/stats/multiRules.ts';
import { content } from '../../content.ts';
import { readControlPlan, saveControlPlan } from '../../data/checkQueries.ts';
import { useVersionedSave } from '../../data/useVersionedSave.ts';
import { plural } from '../../format.ts';
import { ChoiceLine, TextLine, TicksLine } from '../../parts/fields.tsx';
import { focusFirstProblem } from '../../parts/focusFirstProblem.ts';
import { OpenForm } from '../../parts/OpenForm.tsx';
import { SaveBar } from '../../parts/SaveBar.tsx';
import { SectionHead } from '../visit/SectionHead.tsx';
import { type MeterToday, sayEvery } from './sayChecks.ts';

interface MetersCheckedProps {
  readonly meters: readonly MeterToday[];
  readonly plans: ChecksView['plans'];
  readonly mayChange: boolean;
}

/** Each meter: its plan of controls, and how noisy it is by now. */
export function MetersChecked({ meters, plans, mayChange }: MetersCheckedProps) {
  return (
    <section aria-label="Meters">
      <SectionHead title="Meters" number={3} />
      {meters.map(({ meter }) => {
        const entry = plans.find(({ plan }) => plan.meterId === meter.id);
        return (
          <div key={meter.id}>
            <h3 className="meter-head">{meter.name}</h3>
            <p>{entry ? `Plan: ${sayEvery(entry.plan)}, ${plural(entry.plan.rules.length, 'control rule')}.` : 'No control plan yet.'}</p>
            {mayChange && (
              <OpenForm
                label={entry ? 'Change the plan' : 'Make a control plan'}
                about={meter.name}
                form={(close) => <PlanForm meter={meter} entry={entry} close={close} />}
              />
            )}
            <NoiseParts meter={meter} />
          </div>
        );
      })}
    </section>
  );
}

const PART_WORDS: Readonly<Record<NoisePart, string>> = {
  repeatability: 'one swab after another',
  operator: 'between hands',
  lot: 'between lots',
  meter: 'between meters of this model',
  withinPerson: 'from day to day in one person',
};

function NoiseParts({ meter }: { readonly meter: Meter }) {
  const noise = noiseOfMeter(content.readingNoise, meter);
  const measured = NOISE_PARTS.filter((part) => noise[part].own !== null).length;
  return (
    <>
      <p>
        {measured === 0
          ? 'Its noise is assumed in every part; a swab study measures it.'
          : `Of its noise, ${measured} of ${NOISE_PARTS.length} parts have been measured here.`}
      </p>
      <table className="stacks">
        <thead>
          <tr>
            <th scope="col">Noise</th>
            <th scope="col">In use</th>
            <th scope="col">From</th>
          </tr>
        </thead>
        <tbody>
          {NOISE_PARTS.map((part) => (
            <tr key={part}>
              <th scope="row">{PART_WORDS[part]}</th>
              <td data-label="In use">{sayPart(noise[part])}</td>
              <td data-label="From">{sayFrom(noise[part])}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </>
  );
}

const sayPart = ({ variance }: BlendedPart): string => (variance === null ? 'not known, left out' : sayPercent(cvOfLogVariance(variance)));

function sayFrom({ own, ownWeight, prior }: BlendedPart): string {
  const before = prior.from === 'assumed' ? 'assumed' : 'typed by the practice';
  if (own === null) return before;
  return `${plural(own.studies, 'own study', 'own studies')} with a weight of ${Math.round(100 * ownWeight)} %, the rest ${before}`;
}

type EveryKind = ControlEvery['kind'];

const EVERY: readonly { readonly id: EveryKind; readonly label: string }[] = [
  { id: 'daily', label: 'every day on which people are swabbed' },
  { id: 'weekly-and-new-lot', label: 'every week, and with each new lot' },
  { id: 'own', label: 'every so many days, and with each new lot' },
];

interface PlanFormProps {
  readonly meter: Meter;
  readonly entry: ChecksView['plans'][number] | undefined;
  readonly close: (said?: string) => void;
}

function PlanForm({ meter, entry, close }: PlanFormProps) {
  const client = useQueryClient();
  const form = useRef<HTMLFormElement>(null);
  const before = entry?.plan;
  const [kind, setKind] = useState<EveryKind>(before?.every.kind ?? 'weekly-and-new-lot');
  const [days, setDays] = useState(before?.every.kind === 'own' ? String(before.every.days) : '');
  const [solution, setSolution] = useState(before?.solution.name ?? '');
  const [rules, setRules] = useState<readonly string[]>(before?.rules ?? MULTI_RULES);
  const [isTried, setTried] = useState(false);
  const problems = {
    days: isTried && kind === 'own' && !/^[1-9]\d{0,2}$/.test(days.trim()) ? 'A whole number of days, 1 or more.' : undefined,
    solution: isTried && solution.trim() === '' ? 'The name on the bottle is needed.' : undefined,
    rules: isTried && rules.length === 0 ? 'One rule at least.' : undefined,
  };
  const reread = () => client.invalidateQueries({ queryKey: ['checks'] });
  const saving = useVersionedSave<ControlPlan>({
    version: entry?.version ?? 0,
    write: saveControlPlan,
    readAgain: () => readControlPlan(meter.id),
    onSaved: async () => {
      await reread();
      close('The plan is saved.');
    },
  });
  const submit = (event: FormEvent) => {
    event.preventDefault();
    setTried(true);
    const isDaysWrong = kind === 'own' && !/^[1-9]\d{0,2}$/.test(days.trim());
    if (isDaysWrong || solution.trim() === '' || rules.length === 0) return focusFirstProblem(form.current);
    const every: ControlEvery = kind === 'own' ? { kind, days: Number(days) } : { kind };
    const chosen = MULTI_RULES.filter((rule): rule is MultiRule => rules.includes(rule));
    const name = { ...before?.solution, name: solution.trim() };
    void saving.save({ meterId: meter.id, every, rules: chosen, solution: name, targets: before?.targets ?? [] });
  };
  return (
    <form ref={form} noValidate onSubmit={submit} aria-label={`Control plan of ${meter.name}`}>
      <ChoiceLine label="A control" value={kind} options={EVERY} onChange={setKind} />
      {kind === 'own' && <TextLine label="Days" kind="number" value={days} problem={problems.days} onChange={setDays} />}
      <TextLine label="Control solution" value={solution} problem={problems.solution} onChange={setSolution} />
      <TicksLine
        label="Control rules"
        options={MULTI_RULES.map((rule) => ({ id: rule, label: sayControlRuleName(rule) }))}
        ticked={rules}
        problem={problems.rules}
        hint="The first only asks for another look; each of the others stops readings."
        isLong
        onChange={setRules}
      />
      <SaveBar
        saving={saving}
        say={(plan) => [
          ['A control', sayEvery(plan)],
          ['Control solution', plan.solution.name],
          ['Control rules', plan.rules.map(sayControlRuleName).join('; ')],
        ]}
        problemCount={Object.values(problems).filter(Boolean).length}
        onLeave={() => {
          void reread();
          close();
        }}
      />
    </form>
  );
}
