import { useEffect, useRef } from 'react';
import { useSingleKeys } from '../../preferences.ts';
import { goTo } from '../../routing.ts';
import { SCOPE_COMMANDS } from './buildLines.ts';
import { actionOfKey, type KeyAction } from './keys.ts';
import { type Scope, SECTIONS } from './scopes.ts';
import type { VisitWork } from './visitContext.ts';
import { enter } from './visitReplies.ts';

/** Listens for the keys of the visit while nothing is being typed. */
export function useVisitKeys(work: VisitWork, openHelp: () => void): void {
  const singleKeys = useSingleKeys();
  const latest = useRef({ work, openHelp });
  latest.current = { work, openHelp };
  useEffect(() => {
    const onKeyDown = (event: KeyboardEvent) => {
      if (isUndo(event) && !keepsOwnUndo(event.target)) {
        event.preventDefault();
        return latest.current.work.undo();
      }
      if (event.ctrlKey || event.metaKey || event.altKey || event.isComposing || event.defaultPrevented) return;
      // What lies over the visit has keys of its own, and closing it leaves the line below as it is.
      if (isInDialog(event.target)) return;
      const isEscape = event.key === 'Escape';
      if (isTyping(event.target) && !isEscape) return;
      if (!singleKeys && event.key.length === 1) return;
      if (latest.current.work.place.scope === 'plan' || latest.current.work.place.scope === 'agree') latest.current.work.settlePlan();
      const { work, openHelp } = latest.current;
      const { scope, line } = work.place;
      const lines = work.lines[scope];
      const action = actionOfKey(event.key, {
        scope,
        line: lines.find((l) => l.id === line) ?? null,
        lines,
        commands: work.isClosed ? `${SCOPE_COMMANDS[scope]}c` : SCOPE_COMMANDS[scope],
      });
      if (!action || (event.key.startsWith('Arrow') && isOwnArrows(event.target))) return;
      event.preventDefault();
      act(action, work, openHelp);
    };
    addEventListener('keydown', onKeyDown);
    return () => removeEventListener('keydown', onKeyDown);
  }, [singleKeys]);
}

function act(action: KeyAction, work: VisitWork, openHelp: () => void): void {
  const { scope } = work.place;
  const does: { readonly [D in KeyAction['do']]: (given: Extract<KeyAction, { do: D }>) => void } = {
    help: openHelp,
    undo: work.undo,
    note: work.openNote,
    person: () => goTo(`/people/${work.bundle.patientId}`),
    day: () => goTo(`/visits/${work.bundle.visitId}/day`),
    history: work.openHistory,
    release: ({ line }) => work.release(line),
    leave: work.leaveLine,
    section: ({ number }) => goToSection(number, work),
    open: ({ line }) => work.goTo(scope, line),
    reply: ({ line, reply }) => work.reply(scope, line, reply),
    reconfirm: () => work.reconfirm(scope),
    command: ({ letter }) => work.command(scope, letter),
    move: ({ by }) => moveBy(by, work),
  };
  (does[action.do] as (given: KeyAction) => void)(action);
}

function moveBy(by: 1 | -1, work: VisitWork): void {
  const { scope, line } = work.place;
  const lines = work.lines[scope];
  const at = lines.findIndex((l) => l.id === line);
  const outside = by === 1 ? 0 : lines.length - 1;
  work.goTo(scope, lines[at === -1 ? outside : at + by]?.id ?? null);
}

/** The number of the section one is in goes on to its next group: 3, 3, 3 walks through Talk. */
function goToSection(number: number, work: VisitWork): void {
  const scopes: readonly Scope[] = SECTIONS[number - 1]?.scopes ?? [];
  const at = scopes.indexOf(work.place.scope);
  const unfinished = scopes.find((scope) => work.lines[scope].some((l) => l.wanted || l.reconfirmable));
  const target = at === -1 ? (unfinished ?? scopes[0]) : scopes[(at + 1) % scopes.length];
  if (!target) return;
  const place = at === -1 ? enter(target, work.lines) : { scope: target, line: null };
  work.goTo(place.scope, place.line);
}

const isUndo = ({ key, ctrlKey, metaKey, shiftKey, altKey }: KeyboardEvent) =>
  (ctrlKey || metaKey) && !shiftKey && !altKey && key.toLowerCase() === 'z';

/** A field with something typed in it takes back what was typed. */
const keepsOwnUndo = (target: EventTarget | null) =>
  target instanceof HTMLElement &&
  (target.closest('dialog, select') !== null ||
    (target instanceof HTMLInputElement && target.value !== '') ||
    target instanceof HTMLTextAreaElement);

const isInDialog = (target: EventTarget | null) => target instanceof Element && target.closest('dialog') !== null;

function isTyping(target: EventTarget | null): boolean {
  if (!(target instanceof HTMLElement)) return false;
  // What is typed in the search field of a list is also sent to the list itself.
  return target.isContentEditable || target.matches('input, textarea, select') || target.closest('.picker') !== null;
}

/** A list box and a select move by arrows themselves. */
const isOwnArrows = (target: EventTarget | null) => target instanceof Element && target.closest('[role="listbox"], select, input') !== null;
