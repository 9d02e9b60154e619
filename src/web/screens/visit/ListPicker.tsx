import { useState } from 'react';
import { Autocomplete, useFilter } from 'react-aria-components/Autocomplete';
import { Input } from 'react-aria-components/Input';
import { Label } from 'react-aria-components/Label';
import { ListBox, ListBoxItem } from 'react-aria-components/ListBox';
import { TextField } from 'react-aria-components/TextField';
import type { Choice } from '../../../core/visit/question.ts';
import { AnswerButton } from './AnswerBar.tsx';

interface ListPickerProps {
  readonly choices: readonly Choice[];
  /** undefined = not known yet, which is not the same as none. */
  readonly chosen: readonly string[] | undefined;
  readonly label: string;
  readonly onChoose: (ids: readonly string[]) => void;
  readonly onDone: () => void;
}

/** Several of a long list: 0 for none, or type to filter, arrows and Enter to tick, Escape when done. */
export function ListPicker({ choices, chosen, label, onChoose, onDone }: ListPickerProps) {
  const { contains } = useFilter({ sensitivity: 'base' });
  const [typed, setTyped] = useState('');
  const [ticked, setTicked] = useState<ReadonlySet<string>>(new Set(chosen));
  const tick = (ids: ReadonlySet<string>) => {
    setTicked(ids);
    setTyped('');
    onChoose(choices.filter((c) => ids.has(c.id)).map((c) => c.id));
  };
  return (
    <>
      <AnswerButton
        letter="0"
        label="none"
        isChosen={chosen?.length === 0}
        onPress={() => {
          onChoose([]);
          onDone();
        }}
      />
      <div
        className="picker"
        onKeyDownCapture={(event) => {
          if (event.key !== 'Escape') return;
          event.preventDefault();
          event.stopPropagation();
          onDone();
        }}
      >
        <Autocomplete inputValue={typed} onInputChange={setTyped} filter={contains}>
          <TextField aria-label={`Search: ${label}`}>
            <Label className="sr-only">Search</Label>
            <Input data-list-entry="" placeholder="Enter, then type to search" />
          </TextField>
          <ListBox
            aria-label={label}
            selectionMode="multiple"
            items={choices.map((c) => ({ ...c }))}
            selectedKeys={ticked}
            onSelectionChange={(keys) => tick(keys === 'all' ? new Set(choices.map((c) => c.id)) : new Set([...keys].map(String)))}
            renderEmptyState={() => <p className="hint">Nothing by this name in the list.</p>}
          >
            {(choice) => <ListBoxItem textValue={choice.label}>{choice.label}</ListBoxItem>}
          </ListBox>
        </Autocomplete>
        <AnswerButton letter="Esc" label="done" onPress={onDone} />
      </div>
    </>
  );
}
