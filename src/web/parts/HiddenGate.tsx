import { focusManager, useQueryClient } from '@tanstack/react-query';
import { type ReactNode, useCallback, useEffect, useLayoutEffect, useMemo, useRef, useState } from 'react';
import type { HiddenView, SessionView } from '../../api/apiTypes.ts';
import { HELD } from '../data/api.ts';
import { HidingContext, hideUntilHeard, isMarkedHidden, isOverdue, markActive, markHidden } from '../data/hiding.ts';
import { useMembers } from '../data/queries.ts';
import { settledWithin, useSaveQueue } from '../data/saving.ts';
import { setFootHidden } from '../printFoot.ts';
import { HiddenScreen } from './HiddenScreen.tsx';
import { WhoIsHere } from './WhoIsHere.tsx';

interface HiddenGateProps {
  /** Null = the sign-in has run out behind this page. */
  readonly answer: SessionView | HiddenView | null;
  readonly children: (session: SessionView) => ReactNode;
}

/** What is typed gets this long to be saved before the server answers nothing any more. */
const FLUSH_MS = 3_000;

const canComeBack = ({ member }: SessionView) => member.hasCode || member.hasPassword;

/**
 * Everything behind the sign-in. The screen hides by key and by time: the page stays as it is, with what is being typed, but is drawn
 * nowhere, neither on paper nor for a screen reader, until a code is given.
 */
export function HiddenGate({ answer, children }: HiddenGateProps) {
  const client = useQueryClient();
  const queue = useSaveQueue();
  // Read before they are asked for, so that the first digit finds its field.
  useMembers();
  const session = useLastView(answer);
  const [isHidden, setHidden] = useState(
    () => answer === null || 'hidden' in answer || isMarkedHidden() || (canComeBack(answer) && isOverdue(answer)),
  );
  const [isAsking, setAsking] = useState(false);
  const [notice, setNotice] = useState('');
  const place = usePlaceKept(isHidden, isAsking);
  const latest = useRef({ isHidden, isAsking, session });
  latest.current = { isHidden, isAsking, session };

  const reread = useCallback(() => client.invalidateQueries({ queryKey: ['session'] }), [client]);
  const hide = useCallback(() => {
    const { session, isHidden } = latest.current;
    if (isHidden) return;
    if (session && !canComeBack(session))
      return setNotice(
        'The screen is not hidden: set a password and a code first, under Practice, Team. Without them nobody could come back.',
      );
    place.keep();
    setAsking(false);
    setHidden(true);
  }, [place]);
  const ask = useCallback(() => {
    place.keep();
    setAsking(true);
  }, [place]);

  // Hidden here first, then what is typed is saved, then the server is told.
  useEffect(() => {
    if (!isHidden) return;
    markHidden(true);
    let isStillHidden = true;
    const tell = async () => {
      await settledWithin(queue, FLUSH_MS);
      if (await hideUntilHeard(() => isStillHidden)) tellOtherTabs();
      if (isStillHidden) await reread();
    };
    void tell();
    return () => {
      isStillHidden = false;
    };
  }, [isHidden, queue, reread]);

  const isHiddenOnServer = answer === null || 'hidden' in answer;
  useEffect(() => {
    if (isHiddenOnServer) hide();
  }, [isHiddenOnServer, hide]);
  useOtherTabs(reread);
  useKeysAndTime(latest, hide, ask);

  const back = async () => {
    markHidden(false);
    markActive();
    await client.refetchQueries({ queryKey: ['session'] });
    setHidden(false);
    setAsking(false);
    setNotice('');
    queue.resume();
    tellOtherTabs();
    void client.invalidateQueries({ predicate: ({ queryKey }) => queryKey[0] !== 'visit' && queryKey[0] !== 'session' });
  };
  const hiding = useMemo(() => session && { session, hide, askWho: ask }, [session, hide, ask]);
  const lastHere = (answer !== null && 'hidden' in answer ? answer.memberId : session?.member.id) ?? '';
  return (
    <>
      <div hidden={isHidden}>
        {notice && (
          <p className="strip" role="alert">
            {notice}
          </p>
        )}
        {hiding && <HidingContext value={hiding}>{children(hiding.session)}</HidingContext>}
      </div>
      {isHidden && <HiddenScreen isSignedOut={answer === null} lastHere={lastHere} onBack={back} />}
      {isAsking && !isHidden && <WhoIsHere here={lastHere} onBack={back} onHide={hide} onLeave={() => setAsking(false)} />}
    </>
  );
}

