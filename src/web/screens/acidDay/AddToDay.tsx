import { useRef, useState } from 'react';
import { Autocomplete } from 'react-aria-components/Autocomplete';
import { Input } from 'react-aria-components/Input';
import { Label } from 'react-aria-components/Label';
import { ListBox, ListBoxItem } from 'react-aria-components/ListBox';
import { TextField } from 'react-aria-components/TextField';
import type { AcidDay, DayEvent } from '../../../core/plaque/day/types.ts';
import { sayMinute } from '../../../core/visit/sayDescribedDays.ts';
import { OpenForm } from '../../parts/OpenForm.tsx';
import { addEvent, findEvent, freshId } from './editDay.ts';
import { LabelForm } from './LabelForm.tsx';
import { findThings, readTyped, sayFound, toEvent } from './readEntry.ts';
import { nameEvent } from './sayEvent.ts';

/** Where something lands when no time was typed. */
const NOON = 720;

interface AddToDayProps {
  readonly day: AcidDay;
  readonly onAdd: (day: AcidDay) => void;
  /** With the names that may be read now. */
  readonly seen: (day: AcidDay) => AcidDay;
}

/** One line for everything: "10:30 biscuit", arrows, Enter. The next entry begins where the last one ended. */
export function AddToDay({ day, onAdd, seen }: AddToDayProps) {
  const [typed, setTyped] = useState('');
  const [last, setLast] = useState<{ readonly event: DayEvent; readonly at?: number } | null>(null);
  const next = useRef(NOON);
  const { startMinute, words } = readTyped(typed);
  const found = findThings(words);
  const add = (event: DayEvent) => {
    const added = addEvent(day, event);
    if (!added) return setLast({ event });
    const placed = findEvent(added, event.id);
    next.current = Math.min(1439, (placed?.startMinute ?? NOON) + event.minutes + 60);
    setLast({ event, at: placed?.startMinute ?? event.startMinute });
    setTyped('');
    onAdd(added);
  };
  return (
    <div className="add-to-day">
      <Autocomplete inputValue={typed} onInputChange={setTyped}>
        <TextField>
          <Label>Add</Label>
          <Input id="day-add" placeholder="10:30 biscuit" autoComplete="off" aria-keyshortcuts="a" />
        </TextField>
        {words !== '' && (
          <ListBox
            aria-label="What it may be"
            className="day-found"
            items={found.map((thing) => ({ id: thing.kind === 'food' ? thing.food.id : thing.id, thing }))}
            onAction={(key) => {
              const chosen = found.find((thing) => (thing.kind === 'food' ? thing.food.id : thing.id) === key);
              if (chosen) add(toEvent(chosen, startMinute ?? next.current, day));
            }}
            renderEmptyState={() => <p className="hint">Nothing by this name in the table: type it from its label.</p>}
          >
            {({ thing }) => <ListBoxItem textValue={sayFound(thing)}>{sayFound(thing)}</ListBoxItem>}
          </ListBox>
        )}
      </Autocomplete>
      <p className="hint" role="status">
        {last && sayLast(last, nameEvent(seen({ ...day, events: [last.event] }).events[0] ?? last.event))}
      </p>
      <OpenForm
        label="From a label"
        form={(close) => (
          <LabelForm
            startMinute={startMinute ?? next.current}
            id={freshId(day)}
            onAdd={(event) => {
              add(event);
              close();
            }}
            onClose={() => close()}
          />
        )}
      />
    </div>
  );
}

function sayLast({ event, at }: { readonly event: DayEvent; readonly at?: number }, name: string): string {
  if (at === undefined) return `There is no room in this day for ${name.toLowerCase()}, ${event.minutes} minutes.`;
  return `Added at ${sayMinute(at)}: ${name}.`;
}
