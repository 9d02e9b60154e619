import { type FormEvent, useState } from 'react';
import { orderOf } from '../../../core/regimen/choice/goals.ts';
import type { RegimenCriterion } from '../../../core/regimen/types.ts';
import type { PracticeSettings } from '../../../core/visit/types.ts';
import type { RulesView } from '../../data/queries.ts';
import { OpenForm } from '../../parts/OpenForm.tsx';
import { SaveBar } from '../../parts/SaveBar.tsx';
import { PartButton } from './NoteOrder.tsx';
import { movePart } from './noteOrder.ts';
import { useSettingsSave } from './useSettingsSave.ts';

export const CRITERION_NAMES: Readonly<Record<RegimenCriterion, string>> = {
  tasks: 'Fewest tasks a day',
  cost: 'Lowest cost a month',
  items: 'Fewest products',
};

/** What decides between regimens that meet the same needs and fit alike. */
export function RegimenOrder({ rules, mayChange }: { readonly rules: RulesView; readonly mayChange: boolean }) {
  const view = (
    <ol className="note-order-list">
      {orderOf(rules.settings.regimenOrder).map((id) => (
        <li key={id}>{CRITERION_NAMES[id]}</li>
      ))}
    </ol>
  );
  return (
    <>
      <h3>Which regimen comes first</h3>
      <p>
        Of the regimens that meet the same needs and fit alike, the first line decides, and the next only where the first is a tie. It
        changes neither what a rule keeps out nor which need is met first.
      </p>
      {mayChange ? (
        <OpenForm label="Change which regimen comes first" form={(close) => <OrderForm rules={rules} close={close} />}>
          {view}
        </OpenForm>
      ) : (
        view
      )}
    </>
  );
}

function OrderForm({ rules, close }: { readonly rules: RulesView; readonly close: (said?: string) => void }) {
  const [chosen, setChosen] = useState(() => orderOf(rules.settings.regimenOrder));
  const saving = useSettingsSave(rules, close);
  const submit = (event: FormEvent) => {
    event.preventDefault();
    void saving.save({ ...rules.settings, regimenOrder: chosen });
  };
  return (
    <form onSubmit={submit} aria-label="Which regimen comes first">
      <ol className="note-order">
        {chosen.map((id) => (
          <li key={id}>
            <span>{CRITERION_NAMES[id]}</span>
            <span className="note-order-keys">
              <PartButton words="up" about={CRITERION_NAMES[id]} onPress={() => setChosen(movePart(chosen, id, -1))} />
              <PartButton words="down" about={CRITERION_NAMES[id]} onPress={() => setChosen(movePart(chosen, id, 1))} />
            </span>
          </li>
        ))}
      </ol>
      <SaveBar saving={saving} say={sayOrder} onLeave={() => close()} />
    </form>
  );
}

const PLACES = ['Decides first', 'On a tie', 'On a further tie'];

export const sayOrder = ({ regimenOrder }: PracticeSettings) =>
  orderOf(regimenOrder).map((id, i) => [PLACES[i] ?? '', CRITERION_NAMES[id]] as const);
