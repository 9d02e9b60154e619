import { useEffect, useState } from 'react';
import type { CorrectionBody, SessionView } from '../../../api/apiTypes.ts';
import type { VisitBundle } from '../../../api/bundles.ts';
import { applyField } from '../../../core/visit/applyField.ts';
import type { VisitInput } from '../../../core/visit/types.ts';
import { assess } from '../../content.ts';
import type { KeptCorrection } from '../../data/keptCorrections.ts';
import { useKeptCorrections } from '../../data/saving.ts';
import { listChanges, withLevel } from './correcting.ts';
import type { CorrectionDraft } from './visitContext.ts';

/** The correction of a closed visit on this page: one that was begun before and not saved goes on where it was left. */
export function useCorrection({ visitId, state, input }: VisitBundle, { member }: SessionView) {
  const corrections = useKeptCorrections();
  const [kept] = useState(() => (state === 'closed' ? corrections.find({ visitId, memberId: member.id }) : undefined));
  const [correction, setCorrection] = useState<CorrectionDraft | null>(kept ? { reason: kept.reason, level: kept.level } : null);
  const [begun] = useState(() => (kept ? withKept(input, kept, member.name) : input));
  return { correction, setCorrection, begun };
}

/** Keeps what differs by now for the whole page; while nothing differs there is nothing to lose. */
export function useKeepCorrection({ visitId, input: before }: VisitBundle, { member }: SessionView, now: KeptNow): () => void {
  const corrections = useKeptCorrections();
  const { correction, input } = now;
  const memberId = member.id;
  useEffect(() => {
    if (!correction) return;
    const changes = listChanges(before, input);
    if (changes.length > 0 || correction.level) corrections.keep({ visitId, memberId }, { ...correction, changes });
    else corrections.drop({ visitId, memberId });
  }, [corrections, visitId, memberId, before, correction, input]);
  return () => corrections.drop({ visitId, memberId });
}

/** All that differs, as it is saved together. */
export const correctionBody = (bundle: VisitBundle, input: VisitInput, { reason, level }: CorrectionDraft): CorrectionBody => ({
  version: bundle.visitVersion,
  reason,
  changes: bundle.state === 'closed' ? listChanges(bundle.input, input) : [],
  level,
});

interface KeptNow {
  readonly correction: CorrectionDraft | null;
  readonly input: VisitInput;
}

/** The record as it is by now, with the kept changes on top: each stands above the page beside what the record says. */
function withKept(input: VisitInput, { changes, level, reason }: KeptCorrection, by: string): VisitInput {
  const changed = changes.reduce((visit, { path, value }) => applyField(visit, path, value), input);
  return level ? withLevel(changed, assess(changed), level, { by, reason }) : changed;
}
