import { type FormEvent, useState } from 'react';
import { DEFAULT_NOTE, type NoteSection } from '../../../core/note/noteSections.ts';
import type { PracticeSettings } from '../../../core/visit/types.ts';
import type { RulesView } from '../../data/queries.ts';
import { OpenForm } from '../../parts/OpenForm.tsx';
import { SaveBar } from '../../parts/SaveBar.tsx';
import { listParts, movePart, SECTION_NAMES } from './noteOrder.ts';
import { useSettingsSave } from './useSettingsSave.ts';

/** Which parts the chart note has, and in which order: the practice's own. */
export function NoteOrder({ rules, mayChange }: { readonly rules: RulesView; readonly mayChange: boolean }) {
  const view = (
    <ol className="note-order-list">
      {(rules.settings.note ?? DEFAULT_NOTE).map((id) => (
        <li key={id}>{SECTION_NAMES[id]}</li>
      ))}
    </ol>
  );
  return (
    <>
      <h3>Chart note</h3>
      <p>Copied from a visit as plain text, in this order. Private answers stand in it only if the practice puts that part in.</p>
      {mayChange ? (
        <OpenForm label="Change the chart note" form={(close) => <OrderForm rules={rules} close={close} />}>
          {view}
        </OpenForm>
      ) : (
        view
      )}
    </>
  );
}

function OrderForm({ rules, close }: { readonly rules: RulesView; readonly close: (said?: string) => void }) {
  const [chosen, setChosen] = useState<readonly NoteSection[]>(rules.settings.note ?? DEFAULT_NOTE);
  const saving = useSettingsSave(rules, close);
  const submit = (event: FormEvent) => {
    event.preventDefault();
    void saving.save({ ...rules.settings, note: chosen });
  };
  return (
    <form onSubmit={submit} aria-label="Chart note">
      <ol className="note-order">
        {listParts(chosen).map(({ id, isIn }) => (
          <li key={id} className={isIn ? undefined : 'aside'}>
            <span>{isIn ? SECTION_NAMES[id] : `${SECTION_NAMES[id]}, left out`}</span>
            <span className="note-order-keys">
              {isIn && (
                <>
                  <PartButton words="up" about={SECTION_NAMES[id]} onPress={() => setChosen(movePart(chosen, id, -1))} />
                  <PartButton words="down" about={SECTION_NAMES[id]} onPress={() => setChosen(movePart(chosen, id, 1))} />
                </>
              )}
              <PartButton
                words={isIn ? 'leave out' : 'put in'}
                about={SECTION_NAMES[id]}
                onPress={() => setChosen(isIn ? chosen.filter((other) => other !== id) : [...chosen, id])}
              />
            </span>
          </li>
        ))}
      </ol>
      <SaveBar saving={saving} say={sayNote} onLeave={() => close()} />
    </form>
  );
}

const sayNote = ({ note = DEFAULT_NOTE }: PracticeSettings) => note.map((id, i) => [`Part ${i + 1}`, SECTION_NAMES[id]] as const);

interface PartButtonProps {
  readonly words: string;
  readonly about: string;
  readonly onPress: () => void;
}

/** One step of a list that is put in order: the words stand alone, the part for a screen reader. */
export function PartButton({ words, about, onPress }: PartButtonProps) {
  return (
    <button type="button" className="link" aria-label={`${words}: ${about}`} onClick={onPress}>
      {words}
    </button>
  );
}
