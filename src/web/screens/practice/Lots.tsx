import { useQueryClient } from '@tanstack/react-query';
import { type FormEvent, useRef, useState } from 'react';
import type { PracticeView } from '../../../api/bundles.ts';
import type { SwabLot } from '../../../core/reading/types.ts';
import { readLot, saveLot } from '../../data/practiceQueries.ts';
import { useVersionedSave } from '../../data/useVersionedSave.ts';
import { formatDate } from '../../format.ts';
import { TextLine } from '../../parts/fields.tsx';
import { focusFirstProblem } from '../../parts/focusFirstProblem.ts';
import { OpenForm } from '../../parts/OpenForm.tsx';
import { SaveBar } from '../../parts/SaveBar.tsx';
import { makeId, randomBytes } from '../../slug.ts';
import { parseBirthday as parseDay } from '../findPeople.ts';

type Entry = PracticeView['lots'][number];

/** The last day itself is still good. */
export const isExpired = ({ expiresOn }: Pick<SwabLot, 'expiresOn'>, today: string): boolean => expiresOn < today;

const sayLot = (lot: SwabLot) =>
  [
    ['Name', lot.name],
    ['Last day', formatDate(lot.expiresOn)],
  ] as const;

export function Lots({ lots, today }: { readonly lots: readonly Entry[]; readonly today: string }) {
  const lastFirst = [...lots].sort((a, b) => b.lot.expiresOn.localeCompare(a.lot.expiresOn));
  return (
    <section id="lots" tabIndex={-1} aria-label="Swab lots">
      <h2>Swab lots</h2>
      <p>
        {lots.length === 0
          ? 'No swab lot yet. Until there is one a swab has no lot, and its reading is taken with caution.'
          : 'A swab of a lot past its last day is not counted.'}
      </p>
      {lots.length > 0 && (
        <table className="practice-table">
          <thead>
            <tr>
              <th scope="col">Lot</th>
              <th scope="col">Last day</th>
              <th scope="col">State</th>
              <th scope="col">
                <span className="sr-only">Change</span>
              </th>
            </tr>
          </thead>
          <tbody>
            {lastFirst.map((entry) => (
              <tr key={entry.lot.id}>
                <th scope="row">{entry.lot.name}</th>
                <td data-label="Last day">{formatDate(entry.lot.expiresOn)}</td>
                <td data-label="State">{isExpired(entry.lot, today) ? <span className="problem">expired</span> : 'in date'}</td>
                <td>
                  <OpenForm label="change" about={entry.lot.name} form={(close) => <LotForm entry={entry} close={close} />} />
                </td>
              </tr>
            ))}
          </tbody>
        </table>
      )}
      <div className="actions">
        <OpenForm label="Add a lot" isAction form={(close) => <LotForm close={close} />} />
      </div>
    </section>
  );
}

function LotForm({ entry, close }: { readonly entry?: Entry; readonly close: (said?: string) => void }) {
  const client = useQueryClient();
  const form = useRef<HTMLFormElement>(null);
  const [name, setName] = useState(entry?.lot.name ?? '');
  const [day, setDay] = useState(entry?.lot.expiresOn ?? '');
  const [isTried, setTried] = useState(false);
  const [newId, setNewId] = useState<string | null>(null);
  const id = entry?.lot.id ?? newId;
  const expiresOn = parseDay(day);
  const problems = {
    name: isTried && name.trim() === '' ? 'The name or number on the box is needed.' : undefined,
    day: isTried && expiresOn === undefined ? 'This is no day of the calendar. Year, month and day, like 20270307.' : undefined,
  };
  const reread = () => client.invalidateQueries({ queryKey: ['practice'] });
  const saving = useVersionedSave<SwabLot>({
    version: entry?.version ?? 0,
    write: saveLot,
    readAgain: async () => (id === null ? undefined : readLot(id)),
    onSaved: async (lot) => {
      await reread();
      close(`${lot.name} is saved.`);
    },
  });
  const submit = (event: FormEvent) => {
    event.preventDefault();
    setTried(true);
    if (name.trim() === '' || expiresOn === undefined) return focusFirstProblem(form.current);
    const lot = { id: id ?? makeId(name, randomBytes), name: name.trim(), expiresOn };
    setNewId(lot.id);
    void saving.save(lot);
  };
  return (
    <form ref={form} noValidate onSubmit={submit} aria-label={entry ? `Change ${entry.lot.name}` : 'New lot'}>
      <TextLine label="Lot, as on the box" value={name} problem={problems.name} onChange={setName} />
      <TextLine
        label="Last day it may be used"
        kind="number"
        value={day}
        problem={problems.day}
        hint="Year, month and day, like 20270307. A new lot is compared with the one before, under Swab checks, before people are swabbed with it; without that, Swab asks why."
        onChange={setDay}
      />
      <SaveBar
        saving={saving}
        say={sayLot}
        problemCount={Object.values(problems).filter(Boolean).length}
        onLeave={() => {
          void reread();
          close();
        }}
      />
    </form>
  );
}
