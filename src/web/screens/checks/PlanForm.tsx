import { useQueryClient } from '@tanstack/react-query';
import { type FormEvent, useMemo, useRef, useState } from 'react';
import type { ChecksView } from '../../../api/swabChecks.ts';
import type { ControlEvery, ControlPlan } from '../../../core/checks/control.ts';
import { sayControlRuleName } from '../../../core/checks/sayControlRule.ts';
import { leafletCurrency } from '../../../core/leaflet/formatForLeaflet.ts';
import type { Meter } from '../../../core/reading/types.ts';
import { MULTI_RULES, type MultiRule } from '../../../core/stats/multiRules.ts';
import { readControlPlan, saveControlPlan } from '../../data/checkQueries.ts';
import { useSignedIn } from '../../data/hiding.ts';
import { useVersionedSave } from '../../data/useVersionedSave.ts';
import { formatCents } from '../../format.ts';
import { parsePrice } from '../../parsePrice.ts';
import { ChoiceLine, TextLine, TicksLine } from '../../parts/fields.tsx';
import { focusFirstProblem } from '../../parts/focusFirstProblem.ts';
import { SaveBar } from '../../parts/SaveBar.tsx';
import { sayEvery } from './sayChecks.ts';
import { sayPlanFigures } from './sayPlanFigures.ts';

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

/** When a meter gets a control, by which rules, and what each choice costs and notices. */
export function PlanForm({ meter, entry, close }: PlanFormProps) {
  const client = useQueryClient();
  const form = useRef<HTMLFormElement>(null);
  const before = entry?.plan;
  const [kind, setKind] = useState<EveryKind>(before?.every.kind ?? 'weekly-and-new-lot');
  const [days, setDays] = useState(before?.every.kind === 'own' ? String(before.every.days) : '');
  const [solution, setSolution] = useState(before?.solution.name ?? '');
  const [price, setPrice] = useState(before?.swabPriceCents === undefined ? '' : formatCents(before.swabPriceCents));
  const practice = useSignedIn().practice;
  const currency = leafletCurrency(practice);
  const swabPriceCents = parsePrice(price);
  const isPriceWrong = price.trim() !== '' && swabPriceCents === undefined;
  const [rules, setRules] = useState<readonly string[]>(before?.rules ?? MULTI_RULES);
  const [isTried, setTried] = useState(false);
  const problems = {
    days: isTried && kind === 'own' && !/^[1-9]\d{0,2}$/.test(days.trim()) ? 'A whole number of days, 1 or more.' : undefined,
    solution: isTried && solution.trim() === '' ? 'The name on the bottle is needed.' : undefined,
    price: isTried && isPriceWrong ? 'A price like 2.40, or nothing while it is not known.' : undefined,
    rules: isTried && rules.length === 0 ? 'One rule at least.' : undefined,
  };
  const figures = useMemo(() => {
    const chosen = MULTI_RULES.filter((rule) => rules.includes(rule));
    const say = (every: ControlEvery) =>
      sayPlanFigures({ every, rules: chosen, meter, targets: before?.targets ?? [], swabPriceCents, currency });
    const own = /^[1-9]\d{0,2}$/.test(days.trim()) ? say({ kind: 'own', days: Number(days) }) : '';
    return { daily: say({ kind: 'daily' }), 'weekly-and-new-lot': say({ kind: 'weekly-and-new-lot' }), own };
  }, [rules, days, meter, before, swabPriceCents, currency]);
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
    if (isDaysWrong || isPriceWrong || solution.trim() === '' || rules.length === 0) return focusFirstProblem(form.current);
    const every: ControlEvery = kind === 'own' ? { kind, days: Number(days) } : { kind };
    const chosen = MULTI_RULES.filter((rule): rule is MultiRule => rules.includes(rule));
    const name = { ...before?.solution, name: solution.trim() };
    const { pastTargets, targets = [] } = before ?? {};
    const kept = { targets, ...(pastTargets && { pastTargets }) };
    const priced = swabPriceCents === undefined ? {} : { swabPriceCents };
    void saving.save({ meterId: meter.id, every, rules: chosen, solution: name, ...priced, ...kept });
  };
  return (
    <form ref={form} noValidate onSubmit={submit} aria-label={`Control plan of ${meter.name}`}>
      <ChoiceLine
        label="A control"
        value={kind}
        options={EVERY.map((option) => ({ ...option, hint: figures[option.id] }))}
        hint="Days are those on which people are swabbed, taken as five a week. Comparisons of new lots come on top."
        onChange={setKind}
      />
      {kind === 'own' && <TextLine label="Days" kind="number" value={days} problem={problems.days} onChange={setDays} />}
      <TextLine label="Control solution" value={solution} problem={problems.solution} onChange={setSolution} />
      <TextLine
        label="Price of one swab"
        kind="number"
        unit={currency ?? 'your currency'}
        value={price}
        problem={problems.price}
        hint="With its share of the control solution. Left empty: not known, and no cost is given."
        onChange={setPrice}
      />
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
          ['Price of one swab', plan.swabPriceCents === undefined ? 'not known' : formatCents(plan.swabPriceCents)],
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
