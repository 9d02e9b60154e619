import { useQueryClient } from '@tanstack/react-query';
import { type FormEvent, useRef, useState } from 'react';
import type { ChecksView } from '../../../api/swabChecks.ts';
import type { MeterCheckPlan } from '../../../core/checks/meterCheck.ts';
import type { Meter } from '../../../core/reading/types.ts';
import { readMeterCheckPlan, saveMeterCheckPlan } from '../../data/checkQueries.ts';
import { useVersionedSave } from '../../data/useVersionedSave.ts';
import { TextLine } from '../../parts/fields.tsx';
import { focusFirstProblem } from '../../parts/focusFirstProblem.ts';
import { SaveBar } from '../../parts/SaveBar.tsx';
import { sayLimits } from './sayMeterChecks.ts';

interface MeterCheckPlanFormProps {
  readonly meter: Meter;
  readonly entry: ChecksView['meterCheckPlans'][number] | undefined;
  readonly close: (said?: string) => void;
}

const textOf = (value: number | undefined): string => (value === undefined ? '' : String(value));

/** How often a meter is checked and the limits on its device, both as the practice has them from its maker. */
export function MeterCheckPlanForm({ meter, entry, close }: MeterCheckPlanFormProps) {
  const client = useQueryClient();
  const form = useRef<HTMLFormElement>(null);
  const [days, setDays] = useState(textOf(entry?.plan.everyDays));
  const [low, setLow] = useState(textOf(entry?.plan.limits?.lowRlu));
  const [high, setHigh] = useState(textOf(entry?.plan.limits?.highRlu));
  const [isTried, setTried] = useState(false);
  const found = {
    days: /^[1-9]\d{0,2}$/.test(days.trim()) ? undefined : 'A whole number of days, 1 to 999.',
    limits: limitsProblem(low, high),
  };
  const problems: Partial<typeof found> = isTried ? found : {};
  const reread = () => client.invalidateQueries({ queryKey: ['checks'] });
  const saving = useVersionedSave<MeterCheckPlan>({
    version: entry?.version ?? 0,
    write: saveMeterCheckPlan,
    readAgain: () => readMeterCheckPlan(meter.id),
    onSaved: async () => {
      await reread();
      close('Saved.');
    },
  });
  const submit = (event: FormEvent) => {
    event.preventDefault();
    setTried(true);
    if (found.days || found.limits) return focusFirstProblem(form.current);
    const limits = low.trim() === '' ? {} : { limits: { lowRlu: Number(low), highRlu: Number(high) } };
    void saving.save({ meterId: meter.id, everyDays: Number(days), ...limits });
  };
  return (
    <form ref={form} noValidate onSubmit={submit} aria-label={`Checks of ${meter.name}`}>
      <TextLine
        label="A check every so many days"
        kind="number"
        unit="days"
        value={days}
        problem={problems.days}
        hint="As the maker of the meter says, or as the practice has decided; none is proposed here."
        onChange={setDays}
      />
      <TextLine label="Lowest on the check device" kind="number" unit="RLU" value={low} onChange={setLow} />
      <TextLine
        label="Highest on the check device"
        kind="number"
        unit="RLU"
        value={high}
        problem={problems.limits}
        hint="Both left empty: whoever checks says whether it passed."
        onChange={setHigh}
      />
      <SaveBar
        saving={saving}
        say={({ everyDays, limits }) => [
          ['A check every so many days', String(everyDays)],
          ['On the check device', limits ? sayLimits(limits) : 'no limits'],
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

function limitsProblem(low: string, high: string): string | undefined {
  if (low.trim() === '' && high.trim() === '') return undefined;
  const isNumber = [low, high].every((text) => /^\d+(\.\d+)?$/.test(text.trim()));
  return isNumber && Number(high) > Number(low) ? undefined : 'Two numbers, the highest above the lowest, or neither.';
}
