import { applyField } from '../../../core/visit/applyField.ts';
import type { VisitInput } from '../../../core/visit/types.ts';

/** One field that an action changed. */
export interface UndoField {
  readonly path: string;
  /** What the page showed before: for an answer not asked yet, the one that was carried. `undefined` = nothing. */
  readonly before: unknown;
  /** Whether that value was saved in this visit; else undoing takes the field out again. */
  readonly wasSaved: boolean;
  readonly after: unknown;
}

/** What one key did: the first value of each field before it, the last after it. */
export type UndoStep = readonly UndoField[];

/** The step with one more field saved by the same action. */
export function addToStep(step: UndoStep, field: UndoField): UndoStep {
  const at = step.findIndex(({ path }) => path === field.path);
  return at === -1 ? [...step, field] : step.map((other, i) => (i === at ? { ...other, after: field.after } : other));
}

export type UndoResult =
  /** The visit as it is shown again, and what is to be saved for it. */
  | { readonly input: VisitInput; readonly saves: readonly { readonly path: string; readonly value: unknown }[] }
  /** Somebody else saved this field since: nothing is undone unseen. */
  | { readonly changedSince: string };

/** Takes a step back, unless one of its fields is no longer as the step left it. */
export function undoStep(input: VisitInput, step: UndoStep): UndoResult {
  const changed = step.find(({ path, after }) => JSON.stringify(readField(input, path) ?? null) !== JSON.stringify(after ?? null));
  if (changed) return { changedSince: changed.path };
  const back = [...step].reverse();
  return {
    input: back.reduce((visit, { path, before }) => applyField(visit, path, before ?? null), input),
    saves: back.map(({ path, before, wasSaved }) => ({ path, value: wasSaved ? (before ?? null) : null })),
  };
}

export function readField({ visit }: VisitInput, path: string): unknown {
  const [first = '', question] = path.split('.', 2);
  return first === 'answers' ? visit.answers[question ?? ''] : Reflect.get(visit, first);
}
