import type { ChecksView, NewControl } from '../../../api/swabChecks.ts';
import type { SwabStorage } from '../../../core/checks/control.ts';
import type { Meter } from '../../../core/reading/types.ts';
import { parseNumber, readingProblem } from '../visit/swabLines.ts';
import { parseWhen } from './parseWhen.ts';
import { type DoneDraft, doneOf, doneProblem } from './stopWords.ts';

/** A control as it is typed. */
export interface ControlDraft {
  readonly typed: string;
  /** Empty = now. */
  readonly when: string;
  readonly solution: string;
  readonly solutionLot: string;
  readonly temperature: string;
  readonly storage: SwabStorage | 'not-noted';
  readonly done: DoneDraft;
}

interface ControlPlace {
  readonly meter: Meter;
  readonly lotId: string | undefined;
  readonly view: Pick<ChecksView, 'lots' | 'today' | 'timeZone'>;
  readonly nowMs: number;
  /** Whether what was done is asked for. */
  readonly isStopped: boolean;
}

export type BuiltControl =
  | { readonly control: NewControl }
  | { readonly problem: string; readonly field: 'typed' | 'when' | 'temperature' | 'done' };

/** What is sent, or the first thing that is wrong, by the name of its field. */
export function buildControl(draft: ControlDraft, { meter, lotId, view, nowMs, isStopped }: ControlPlace): BuiltControl {
  const refuse = (problem: string, field: 'typed' | 'when' | 'temperature' | 'done' = 'typed') => ({ problem, field });
  const reply = parseNumber(draft.typed, { kind: 'number', min: 0, bounds: true });
  if ('problem' in reply || reply.how !== 'asked') return refuse('problem' in reply ? reply.problem : 'A number is needed here.');
  if (lotId === undefined) return refuse('A control needs its swab lot, and none is in date.');
  const number = { rlu: Number(reply.value), bound: reply.bound ?? ('exact' as const) };
  const wrong = readingProblem(number, meter, view.lots);
  if (wrong) return refuse(wrong);
  const taken = parseWhen(draft.when, { today: view.today, timeZone: view.timeZone, nowMs });
  if ('problem' in taken) return refuse(taken.problem, 'when');
  const temperatureDegC = draft.temperature.trim() === '' ? undefined : Number(draft.temperature.replace(',', '.'));
  if (temperatureDegC !== undefined && !Number.isFinite(temperatureDegC))
    return refuse('Temperature: a number of degrees Celsius, or nothing.', 'temperature');
  const missing = isStopped ? doneProblem(draft.done) : undefined;
  if (missing) return refuse(missing, 'done');
  const did = isStopped ? doneOf(draft.done) : undefined;
  const { takenAt } = taken;
  const note = { ...noteOf(draft), ...(temperatureDegC !== undefined && { temperatureDegC }) };
  return { control: { meterId: meter.id, lotId, ...number, note, ...(takenAt !== undefined && { takenAt }), ...(did && { did }) } };
}

function noteOf({ solution, solutionLot, storage }: ControlDraft): NonNullable<NewControl['note']> {
  const [name, lot] = [solution.trim(), solutionLot.trim()];
  return { ...(name && { solution: { name, ...(lot && { lot }) } }), ...(storage !== 'not-noted' && { storage }) };
}