/** The page goes on with what it knew, while the server tells a hidden screen nothing. */
function useLastView(answer: SessionView | HiddenView | null): SessionView | null {
  const last = useRef<SessionView | null>(null);
  if (answer !== null && !('hidden' in answer)) last.current = answer;
  return last.current;
}

/** Where the page stood and where the focus was, from when somebody asked who is here until the page is back. */
function usePlaceKept(isHidden: boolean, isAsking: boolean) {
  const kept = useRef<{ x: number; y: number; focus: Element | null } | null>(null);
  const keep = useCallback(() => {
    kept.current ??= { x: scrollX, y: scrollY, focus: document.activeElement };
  }, []);
  useLayoutEffect(() => {
    setFootHidden(isHidden);
    // Nothing is read again by itself while the server would refuse it.
    focusManager.setFocused(isHidden ? false : undefined);
  }, [isHidden]);
  useLayoutEffect(() => {
    if (isHidden || isAsking || !kept.current) return;
    const { x, y, focus } = kept.current;
    if (focus instanceof HTMLElement) focus.focus({ preventScroll: true });
    scrollTo(x, y);
    kept.current = null;
  }, [isHidden, isAsking]);
  return useMemo(() => ({ keep }), [keep]);
}

const channel = typeof BroadcastChannel === 'undefined' ? null : new BroadcastChannel('ebbline-session');
const tellOtherTabs = () => channel?.postMessage('changed');

/** Another tab shares the session: what changed there, or what the server will not answer, is asked again here. */
function useOtherTabs(reread: () => Promise<void>): void {
  useEffect(() => {
    const listener = () => void reread();
    channel?.addEventListener('message', listener);
    addEventListener(HELD, listener);
    return () => {
      channel?.removeEventListener('message', listener);
      removeEventListener(HELD, listener);
    };
  }, [reread]);
}

interface Latest {
  readonly isHidden: boolean;
  readonly isAsking: boolean;
  readonly session: SessionView | null;
}

const LOOKS = ['visibilitychange', 'pageshow', 'focus', 'resume'] as const;
const SECOND_MS = 1_000;

/** Ctrl and the full stop ask who is here, and pressed again hide; a long time without a key hides too, also one that was slept through. */
function useKeysAndTime(latest: { readonly current: Latest }, hide: () => void, ask: () => void): void {
  const acts = useRef({ hide, ask });
  acts.current = { hide, ask };
  useEffect(() => {
    const isTimeUp = () => {
      const { session, isHidden } = latest.current;
      return session !== null && !isHidden && canComeBack(session) && isOverdue(session);
    };
    const look = () => {
      if (isTimeUp()) acts.current.hide();
    };
    const onActive = (event: Event) => {
      // The first key after a long sleep does not count as one: nothing behind the screen gets it.
      if (isTimeUp()) {
        event.preventDefault();
        event.stopImmediatePropagation();
        return acts.current.hide();
      }
      if (!latest.current.isHidden) markActive();
    };
    const onKey = (event: KeyboardEvent) => {
      onActive(event);
      const isOurs = event.key === '.' && event.ctrlKey && !event.altKey && !event.metaKey;
      if (!isOurs || event.defaultPrevented || latest.current.isHidden) return;
      event.preventDefault();
      event.stopImmediatePropagation();
      if (latest.current.isAsking) acts.current.hide();
      else acts.current.ask();
    };
    // The page behind listens at the window: what is pressed here stops below it, so that Escape does not close what is being typed there.
    const onDocumentKey = (event: KeyboardEvent) => {
      if (latest.current.isHidden || latest.current.isAsking) event.stopImmediatePropagation();
    };
    document.addEventListener('keydown', onDocumentKey);
    addEventListener('keydown', onKey, true);
    addEventListener('pointerdown', onActive, true);
    for (const type of LOOKS) addEventListener(type, look, true);
    const timer = setInterval(look, SECOND_MS);
    return () => {
      document.removeEventListener('keydown', onDocumentKey);
      removeEventListener('keydown', onKey, true);
      removeEventListener('pointerdown', onActive, true);
      for (const type of LOOKS) removeEventListener(type, look, true);
      clearInterval(timer);
    };
  }, [latest]);
}
