import { useCallback, useEffect, useRef, useState } from 'react';
import type { VisitBundle } from '../../../api/bundles.ts';
import { applyField } from '../../../core/visit/applyField.ts';
import type { VisitInput } from '../../../core/visit/types.ts';
import { useSaveQueue } from '../../data/saving.ts';
import { addToStep, readField, type UndoStep, undoStep } from './undoSteps.ts';

export interface VisitDraft {
  readonly input: VisitInput;
  /** Shows the value at once and sends it to the server. */
  readonly put: (path: string, value: unknown) => void;
  /** Shows what the server already holds. */
  readonly show: (change: (input: VisitInput) => VisitInput) => void;
  /** The last action that saved something, taken off the list; undefined when there is none left. */
  readonly takeStep: () => TakenStep | undefined;
  /** A step that only the server can take back. */
  readonly noteStep: (decidedAt: string) => void;
}

export type TakenStep =
  | { readonly kind: 'fields'; readonly step: UndoStep; readonly changedSince?: string | undefined }
  | { readonly kind: 'level'; readonly decidedAt: string };

type Step = { readonly kind: 'fields'; step: UndoStep; isOpen: boolean } | { readonly kind: 'level'; readonly decidedAt: string };

interface DraftOptions {
  /** False while a closed visit is corrected: then everything is sent together at the end. */
  readonly isSent?: boolean;
  /** What the page begins with; absent = as the server gave it. */
  readonly begun?: VisitInput;
}

/** The visit as this page sees it: what the server gave, with everything entered since, and the way back. */
export function useVisitDraft(bundle: VisitBundle, { isSent = true, begun = bundle.input }: DraftOptions = {}): VisitDraft {
  const queue = useSaveQueue();
  const { visitId } = bundle;
  const [input, setInput] = useState(begun);
  const latest = useRef(begun);
  const saved = useRef(new Set(bundle.savedFields));
  const steps = useRef<Step[]>([]);

  useEffect(() => queue.adopt(visitId, bundle.fieldVersions, bundle.lastSavedAt), [queue, visitId, bundle]);

  const show = useCallback((change: (input: VisitInput) => VisitInput) => {
    latest.current = change(latest.current);
    setInput(latest.current);
  }, []);

  const save = useCallback(
    (path: string, value: unknown) => {
      if (value === null) saved.current.delete(path);
      else saved.current.add(path);
      if (isSent) queue.put({ visitId, path, value });
    },
    [queue, visitId, isSent],
  );

  const put = useCallback(
    (path: string, value: unknown) => {
      const field = { path, before: readField(latest.current, path), wasSaved: saved.current.has(path), after: value };
      const last = steps.current.at(-1);
      if (last?.kind === 'fields' && last.isOpen) last.step = addToStep(last.step, field);
      else {
        const step: Step = { kind: 'fields', step: [field], isOpen: true };
        steps.current.push(step);
        // What one key saves is one step.
        queueMicrotask(() => {
          step.isOpen = false;
        });
      }
      show((before) => applyField(before, path, value));
      save(path, value);
    },
    [show, save],
  );

  const takeStep = useCallback((): TakenStep | undefined => {
    const taken = steps.current.pop();
    if (taken?.kind !== 'fields') return taken;
    const undone = undoStep(latest.current, taken.step);
    if ('changedSince' in undone) return { ...taken, changedSince: undone.changedSince };
    show(() => undone.input);
    for (const { path, value } of undone.saves) save(path, value);
    return taken;
  }, [show, save]);

  const noteStep = useCallback((decidedAt: string) => {
    steps.current.push({ kind: 'level', decidedAt });
  }, []);
  return { input, put, show, takeStep, noteStep };
}
