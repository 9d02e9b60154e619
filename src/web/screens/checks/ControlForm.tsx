import { useQueryClient } from '@tanstack/react-query';
import { type FormEvent, useId, useRef, useState } from 'react';
import type { ChecksView, NewControl } from '../../../api/swabChecks.ts';
import type { SwabStorage } from '../../../core/checks/control.ts';
import { recordControl } from '../../data/checkQueries.ts';
import { useSend } from '../../data/useSend.ts';
import { formatNumber } from '../../format.ts';
import { SelectLine, TextLine } from '../../parts/fields.tsx';
import { Key } from '../../parts/Key.tsx';
import { isExpired } from '../practice/Lots.tsx';
import { parseNumber, readingProblem } from '../visit/swabLines.ts';
import type { MeterToday } from './sayChecks.ts';

interface ControlFormProps {
  readonly today: MeterToday;
  readonly view: ChecksView;
  readonly lotId: string | undefined;
  readonly onLot: (lotId: string) => void;
}

const STORAGE: readonly { readonly id: SwabStorage | 'not-noted'; readonly label: string }[] = [
  { id: 'not-noted', label: 'not noted' },
  { id: 'fridge', label: 'from the fridge' },
  { id: 'fridge-then-room', label: 'from the fridge, then at room temperature' },
  { id: 'room', label: 'at room temperature' },
  { id: 'other', label: 'elsewhere' },
];

/** One field for the number; lot and solution stand there already, the rest is folded away. */
export function ControlForm({ today, view, lotId, onLot }: ControlFormProps) {
  const { meter, plan } = today;
  const client = useQueryClient();
  const { send, isSending, problem: refusal } = useSend();
  const field = useRef<HTMLInputElement>(null);
  const id = useId();
  const [typed, setTyped] = useState('');
  const [problem, setProblem] = useState<string | undefined>();
  const [solution, setSolution] = useState(plan?.solution.name ?? '');
  const [solutionLot, setSolutionLot] = useState(lastSolutionLot(view, meter.id) ?? plan?.solution.lot ?? '');
  const [temperature, setTemperature] = useState('');
  const [storage, setStorage] = useState<SwabStorage | 'not-noted'>('not-noted');

  const refuse = (words: string) => {
    setProblem(words);
    field.current?.focus();
  };
  const submit = (event: FormEvent) => {
    event.preventDefault();
    const reply = parseNumber(typed, { kind: 'number', min: 0, bounds: true });
    if ('problem' in reply || reply.how !== 'asked') return refuse('problem' in reply ? reply.problem : 'A number is needed here.');
    if (lotId === undefined) return refuse('A control needs its swab lot, and none is in date.');
    const number = { rlu: Number(reply.value), bound: reply.bound ?? ('exact' as const) };
    const wrong = readingProblem(number, meter, view.lots);
    if (wrong) return refuse(wrong);
    const degrees = temperature.trim() === '' ? undefined : Number(temperature.replace(',', '.'));
    if (degrees !== undefined && !Number.isFinite(degrees)) return refuse('Temperature: a number of degrees Celsius, or nothing.');
    const note: NonNullable<NewControl['note']> = {
      ...(solution.trim() && {
        solution: { name: solution.trim(), ...(solutionLot.trim() && { lot: solutionLot.trim() }) },
      }),
      ...(degrees !== undefined && { temperatureDegC: degrees }),
      ...(storage !== 'not-noted' && { storage }),
    };
    setProblem(undefined);
    void send(async () => {
      await recordControl({ meterId: meter.id, lotId, ...number, note });
      await client.invalidateQueries({ queryKey: ['checks'] });
      setTyped('');
      field.current?.focus();
    });
  };
  const said = problem ?? refusal ?? undefined;
  return (
    <form noValidate onSubmit={submit} aria-label={`Control of ${meter.name}`} className="control-form">
      <div className="control-entry">
        <label htmlFor={id}>
          <Key>n</Key> The control reads
        </label>
        <input
          ref={field}
          id={id}
          data-control-number
          className="number"
          inputMode="decimal"
          autoComplete="off"
          maxLength={20}
          value={typed}
          aria-describedby={said ? `${id}-problem` : `${id}-hint`}
          aria-invalid={said !== undefined || undefined}
          onChange={(event) => setTyped(event.target.value)}
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
      <details>
        <summary>Solution, temperature, storage</summary>
        <TextLine label="Control solution" value={solution} onChange={setSolution} />
        <TextLine label="Lot of the solution" value={solutionLot} onChange={setSolutionLot} />
        <TextLine label="Temperature of the room" kind="number" unit="°C" value={temperature} onChange={setTemperature} />
        <SelectLine label="The swabs were kept" value={storage} options={STORAGE} onChange={setStorage} />
      </details>
    </form>
  );
}

function lastSolutionLot({ controls }: ChecksView, meterId: string): string | undefined {
  return controls.findLast((control) => control.meterId === meterId && control.note.solution?.lot !== undefined)?.note.solution?.lot;
}
