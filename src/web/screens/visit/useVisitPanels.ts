import { useState } from 'react';
import type { VisitBundle } from '../../../api/bundles.ts';
import { buildNote } from '../../../core/note/buildNote.ts';
import type { VisitAssessment, VisitInput } from '../../../core/visit/types.ts';
import { content } from '../../content.ts';
import { fieldName, fieldOfLine } from './fieldWords.ts';
import type { Place } from './visitReplies.ts';

export interface HistoryOf {
  readonly path: string;
  readonly name: string;
}

interface PanelsInput {
  readonly bundle: VisitBundle;
  readonly input: VisitInput;
  /** Of the present answers. */
  readonly assessment: () => VisitAssessment;
  readonly place: Place;
  readonly isShownToPatient: boolean;
  readonly say: (words: string) => void;
}

/** What lies over the visit for a moment: the history of a field, a note that could not be copied, the reason for a correction. */
export function useVisitPanels({ bundle, input, assessment, place, isShownToPatient, say }: PanelsInput) {
  const [historyOf, setHistoryOf] = useState<HistoryOf | null>(null);
  const [note, setNote] = useState<string | null>(null);
  const [isReasonAsked, setReasonAsked] = useState(false);

  const openHistory = () => {
    const path = fieldOfLine(place.scope, place.line);
    if (isShownToPatient) return;
    if (path === null) say('Open a line first: its history stands there.');
    else setHistoryOf({ path, name: fieldName(path) });
  };

  const openNote = async () => {
    if (isShownToPatient) return;
    const { note: sections } = input.practice.settings;
    const text = buildNote({ input, assessment: assessment(), tables: content, sections, corrections: bundle.corrections });
    if (await isCopied(text)) say('Note copied.');
    else setNote(text);
  };

  return {
    historyOf,
    openHistory,
    closeHistory: () => setHistoryOf(null),
    note,
    openNote: () => void openNote(),
    closeNote: () => setNote(null),
    isReasonAsked,
    askReason: setReasonAsked,
  };
}

/** True only once the browser says that it was done. */
async function isCopied(text: string): Promise<boolean> {
  try {
    await navigator.clipboard.writeText(text);
    return true;
  } catch {
    // Not allowed, or not on a page that may: the text is shown instead.
    return false;
  }
}
