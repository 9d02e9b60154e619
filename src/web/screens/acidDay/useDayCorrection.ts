import { useState } from 'react';
import type { SessionView } from '../../../api/apiTypes.ts';
import type { VisitBundle } from '../../../api/bundles.ts';
import type { CorrectingWork } from '../visit/CorrectionParts.tsx';
import { correctionBody, useCorrection, useKeepCorrection } from '../visit/useCorrection.ts';
import { useVisitDraft, type VisitDraft } from '../visit/useVisitDraft.ts';
import { useVisitRequests } from '../visit/useVisitRequests.ts';

export interface DayCorrection extends CorrectingWork {
  readonly draft: VisitDraft;
  readonly isReasonAsked: boolean;
  readonly askReason: () => void;
}

/** The day as a draft: saved at once while the visit is open; of a closed one together, with a reason, as on the page of the visit. */
export function useDayCorrection(bundle: VisitBundle, session: SessionView, onServerChange: () => void): DayCorrection {
  const { correction, setCorrection, begun } = useCorrection(bundle, session);
  const draft = useVisitDraft(bundle, { isSent: correction === null, begun });
  const { input, show } = draft;
  const dropCorrection = useKeepCorrection(bundle, session, { correction, input });
  const requests = useVisitRequests(bundle.visitId, show, onServerChange);
  const [isReasonAsked, setReasonAsked] = useState(false);
  const saveCorrection = async () => {
    if (!correction || !(await requests.correct(correctionBody(bundle, input, correction)))) return;
    dropCorrection();
    onServerChange();
  };
  return {
    bundle,
    input,
    draft,
    correction,
    problem: requests.problem,
    isReasonAsked,
    askReason: () => setReasonAsked(true),
    beginCorrection: (reason) => setCorrection({ reason }),
    saveCorrection: () => void saveCorrection(),
    dropCorrection,
  };
}
