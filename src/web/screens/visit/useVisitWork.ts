import { useQueryClient } from '@tanstack/react-query';
import { useCallback, useMemo, useState } from 'react';
import type { SessionView } from '../../../api/apiTypes.ts';
import type { VisitBundle } from '../../../api/bundles.ts';
import type { Level } from '../../../core/risk/types.ts';
import type { Answers } from '../../../core/visit/answer.ts';
import { isToldAlone } from '../../../core/visit/privacy.ts';
import { wantedLines } from '../../../core/visit/turnedDown.ts';
import type { VisitInput } from '../../../core/visit/types.ts';
import { privateItemIds, questions } from '../../content.ts';
import { useSaveQueue } from '../../data/saving.ts';
import type { SignedOn } from '../../data/signingQueries.ts';
import { useLeafletWords } from '../../data/useLeafletWords.ts';
import { uncapitalise } from '../../format.ts';
import { goTo as goToPath } from '../../routing.ts';
import { useShown } from '../../shown.ts';
import { buildLines, LEVEL_REASON, LEVEL_TO, speakerPlace, type VisitLines } from './buildLines.ts';
import { withLevel, withoutNewTime } from './correcting.ts';
import { fieldName, placeOfField, sayFieldValue } from './fieldWords.ts';
import { type FindingDraft, NEW_FINDING } from './findings.ts';
import type { Reply } from './line.ts';
import { OTHER_REGIMEN } from './planLines.ts';
import { waysOf } from './regimenWays.ts';
import type { Scope } from './scopes.ts';
import { CONDITIONS_AS_USUAL } from './swabLines.ts';
import { readField } from './undoSteps.ts';
import { useAssessment } from './useAssessment.ts';
import { correctionBody, useCorrection, useKeepCorrection } from './useCorrection.ts';
import { type TakenStep, useVisitDraft } from './useVisitDraft.ts';
import { useVisitPanels } from './useVisitPanels.ts';
import { useVisitRequests } from './useVisitRequests.ts';
import type { VisitWork } from './visitContext.ts';
import {
  effectOfReconfirm,
  effectOfReply,
  firstPlace,
  type LevelChangeDraft,
  type Place,
  placeAfter,
  type ReplyEffect,
} from './visitReplies.ts';

