import { useQueryClient } from '@tanstack/react-query';
import { type FocusEvent, type KeyboardEvent, useEffect, useRef, useState } from 'react';
import { countedRuns, sayMissing } from '../../../../core/checks/countedRuns.ts';
import type { StudyReading, StudyRun } from '../../../../core/checks/study.ts';
import { sayRlu } from '../../../../core/reading/sayRlu.ts';
import type { Meter } from '../../../../core/reading/types.ts';
import { voidReading } from '../../../data/checkQueries.ts';
import type { StudyRecord } from '../../../data/studyQueries.ts';
import { useSend } from '../../../data/useSend.ts';
import { OpenForm } from '../../../parts/OpenForm.tsx';
import { ReasonForm } from '../../../parts/ReasonForm.tsx';
import { parseReading } from './parseReading.ts';
import { SwabbedAt } from './SwabbedAt.tsx';
import { asRead } from './studyPoints.ts';
import { type Pending, useStudyEntry } from './useStudyEntry.ts';

interface EnterReadingsProps {
  readonly record: StudyRecord;
  readonly meterOf: (run: StudyRun) => Meter;
  readonly sayRun: (run: StudyRun) => string;
  /** A number that was taken back stays on the record, so not everybody takes one back. */
  readonly mayVoid: boolean;
}

/** One field for each swab, in the order of the run sheet. */
export function EnterReadings({ record, meterOf, sayRun, mayVoid }: EnterReadingsProps) {
  const { study, readings } = record;
  const { byRun, pending, put, forget } = useStudyEntry(record);
  const [takenAt, setTakenAt] = useState<string | undefined>(undefined);
  const list = useRef<HTMLOListElement>(null);
  useEffect(() => focusEmpty(list.current, -1), []);
  const missing = sayMissing(countedRuns(study.runs, readings.map(asRead)));
  return (
    <section aria-label="Numbers">
      <h2>Numbers</h2>
      <p>
        Type each number in the order of the run sheet; Enter keeps it and goes on. At the end of the scale type &lt; or &gt; before it.
      </p>
      {study.kind === 'paired-days' && <SwabbedAt onChange={setTakenAt} />}
      <ol className="study-runs" ref={list}>
        {study.runs.map((run) => (
          <li key={run.index}>
            <RunLine
              run={run}
              what={sayRun(run)}
              meter={meterOf(run)}
              reading={byRun.get(run.index)}
              pending={pending.get(run.index)}
              mayVoid={mayVoid}
              studyId={study.id}
              onType={(typed) => put(run.index, takenAt === undefined ? typed : { ...typed, takenAt })}
              onForget={() => forget(run.index)}
              onNext={() => focusEmpty(list.current, run.index)}
            />
          </li>
        ))}
      </ol>
      {missing && <p className="side-note">{missing}</p>}
    </section>
  );
}

/** To the next field that is empty, round the end; where none is left the keyboard goes on to what follows the list. */
function focusEmpty(list: HTMLElement | null, after: number): void {
  const empty = [...(list?.querySelectorAll<HTMLInputElement>('input[data-run]') ?? [])].filter(
    ({ value, dataset }) => value === '' && Number(dataset.run) !== after,
  );
  const next = empty.find(({ dataset }) => Number(dataset.run) > after) ?? empty[0];
  if (next) next.focus();
  else document.querySelector<HTMLElement>('[data-after-numbers]')?.focus();
}

interface RunLineProps {
  readonly run: StudyRun;
  readonly what: string;
  readonly meter: Meter;
  readonly reading: StudyReading | undefined;
  readonly pending: Pending | undefined;
  readonly mayVoid: boolean;
  readonly studyId: string;
  readonly onType: (typed: Pick<Pending, 'rlu' | 'bound'>) => void;
  readonly onForget: () => void;
  readonly onNext: () => void;
}

