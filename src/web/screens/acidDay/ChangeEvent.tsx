import { useState } from 'react';
import { foodsById } from '../../../content/foods.ts';
import { readClockTime } from '../../../core/day/clockTime.ts';
import { findDayProblems } from '../../../core/plaque/day/findDayProblems.ts';
import type { AcidDay, DayEvent, EatingEvent } from '../../../core/plaque/day/types.ts';
import { sayMinute } from '../../../core/visit/sayDescribedDays.ts';
import { parseDecimal } from '../../parseDecimal.ts';
import { TextLine } from '../../parts/fields.tsx';
import { removeEvent, withEvent } from './editDay.ts';
import { minuteOfTime } from './readEntry.ts';
import { namePortion } from './sayEvent.ts';

interface ChangeEventProps {
  readonly day: AcidDay;
  readonly event: DayEvent;
  readonly onChange: (day: AcidDay) => void;
  readonly onClose: () => void;
}

/** Everything about one event, by its exact figures. */
export function ChangeEvent({ day, event, onChange, onClose }: ChangeEventProps) {
  const [label, setLabel] = useState(event.label ?? '');
  const [time, setTime] = useState(sayMinute(event.startMinute));
  const [minutes, setMinutes] = useState(String(event.minutes));
  const [amounts, setAmounts] = useState(event.kind === 'eating' ? event.portions.map(({ amount }) => String(amount)) : []);
  const [isMeal, setMeal] = useState(event.kind === 'eating' && event.occasion === 'meal');
  const [isSipped, setSipped] = useState(event.kind === 'eating' && event.sipped === true);
  const [isInCup, setInCup] = useState(event.kind === 'eating' && event.inBottleOrCup === true);
  const [keeps, setKeeps] = useState(event.keep === true);
  const [problem, setProblem] = useState<string>();

  const save = () => {
    const clock = readClockTime(time);
    if (clock === undefined) return setProblem('Begins at: a time like 15:30 is needed.');
    const { label: _, keep: __, ...rest } = event;
    const base = {
      ...rest,
      startMinute: minuteOfTime(clock),
      minutes: parseDecimal(minutes) ?? Number.NaN,
      ...(label.trim() !== '' && { label: label.trim() }),
      ...(keeps && { keep: true as const }),
    } as DayEvent;
    const changed = base.kind === 'eating' ? withEating(base) : base;
    const next = withEvent(day, changed);
    const [first] = findDayProblems(next, foodsById);
    if (first) return setProblem(`${sayField(first.path)}: ${first.message}`);
    onChange(next);
    onClose();
  };
  const withEating = ({ sipped: _, inBottleOrCup: __, ...eating }: EatingEvent): EatingEvent => ({
    ...eating,
    occasion: isMeal ? 'meal' : 'between-meals',
    portions: eating.portions.map((portion, i) => ({ ...portion, amount: parseDecimal(amounts[i] ?? '') ?? Number.NaN })),
    ...(isSipped && { sipped: true as const }),
    ...(isInCup && { inBottleOrCup: true as const }),
  });

  return (
    <form
      noValidate
      onSubmit={(submitted) => {
        submitted.preventDefault();
        save();
      }}
    >
      <TextLine label="Begins at" value={time} onChange={setTime} />
      <TextLine label="How long" kind="number" value={minutes} onChange={setMinutes} unit="minutes" />
      {event.kind === 'eating' &&
        event.portions.map((portion, i) => (
          <TextLine
            // biome-ignore lint/suspicious/noArrayIndexKey: a portion has no name of its own and keeps its place
            key={i}
            label={namePortion(portion)}
            kind="number"
            value={amounts[i] ?? ''}
            onChange={(value) => setAmounts(amounts.map((other, k) => (k === i ? value : other)))}
            unit={'typed' in portion ? portion.typed.unit : (foodsById.get(portion.food)?.unit ?? 'g')}
          />
        ))}
      <TextLine label="In the person's words" value={label} onChange={setLabel} />
      {event.kind === 'eating' && (
        <>
          <Tick isOn={isMeal} onChange={setMeal} words="A meal" />
          <Tick isOn={isSipped} onChange={setSipped} words="Sipped or nibbled over the whole time" />
          <Tick isOn={isInCup} onChange={setInCup} words="From a baby's bottle or a lidded cup" />
        </>
      )}
      <Tick isOn={keeps} onChange={setKeeps} words="Will not change: no suggestion touches it" />
      {problem && (
        <p className="problem" role="alert">
          {problem}
        </p>
      )}
      <p className="actions">
        <button type="submit" className="action primary">
          Save
        </button>
        <button type="button" className="action" onClick={() => onChange(removeEvent(day, event.id))}>
          Take it out
        </button>
        <button type="button" className="action" onClick={onClose}>
          Leave it as it was
        </button>
      </p>
    </form>
  );
}

function Tick({ isOn, onChange, words }: { readonly isOn: boolean; readonly onChange: (isOn: boolean) => void; readonly words: string }) {
  return (
    <label className="check">
      <input type="checkbox" checked={isOn} onChange={(event) => onChange(event.target.checked)} />
      {words}
    </label>
  );
}

const FIELDS: Readonly<Record<string, string>> = {
  startMinute: 'Begins at, minutes after midnight',
  minutes: 'How long',
  amount: 'Amount',
  label: "In the person's words",
};

/** "events.3.minutes" as the words of its field. */
const sayField = (path: string): string => FIELDS[path.split('.').at(-1) ?? ''] ?? path;