/** The work on one visit: the draft, its assessment redrawn after every answer, where the keys stand, and what each key does. */
export function useVisitWork(bundle: VisitBundle, session: SessionView, onServerChange: () => void): VisitWork {
  const queue = useSaveQueue();
  const { correction, setCorrection, begun } = useCorrection(bundle, session);
  const isCorrecting = correction !== null;
  const { input, put, show, takeStep, noteStep } = useVisitDraft(bundle, { isSent: !isCorrecting, begun });
  const dropKept = useKeepCorrection(bundle, session, { correction, input });
  const [said, setSaid] = useState('');
  const client = useQueryClient();
  const [newFinding, setNewFinding] = useState<FindingDraft | null>(null);
  const [levelChange, setLevelChange] = useState<LevelChangeDraft | null>(null);
  const isShownToPatient = useShown().isOn;
  const privacy = isShownToPatient ? 'shown' : isToldAlone(input.visit) ? 'overheard' : undefined;
  const requests = useVisitRequests(bundle.visitId, show, onServerChange);

  const isClosed = bundle.state !== 'open' && !isCorrecting;
  const leafletWords = useLeafletWords(input);
  const stored = isCorrecting ? undefined : bundle.stored;
  const { assessment, whole, isPlanDue, isPlanSlow, settlePlan } = useAssessment(input, stored, leafletWords);
  const carried = useMemo(() => carriedAnswers(bundle), [bundle]);
  const lines = useMemo(() => {
    return buildLines({ bundle, input, assessment, questions, carried, newFinding, levelChange, isClosed, privacy });
  }, [bundle, input, assessment, carried, newFinding, levelChange, isClosed, privacy]);
  const { place, goTo, goOn, problem, setProblem } = usePlace(lines, () =>
    firstPlace(
      lines,
      session.member.roles.includes('dentist') || location.hash === '#plan' ? wantedLines(assessment.plan.lines, input.visit.agreed) : [],
    ),
  );

  const panels = useVisitPanels({ bundle, input, assessment: whole, place, isShownToPatient, say: setSaid });

  const apply = (effect: ReplyEffect, from: Place) => {
    setProblem(effect.problem ?? null);
    setSaid('');
    for (const { path, value } of effect.puts) put(path, value);
    if (effect.newFinding !== undefined) setNewFinding(effect.newFinding);
    if (effect.levelChange) setLevelChange(effect.levelChange);
    if (effect.confirm) void confirmLevel(effect.confirm.level, effect.confirm.reason);
    if (effect.to === 'next') goOn(from);
    else if (effect.to !== 'stay') goTo(effect.to.scope, effect.to.line);
  };

  async function confirmLevel(level: string, reason?: string): Promise<void> {
    if (correction) {
      setCorrection({ ...correction, level: level as Level });
      show((before) => withLevel(before, assessment, level, { by: session.member.name, reason: correction.reason }));
    } else {
      const decidedAt = await requests.confirmLevel(level, reason);
      if (decidedAt === undefined) return;
      noteStep(decidedAt);
    }
    setLevelChange(null);
    goTo('plan');
  }

  const reply = (scope: Scope, line: string, given: Reply) => {
    if (isClosed) return;
    const now = new Date().toISOString();
    const effect = effectOfReply(scope, line, given, {
      input,
      members: bundle.members,
      memberId: session.member.id,
      now,
      newFinding,
      levelChange,
      questions,
      speaker: speakerPlace({ bundle, input, assessment }),
      privacy,
    });
    apply(isCorrecting ? withoutNewTime(effect, input) : effect, { scope, line });
  };

  const undo = () => {
    if (isClosed || isShownToPatient) return;
    const taken = takeStep();
    if (!taken) return setSaid('Nothing to undo: nothing was changed on this page since it was opened.');
    if (taken.kind === 'level') {
      void requests
        .withdrawLevel(taken.decidedAt)
        .then((isBack) => setSaid(isBack ? 'Undone: the level is no longer confirmed' : 'Not undone: see what the server says.'));
      return goTo('level');
    }
    setSaid(sayUndone(taken, input));
    const place = placeOfField(taken.step.at(-1)?.path ?? '');
    goTo(place.scope, taken.step.length === 1 ? place.line : null);
  };

  const saveCorrection = async () => {
    if (!correction) return;
    if (!(await requests.correct(correctionBody(bundle, input, correction)))) return;
    dropKept();
    onServerChange();
  };

  const reconfirm = (scope: Scope) => {
    if (!isClosed) apply(effectOfReconfirm(scope, lines[scope], input, whole), { scope, line: null });
  };

  // A dentist may come to it after the visit was closed; then the record on the server is read again.
  const reread = (isDone: boolean) => {
    void client.invalidateQueries({ queryKey: ['signing'] });
    if (isDone && isClosed) onServerChange();
    return isDone;
  };
  const sign = (item: string, on?: SignedOn) => requests.sign(item, on).then(reread);
  const refuse = (item: string, reason: string) => void requests.refuse(item, reason).then(reread);
  const withdraw = (item: string, reason?: string) => requests.withdraw(item, reason).then(reread);

  const startFinding = (draft: FindingDraft) => {
    setProblem(null);
    setNewFinding(draft);
    goTo('look', NEW_FINDING);
  };

  const commands: Readonly<Record<string, () => void>> = {
    'swab u': () => {
      if (input.visit.reading?.rlu === undefined) return;
      put('reading', { ...input.visit.reading, ...CONDITIONS_AS_USUAL });
      goOn({ scope: 'swab', line: null });
    },
    'swab t': () => void queue.settled().then(() => goToPath(`/visits/${bundle.visitId}/swab`)),
    'look +': () => startFinding({}),
    'look f': () => startFinding({}),
    'look c': () => startFinding({ isChange: true }),
    'level c': () => assessment.proposed?.level && void confirmLevel(assessment.proposed.level),
    'level g': () => {
      setLevelChange(levelChange ? null : { level: null });
      goTo('level', levelChange ? null : LEVEL_TO);
    },
    // The line's own button knows who signs on what.
    'plan s': () => !isCorrecting && pressIn(place.line, 's'),
    'plan p': () => !isCorrecting && pressIn(place.line, 'p'),
    'plan r': () => !isCorrecting && pressIn(place.line, 'r'),
    'plan u': () => !isCorrecting && pressIn(place.line, 'u'),
    'plan o': () => {
      const other = waysOf(whole().plan)?.other;
      if (other && lines.plan.length > 0) reply('plan', OTHER_REGIMEN, { how: 'asked', value: other.id });
    },
    'agree z': () => void (isCorrecting ? saveCorrection() : requests.close()),
    'agree v': () => !isCorrecting && document.querySelector<HTMLElement>('[data-scope="agree"] [data-give]')?.click(),
    'agree p': () => void queue.settled().then(() => goToPath(`/visits/${bundle.visitId}/leaflet`)),
  };
  const command = (scope: Scope, letter: string) => {
    // Turned to the patient, nothing is decided by a key.
    if (isShownToPatient && letter !== 'p') return;
    if (isClosed && letter === 'c' && !isShownToPatient) return panels.askReason(true);
    if (!isClosed || 'psruv'.includes(letter)) commands[`${scope} ${letter}`]?.();
  };

  // The reason comes before the first change, so that nothing is put right without one.
  const beginCorrection = (reason: string) => {
    setCorrection({ reason });
    goTo('safety');
  };

  const leaveLine = () => {
    if (place.line === NEW_FINDING) setNewFinding(null);
    if (place.line === LEVEL_TO || place.line === LEVEL_REASON) setLevelChange(null);
    goTo(place.scope);
  };

  return {
    bundle,
    session,
    input,
    assessment,
    isPlanDue,
    isPlanSlow,
    settlePlan,
    lines,
    place,
    isClosed,
    isShownToPatient,
    isPrivateHidden: privacy !== undefined,
    privateItems: privateItemIds,
    release: (question: string) => {
      if (!isClosed && input.visit.answers[question]?.how === 'asked') void requests.release(question, input);
    },
    isChangingLevel: levelChange !== null,
    problem: problem ?? requests.problem,
    goTo,
    goOn,
    reply,
    reconfirm,
    command,
    sign,
    refuse,
    withdraw,
    leaveLine,
    put,
    show,
    said,
    panels,
    openNote: panels.openNote,
    openHistory: panels.openHistory,
    undo,
    correction,
    beginCorrection,
    saveCorrection: () => void saveCorrection(),
    dropCorrection: dropKept,
  };
}

