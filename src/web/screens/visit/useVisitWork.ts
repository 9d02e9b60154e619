import { useCallback, useLayoutEffect, useMemo, useState } from 'react';
import type { SessionView } from '../../../api/apiTypes.ts';
import type { VisitBundle } from '../../../api/bundles.ts';
import type { Answers } from '../../../core/visit/answer.ts';
import { assess, privateItemIds, questions } from '../../content.ts';
import { useSaveQueue } from '../../data/saving.ts';
import { goTo as goToPath } from '../../routing.ts';
import { buildLines, LEVEL_REASON, LEVEL_TO, type VisitLines } from './buildLines.ts';
import { type FindingDraft, NEW_FINDING } from './findings.ts';
import type { Line, Reply } from './line.ts';
import type { Scope } from './scopes.ts';
import { CONDITIONS_AS_USUAL } from './swabLines.ts';
import { useVisitDraft } from './useVisitDraft.ts';
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
  const { input, put, show } = useVisitDraft(bundle);
  const [newFinding, setNewFinding] = useState<FindingDraft | null>(null);
  const [levelChange, setLevelChange] = useState<LevelChangeDraft | null>(null);
  const [isShownToPatient, setShown] = useState(false);
  const requests = useVisitRequests(bundle.visitId, show, onServerChange);

  const isClosed = bundle.state !== 'open';
  const assessment = useMemo(() => bundle.stored ?? assess(input), [bundle.stored, input]);
  const carried = useMemo(() => carriedAnswers(bundle), [bundle]);
  const lines = useMemo(() => {
    const all = buildLines({ bundle, input, assessment, questions, carried, newFinding, levelChange });
    return isShownToPatient ? withoutPrivate(all) : all;
  }, [bundle, input, assessment, carried, newFinding, levelChange, isShownToPatient]);
  const { place, goTo, goOn, problem, setProblem } = usePlace(lines, () =>
    firstPlace(lines, session.member.roles.includes('dentist') ? assessment.plan.lines : []),
  );

  const apply = (effect: ReplyEffect, from: Place) => {
    setProblem(effect.problem ?? null);
    for (const { path, value } of effect.puts) put(path, value);
    if (effect.newFinding !== undefined) setNewFinding(effect.newFinding);
    if (effect.levelChange) setLevelChange(effect.levelChange);
    if (effect.confirm) void confirmLevel(effect.confirm.level, effect.confirm.reason);
    if (effect.to === 'next') goOn(from);
    else if (effect.to !== 'stay') goTo(effect.to.scope, effect.to.line);
  };

  async function confirmLevel(level: string, reason?: string): Promise<void> {
    if (!(await requests.confirmLevel(level, reason))) return;
    setLevelChange(null);
    goTo('plan');
  }

  const reply = (scope: Scope, line: string, given: Reply) => {
    if (isClosed) return;
    const now = new Date().toISOString();
    apply(
      effectOfReply(scope, line, given, { input, members: bundle.members, memberId: session.member.id, now, newFinding, levelChange }),
      { scope, line },
    );
  };

  const reconfirm = (scope: Scope) => {
    if (!isClosed) apply(effectOfReconfirm(scope, lines[scope], input, assessment), { scope, line: null });
  };

  // A dentist may come to it after the visit was closed; then the record on the server is read again.
  const sign = (item: string) => void requests.sign(item).then((isSigned) => isSigned && isClosed && onServerChange());

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
    'plan s': () => place.line && sign(place.line),
    'agree z': () => void requests.close(),
    'agree p': () => void queue.settled().then(() => goToPath(`/visits/${bundle.visitId}/leaflet`)),
  };
  const command = (scope: Scope, letter: string) => {
    if (!isClosed || letter === 'p' || letter === 's') commands[`${scope} ${letter}`]?.();
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
    lines,
    place,
    isClosed,
    isShownToPatient,
    setShown,
    privateItems: privateItemIds,
    isChangingLevel: levelChange !== null,
    problem: problem ?? requests.problem,
    goTo,
    goOn,
    reply,
    reconfirm,
    command,
    sign,
    leaveLine,
    put,
    show,
  };
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

  // Where an answer leads is decided on the lines as they are once the answer is in.
  useLayoutEffect(() => {
    if (!after) return;
    setAfter(null);
    const next = placeAfter(after, lines);
    goTo(next.scope, next.line);
  }, [after, lines, goTo]);

  return { place, goTo, goOn: setAfter, problem, setProblem };
}

function carriedAnswers(bundle: VisitBundle): Answers {
  return bundle.carried ?? Object.fromEntries(Object.entries(bundle.input.visit.answers).filter(([, answer]) => answer.how === 'carried'));
}

function withoutPrivate(lines: VisitLines): VisitLines {
  const open = Object.entries(lines).map(([scope, list]: [string, readonly Line[]]) => [scope, list.filter((line) => !line.private)]);
  return Object.fromEntries(open) as VisitLines;
}