function RunLine({ reading, pending, ...line }: RunLineProps) {
  const isRead = reading?.state === 'valid';
  return (
    <>
      <span className="run-number">{line.run.index + 1}</span>
      <span className="run-what" id={`run-what-${line.run.index}`}>
        {line.what}
      </span>
      <div className="run-field">
        {pending ? (
          <PendingNumber pending={pending} onForget={line.onForget} />
        ) : isRead ? (
          <ReadNumber reading={reading} mayVoid={line.mayVoid} swab={line.run.index + 1} studyId={line.studyId} />
        ) : (
          <NumberField {...line} voided={reading} />
        )}
      </div>
    </>
  );
}

function PendingNumber({ pending, onForget }: { readonly pending: Pending; readonly onForget: () => void }) {
  const said = sayRlu(pending.rlu, pending.bound);
  if (pending.refused === undefined)
    return (
      <>
        {said} <span className="hint">not saved yet</span>
      </>
    );
  return (
    <span role="alert">
      {said} <span className="problem">is not saved: {pending.refused}</span>{' '}
      <button type="button" className="link" onClick={onForget}>
        Throw it away
      </button>
    </span>
  );
}

interface ReadNumberProps {
  readonly reading: StudyReading;
  readonly mayVoid: boolean;
  readonly swab: number;
  readonly studyId: string;
}

function ReadNumber({ reading, mayVoid, swab, studyId }: ReadNumberProps) {
  const client = useQueryClient();
  const sending = useSend();
  const said = <span className="run-read">{sayRlu(reading.rlu, reading.bound)}</span>;
  if (!mayVoid) return said;
  const giveReason = (reason: string, close: (said?: string) => void) =>
    void sending.send(async () => {
      await voidReading(reading.id, reading.version, reason);
      close();
      await client.invalidateQueries({ queryKey: ['study', studyId] });
    });
  return (
    <OpenForm
      label="Wrong number"
      about={`of swab ${swab}`}
      form={(close) => (
        <ReasonForm
          about={`Why the number of swab ${swab} is wrong`}
          hint="The number stays on the record, not counted, and the swab is read again."
          saveWords="Take it back"
          problem={sending.problem}
          onGive={(reason) => giveReason(reason, close)}
          onLeave={() => close()}
        />
      )}
    >
      {said}{' '}
    </OpenForm>
  );
}

type NumberFieldProps = Omit<RunLineProps, 'reading' | 'pending'> & { readonly voided: StudyReading | undefined };

function NumberField({ run, meter, voided, onType, onNext }: NumberFieldProps) {
  const [text, setText] = useState('');
  const [problem, setProblem] = useState<string | null>(null);
  /** Enter keeps a number and leaves the field, which must not keep it once more. */
  const kept = useRef<string | null>(null);
  const keep = (): boolean => {
    if (kept.current === text) return true;
    const parsed = parseReading(text, meter);
    if (!parsed.ok) {
      setProblem(parsed.says);
      return false;
    }
    kept.current = text;
    onType({ rlu: parsed.rlu, bound: parsed.bound });
    return true;
  };
  const onKeyDown = (event: KeyboardEvent) => {
    if (event.key !== 'Enter') return;
    event.preventDefault();
    // An empty field is passed over: that swab was not read, and stays named as missing.
    if (text.trim() === '') return onNext();
    if (keep()) onNext();
  };
  const onBlur = (event: FocusEvent) => {
    if (text.trim() !== '' && event.currentTarget.isConnected) keep();
  };
  const noteId = `run-note-${run.index}`;
  return (
    <>
      <input
        className="number"
        inputMode="numeric"
        autoComplete="off"
        data-run={run.index}
        aria-label={`Swab ${run.index + 1}`}
        aria-describedby={`run-what-${run.index} ${noteId}`}
        aria-invalid={problem !== null || undefined}
        value={text}
        onChange={(event) => {
          setText(event.target.value);
          setProblem(null);
        }}
        onKeyDown={onKeyDown}
        onBlur={onBlur}
      />{' '}
      <span className="unit">RLU</span>{' '}
      <span id={noteId}>
        {problem && (
          <span className="problem" role="alert">
            {problem}
          </span>
        )}
        {voided && (
          <span className="hint">
            {sayRlu(voided.rlu, voided.bound)}, not counted: {voided.voidReason}
          </span>
        )}
      </span>
    </>
  );
}
