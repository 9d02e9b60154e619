import { type FormEvent, useState } from 'react';
import { listSettable, takenPosition } from '../../../core/regimen/disagreement/settleTables.ts';
import type { Disagreement, Position, SettableDisagreement } from '../../../core/regimen/disagreement/types.ts';
import type { PracticeSettings } from '../../../core/visit/types.ts';
import { content } from '../../content.ts';
import type { RulesView } from '../../data/queries.ts';
import { capitalise } from '../../format.ts';
import type { SaidLines } from '../../parts/differences.ts';
import { ChoiceLine } from '../../parts/fields.tsx';
import { OpenForm } from '../../parts/OpenForm.tsx';
import { SaveBar } from '../../parts/SaveBar.tsx';
import { SourceList, Why } from '../../parts/Sources.tsx';
import { useIsPrinting } from '../../parts/useIsPrinting.ts';
import { useOpenForPrint } from '../../parts/useOpenForPrint.ts';
import { sayTaken, setPosition } from './disagreements.ts';
import { useSettingsSave } from './useSettingsSave.ts';

const { disagreements = [] } = content.regimen;

const GROUPS: readonly { readonly kind: Disagreement['kind']; readonly name: string }[] = [
  { kind: 'setting', name: 'Chosen here' },
  { kind: 'elsewhere', name: 'Set elsewhere' },
  { kind: 'nothing-to-set', name: 'Nothing to set' },
];

/** Every disagreement of the sources on record: the positions, the one that holds here, and a way to choose another. */
export function Disagreements({ rules, mayChange }: { readonly rules: RulesView; readonly mayChange: boolean }) {
  useOpenForPrint('#disagreements');
  const isPrinting = useIsPrinting();
  return (
    <section id="disagreements" aria-label="Where sources disagree">
      <h2>Where sources disagree</h2>
      <p>
        Sources do not say the same of everything. Here stand both sides, and which of them holds in this practice. Until the practice
        chooses, the stricter holds where safety is concerned, our own proposal elsewhere.
      </p>
      {GROUPS.map(({ kind, name }) => {
        const rows = disagreements.filter((d) => d.kind === kind);
        return (
          <details key={kind}>
            <summary>
              {name} <span className="aside">{rows.length} questions</span>
            </summary>
            <ul className="plain-list disagreements">
              {rows.map((row) => (
                <li key={row.id}>
                  <strong>{row.question}</strong>
                  {row.kind === 'setting' ? <Taken row={row} rules={rules} mayChange={mayChange} /> : <p>{row.says}</p>}{' '}
                  <Why label="both sides" about={row.question}>
                    <Positions row={row} settings={rules.settings} />
                  </Why>
                  {isPrinting && (
                    <div className="why-text on-paper">
                      <Positions row={row} settings={rules.settings} />
                    </div>
                  )}
                </li>
              ))}
            </ul>
          </details>
        );
      })}
    </section>
  );
}

function Positions({ row, settings }: { readonly row: Disagreement; readonly settings: PracticeSettings }) {
  const holds = row.kind === 'setting' ? takenPosition(row, settings.disagreements).id : undefined;
  const positions: readonly Position[] = row.positions;
  return (
    <>
      {positions.map(({ id, says, sources }) => (
        <div key={id}>
          {capitalise(says)}.{id === holds && ' This holds here.'}
          <SourceList sources={sources} />
        </div>
      ))}
    </>
  );
}

interface RowProps {
  readonly row: SettableDisagreement;
  readonly rules: RulesView;
}

function Taken({ row, rules, mayChange }: RowProps & { readonly mayChange: boolean }) {
  const view = (
    <p>
      {sayTaken(row, rules.settings)} <span className="aside">{row.changes}</span>
    </p>
  );
  if (!mayChange) return view;
  return (
    <OpenForm label="choose" about={row.question} form={(close) => <ChoiceForm row={row} rules={rules} close={close} />}>
      {view}
    </OpenForm>
  );
}

const NOT_SET = '';

function ChoiceForm({ row, rules, close }: RowProps & { readonly close: (said?: string) => void }) {
  const [chosen, setChosen] = useState(rules.settings.disagreements?.[row.id] ?? NOT_SET);
  const saving = useSettingsSave(rules, close);
  const submit = (event: FormEvent) => {
    event.preventDefault();
    void saving.save(setPosition(rules.settings, row.id, chosen === NOT_SET ? undefined : chosen));
  };
  const unset = row.unsetBecause === 'stricter' ? 'the stricter holds' : 'our proposal holds';
  return (
    <form onSubmit={submit} aria-label={row.question}>
      <ChoiceLine
        label={row.question}
        value={chosen}
        options={[
          { id: NOT_SET, label: `Not chosen: ${unset}`, hint: takenPosition(row).says },
          ...row.positions.map(({ id, says }) => ({ id, label: capitalise(says) })),
        ]}
        hint={row.changes}
        onChange={setChosen}
      />
      <SaveBar saving={saving} say={sayDisagreements} onLeave={() => close()} />
    </form>
  );
}

const sayDisagreements = (settings: PracticeSettings): SaidLines =>
  listSettable(content.regimen).map((row) => [row.question, sayTaken(row, settings)] as const);
