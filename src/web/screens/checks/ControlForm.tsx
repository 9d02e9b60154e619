import { useQueryClient } from '@tanstack/react-query';
import { type FormEvent, useId, useRef, useState } from 'react';
import type { ChecksView } from '../../../api/swabChecks.ts';
import type { SwabStorage } from '../../../core/checks/control.ts';
import { recordControl } from '../../data/checkQueries.ts';
import { useSend } from '../../data/useSend.ts';
import { formatNumber } from '../../format.ts';
import { SelectLine, TextLine } from '../../parts/fields.tsx';
import { focusFirstProblem } from '../../parts/focusFirstProblem.ts';
import { Key } from '../../parts/Key.tsx';
import { isExpired } from '../practice/Lots.tsx';
import { type BuiltControl, buildControl, type ControlDraft } from './controlDraft.ts';
import { DoneLines } from './DoneLines.tsx';
import type { MeterToday } from './sayChecks.ts';
import { NOTHING_SAID } from './stopWords.ts';

interface ControlFormProps {
  readonly today: MeterToday;
  readonly view: ChecksView;
  readonly lotId: string | undefined;
  readonly onLot: (lotId: string) => void;
  /** A lot of this meter is stopped: what was done is asked for with the next control. */
  readonly isStopped: boolean;
}

const STORAGE: readonly { readonly id: SwabStorage | 'not-noted'; readonly label: string }[] = [
  { id: 'not-noted', label: 'not noted' },
  { id: 'fridge', label: 'from the fridge' },
  { id: 'fridge-then-room', label: 'from the fridge, then at room temperature' },
  { id: 'room', label: 'at room temperature' },
  { id: 'other', label: 'elsewhere' },
];

/** One field for the number; lot and solution stand there already, the rest is folded away. While readings are stopped, what was done is asked for. */
export function ControlForm({ today, view, lotId, onLot, isStopped }: ControlFormProps) {
  const { meter, plan } = today;
  const client = useQueryClient();
  const { send, isSending, problem: refusal } = useSend();
  const form = useRef<HTMLFormElement>(null);
  const id = useId();
  const [draft, setDraft] = useState<ControlDraft>({
    ...EMPTY,
    solution: plan?.solution.name ?? '',
    solutionLot: lastSolutionLot(view, meter.id) ?? plan?.solution.lot ?? '',
  });
  const [problem, setProblem] = useState<Extract<BuiltControl, { problem: string }> | undefined>();
  const set = (part: Partial<ControlDraft>) => setDraft((before) => ({ ...before, ...part }));
  const problemOf = (field: string) => (problem?.field === field ? problem.problem : undefined);
  const submit = (event: FormEvent) => {
    event.preventDefault();
    const built = buildControl(draft, { meter, lotId, view, nowMs: Date.now(), isStopped });
    setProblem('problem' in built ? built : undefined);
    if ('problem' in built) return focusFirstProblem(form.current);
    void send(async () => {
      await recordControl(built.control);
      await client.invalidateQueries({ queryKey: ['checks'] });
      set({ typed: '', when: '', done: NOTHING_SAID });
      form.current?.querySelector<HTMLElement>('[data-control-number]')?.focus();
    });
  };
  const said = problemOf('typed') ?? refusal ?? undefined;
  const { solution, solutionLot } = draft;
  return (
    <form ref={form} noValidate onSubmit={submit} aria-label={`Control of ${meter.name}`} className="control-form">
      {isStopped && (
        <DoneLines
          draft={draft.done}
          problem={problemOf('done')}
          hint="Kept with the next control, and with the stop once a control is in line."
          onChange={(done) => set({ done })}
        />
      )}
      <div className="control-entry">
        <label htmlFor={id}>
          <Key>n</Key> The control reads
        </label>
        <input
          id={id}
          data-control-number
          className="number"
          inputMode="decimal"
          autoComplete="off"
          maxLength={20}
          value={draft.typed}
          aria-describedby={said ? `${id}-problem` : `${id}-hint`}
          aria-invalid={said !== undefined || undefined}
          onChange={(event) => set({ typed: event.target.value })}
        />
        <span className="unit">RLU</span>
        <button type="submit" className="action primary" disabled={isSending}>
          Save
        </button>
      </div>
      {said && (
        <p id={`${id}-problem`} className="problem" role="alert">
          {said}
        </p>
      )}
      <p id={`${id}-hint`} className="hint">
        {formatNumber(meter.lowestRlu)} to {formatNumber(meter.highestRlu)}; &lt;{meter.lowestRlu} or &gt;{meter.highestRlu} where the meter
        only gives a limit.
        {solution && ` Solution: ${[solution, solutionLot && `lot ${solutionLot}`].filter(Boolean).join(', ')}.`}
      </p>
      <SelectLine
        label="Swab lot"
        value={lotId ?? ''}
        options={view.lots.map((lot) => ({ id: lot.id, label: isExpired(lot, view.today) ? `${lot.name}, past its date` : lot.name }))}
        onChange={onLot}
      />
      <TextLine
        label="Taken at"
        kind="number"
        value={draft.when}
        problem={problemOf('when')}
        hint="Left empty: now. A time like 08:15; for another day 20261124 0815."
        onChange={(when) => set({ when })}
      />
      <details>
        <summary>Solution, temperature, storage</summary>
        <TextLine label="Control solution" value={solution} onChange={(value) => set({ solution: value })} />
        <TextLine label="Lot of the solution" value={solutionLot} onChange={(value) => set({ solutionLot: value })} />
        <TextLine
          label="Temperature of the room"
          kind="number"
          unit="°C"
          value={draft.temperature}
          problem={problemOf('temperature')}
          onChange={(temperature) => set({ temperature })}
        />
        <SelectLine label="The swabs were kept" value={draft.storage} options={STORAGE} onChange={(storage) => set({ storage })} />
      </details>
    </form>
  );
}

const EMPTY: ControlDraft = {
  ...{ typed: '', when: '', solution: '', solutionLot: '', temperature: '' },
  storage: 'not-noted',
  done: NOTHING_SAID,
};

function lastSolutionLot({ controls }: ChecksView, meterId: string): string | undefined {
  return controls.findLast((control) => control.meterId === meterId && control.note.solution?.lot !== undefined)?.note.solution?.lot;
}