/** Presses the button of a line of the plan that has this key. */
function pressIn(line: string | null, letter: string): void {
  const row = line === null ? null : document.querySelector(`[data-scope="plan"] [data-line="${CSS.escape(line)}"]`);
  row?.querySelector<HTMLElement>(`.sign-actions [aria-keyshortcuts="${letter}"]`)?.click();
}

/** Where the keys stand. `focus` counts up whenever the place was set by a key, so that the page moves the focus there. */
function usePlace(lines: VisitLines, first: () => Place) {
  const [place, setPlace] = useState<Place & { readonly focus: number }>(() => ({ ...first(), focus: 1 }));
  const [after, setAfter] = useState<Place | null>(null);
  const [problem, setProblem] = useState<string | null>(null);
  const goTo = useCallback((scope: Scope, line: string | null = null, isFromKey = true) => {
    setPlace((before) => {
      if (!isFromKey && before.scope === scope && before.line === line) return before;
      return { scope, line, focus: before.focus + (isFromKey ? 1 : 0) };
    });
  }, []);

  // Where an answer leads is decided on the lines as they are once the answer is in. Here, not in an effect: the page is drawn once.
  if (after) {
    setAfter(null);
    const next = placeAfter(after, lines);
    goTo(next.scope, next.line);
  }

  return { place, goTo, goOn: setAfter, problem, setProblem };
}

function carriedAnswers(bundle: VisitBundle): Answers {
  return bundle.carried ?? Object.fromEntries(Object.entries(bundle.input.visit.answers).filter(([, answer]) => answer.how === 'carried'));
}

/** "Undone: snacks, back to 2 a day." Each field of the step, or whose save stands in between. */
function sayUndone({ step, changedSince }: Extract<TakenStep, { kind: 'fields' }>, input: VisitInput): string {
  if (changedSince !== undefined) {
    const now = sayFieldValue(changedSince, readField(input, changedSince), { practice: input.practice, visit: input.visit });
    return `Not undone: ${uncapitalise(fieldName(changedSince))} was changed since, to ${now}.`;
  }
  const context = { practice: input.practice, visit: input.visit };
  const parts = step.map(({ path, before }) => `${uncapitalise(fieldName(path))}, back to ${sayFieldValue(path, before, context)}`);
  return parts.length > 3 ? `Undone: ${parts.length} answers, back to what they were.` : `Undone: ${parts.join('; ')}.`;
}
