import { createContext, useContext } from 'react';
import type { SessionView } from '../../../api/apiTypes.ts';
import type { VisitBundle } from '../../../api/bundles.ts';
import type { Level } from '../../../core/risk/types.ts';
import type { VisitAssessment, VisitInput } from '../../../core/visit/types.ts';
import type { SignedOn } from '../../data/signingQueries.ts';
import type { Line, Reply } from './line.ts';
import type { Scope } from './scopes.ts';
import type { VisitDraft } from './useVisitDraft.ts';
import type { useVisitPanels } from './useVisitPanels.ts';
import type { Place } from './visitReplies.ts';

/** Everything the sections of an open visit share. */
export interface VisitWork {
  readonly bundle: VisitBundle;
  readonly session: SessionView;
  readonly input: VisitInput;
  /** While `isPlanDue` its plan, with facts, needs and leaflet, is of the answers before. */
  readonly assessment: VisitAssessment;
  readonly isPlanDue: boolean;
  /** The plan is due, and takes so long that it is missed. */
  readonly isPlanSlow: boolean;
  /** Draws the plan that is due, before anything acts on it. */
  readonly settlePlan: () => void;
  readonly isClosed: boolean;
  readonly isShownToPatient: boolean;
  /** Items that no one else should read over a shoulder; drivers of these are left out while the patient looks. */
  readonly privateItems: ReadonlySet<string>;
  /** The page is turned to the patient, or somebody else speaks after private words. */
  readonly isPrivateHidden: boolean;
  /** Puts a private answer on the leaflet, or takes it off. */
  readonly release: (question: string) => void;
  readonly place: Place & { readonly focus: number };
  readonly lines: Readonly<Record<Scope, readonly Line[]>>;
  readonly isChangingLevel: boolean;
  /** What the server would not do, in its words. */
  readonly problem: string | null;
  /** `isFromKey` false: the focus is there already. */
  readonly goTo: (scope: Scope, line?: string | null, isFromKey?: boolean) => void;
  /** On to whatever wants a key after this place. */
  readonly goOn: (from: Place) => void;
  readonly reply: (scope: Scope, line: string, reply: Reply) => void;
  readonly reconfirm: (scope: Scope) => void;
  readonly command: (scope: Scope, letter: string) => void;
  readonly sign: (shelfItemId: string, on?: SignedOn) => Promise<boolean>;
  readonly refuse: (shelfItemId: string, reason: string) => void;
  /** Takes a signature or a refusal back; false when the server wants a reason, or will not. */
  readonly withdraw: (shelfItemId: string, reason?: string) => Promise<boolean>;
  readonly leaveLine: () => void;
  readonly put: VisitDraft['put'];
  readonly show: VisitDraft['show'];
  /** What the last step back did, in words. */
  readonly said: string;
  readonly panels: ReturnType<typeof useVisitPanels>;
  readonly openNote: () => void;
  readonly openHistory: () => void;
  /** Takes the last action back. */
  readonly undo: () => void;
  /** Set while a closed visit is being put right: its lines are open, and nothing is sent before all of it. */
  readonly correction: CorrectionDraft | null;
  readonly beginCorrection: (reason: string) => void;
  readonly saveCorrection: () => void;
  /** What was changed is given up. */
  readonly dropCorrection: () => void;
}

export interface CorrectionDraft {
  readonly reason: string;
  /** A level confirmed anew. */
  readonly level?: Level | undefined;
}

export const VisitContext = createContext<VisitWork | null>(null);

export function useVisit(): VisitWork {
  const work = useContext(VisitContext);
  if (!work) throw new Error('no visit above this part');
  return work;
}
