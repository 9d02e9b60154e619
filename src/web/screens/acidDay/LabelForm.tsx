import { useState } from 'react';
import { readClockTime } from '../../../core/day/clockTime.ts';
import type { EatingEvent, Retention } from '../../../core/plaque/day/types.ts';
import { sayMinute } from '../../../core/visit/sayDescribedDays.ts';
import { parseDecimal } from '../../parseDecimal.ts';
import { ChoiceLine, SelectLine, TextLine } from '../../parts/fields.tsx';
import { minuteOfTime } from './readEntry.ts';

const RETENTION: readonly { readonly id: Retention; readonly label: string }[] = [
  { id: 'clears', label: 'gone with the swallow, as drinks are' },
  { id: 'lingers', label: 'some stays between the teeth for minutes' },
  { id: 'sticks', label: 'sticks, dissolves slowly' },
];

interface LabelFormProps {
  readonly id: string;
  readonly startMinute: number;
  readonly onAdd: (event: EatingEvent) => void;
  readonly onClose: () => void;
}

/** A food or drink that is not in the table, as its label says. What is not known stays empty and is not counted. */
export function LabelForm({ id, startMinute, onAdd, onClose }: LabelFormProps) {
  const [name, setName] = useState('');
  const [time, setTime] = useState(sayMinute(startMinute));
  const [unit, setUnit] = useState<'g' | 'mL'>('mL');
  const [amount, setAmount] = useState('');
  const [sugars, setSugars] = useState('');
  const [minutes, setMinutes] = useState('');
  const [pH, setPh] = useState('');
  const [retention, setRetention] = useState<Retention>('clears');
  const [isTried, setTried] = useState(false);
  const read = {
    name: name.trim() === '' ? 'is missing' : undefined,
    time: readClockTime(time) === undefined ? 'a time like 15:30' : undefined,
    amount: inRange(amount, 0.1, 3000, unit),
    sugars: inRange(sugars, 0, 100, `g in 100 ${unit}`),
    minutes: inRange(minutes, 1, 720, 'minutes'),
    pH: pH.trim() === '' ? undefined : inRange(pH, 2, 12, ''),
  };
  const add = () => {
    setTried(true);
    if (Object.values(read).some((problem) => problem !== undefined)) return;
    const acidity = pH.trim() === '' ? {} : { pH: parseDecimal(pH) as number };
    const typed = { name: name.trim(), unit, sugarsGPer100: parseDecimal(sugars) as number, retention, ...acidity };
    onAdd({
      id,
      kind: 'eating',
      occasion: 'between-meals',
      startMinute: minuteOfTime(readClockTime(time) ?? ''),
      minutes: parseDecimal(minutes) as number,
      portions: [{ typed, amount: parseDecimal(amount) as number }],
    });
  };
  const said = (problem: string | undefined) => (isTried ? problem : undefined);
  return (
    <form
      noValidate
      onSubmit={(event) => {
        event.preventDefault();
        add();
      }}
    >
      <TextLine label="Name" value={name} onChange={setName} problem={said(read.name)} />
      <TextLine label="Begins at" value={time} onChange={setTime} problem={said(read.time)} />
      <SelectLine
        label="Measured in"
        value={unit}
        onChange={setUnit}
        options={[
          { id: 'mL', label: 'mL, a drink' },
          { id: 'g', label: 'g, a food' },
        ]}
      />
      <TextLine label="Amount" kind="number" value={amount} onChange={setAmount} unit={unit} problem={said(read.amount)} />
      <TextLine label="Sugars" kind="number" value={sugars} onChange={setSugars} unit={`g in 100 ${unit}`} problem={said(read.sugars)} />
      <TextLine label="How long" kind="number" value={minutes} onChange={setMinutes} unit="minutes" problem={said(read.minutes)} />
      <TextLine
        label="pH, where known"
        kind="number"
        value={pH}
        onChange={setPh}
        problem={said(read.pH)}
        hint="Empty: not known, and not counted."
      />
      <ChoiceLine label="In the mouth" value={retention} onChange={setRetention} options={RETENTION} />
      <p className="actions">
        <button type="submit" className="action primary">
          Add
        </button>
        <button type="button" className="action" onClick={onClose}>
          Leave it
        </button>
      </p>
    </form>
  );
}

/** What is wrong with a typed number, with the allowed range. */
function inRange(typed: string, low: number, high: number, unit: string): string | undefined {
  const value = parseDecimal(typed);
  if (value === undefined || !(value >= low && value <= high)) return `must be ${low} to ${high} ${unit}`.trim();
  return undefined;
}
