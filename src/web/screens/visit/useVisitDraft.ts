import { useCallback, useEffect, useState } from 'react';
import type { VisitBundle } from '../../../api/bundles.ts';
import { applyField } from '../../../core/visit/applyField.ts';
import type { VisitInput } from '../../../core/visit/types.ts';
import { useSaveQueue } from '../../data/saving.ts';

export interface VisitDraft {
  readonly input: VisitInput;
  /** Shows the value at once and sends it to the server. */
  readonly put: (path: string, value: unknown) => void;
  /** Shows what the server already holds. */
  readonly show: (change: (input: VisitInput) => VisitInput) => void;
}

/** The visit as this page sees it: what the server gave, with everything entered since. */
export function useVisitDraft(bundle: VisitBundle): VisitDraft {
  const queue = useSaveQueue();
  const { visitId } = bundle;
  const [input, setInput] = useState(bundle.input);

  useEffect(() => queue.adopt(visitId, bundle.fieldVersions, bundle.lastSavedAt), [queue, visitId, bundle]);

  const put = useCallback(
    (path: string, value: unknown) => {
      setInput((before) => applyField(before, path, value));
      queue.put({ visitId, path, value });
    },
    [queue, visitId],
  );
  return { input, put, show: setInput };
}
