import { useEffect, useRef } from 'react';
import { useSingleKeys } from '../../preferences.ts';
import { SCOPE_COMMANDS } from './buildLines.ts';
import { actionOfKey, type KeyAction } from './keys.ts';
import { SECTIONS, type Scope } from './scopes.ts';
import type { VisitWork } from './visitContext.ts';
import { enter } from './visitReplies.ts';

/** Listens for the keys of the visit while nothing is being typed. */
export function useVisitKeys(work: VisitWork, openHelp: () => void): void {
  const singleKeys = useSingleKeys();
  const latest = useRef({ work, openHelp });
  latest.current = { work, openHelp };
  useEffect(() => {
    const onKeyDown = (event: KeyboardEvent) => {
      if (event.ctrlKey || event.metaKey || event.altKey || event.isComposing || event.defaultPrevented) return;
      const isEscape = event.key === 'Escape';
      if (isTyping(event.target) && !isEscape) return;
      if (!singleKeys && event.key.length === 1) return;
      const { work, openHelp } = latest.current;
      const { scope, line } = work.place;
      const lines = work.lines[scope];
      const action = actionOfKey(event.key, { scope, line: lines.find((l) => l.id === line) ?? null, lines, commands: SCOPE_COMMANDS[scope] });
      if (!action || (event.key.startsWith('Arrow') && isOwnArrows(event.target))) return;
      event.preventDefault();
      act(action, work, openHelp);
    };
    addEventListener('keydown', onKeyDown);
    return () => removeEventListener('keydown', onKeyDown);
  }, [singleKeys]);
}

function act(action: KeyAction, work: VisitWork, openHelp: () => void): void {
  const { scope, line } = work.place;
  switch (action.do) {
    case 'help':
      return openHelp();
    case 'leave':
      return work.leaveLine();
    case 'section':
      return goToSection(action.number, work);
    case 'open':
      return work.goTo(scope, action.line);
    case 'reply':
      return work.reply(scope, action.line, action.reply);
    case 'reconfirm':
      return work.reconfirm(scope);
    case 'command':
      return work.command(scope, action.letter);
    case 'move': {
      const lines = work.lines[scope];
      const at = lines.findIndex((l) => l.id === line);
      const next = lines[at === -1 ? (action.by === 1 ? 0 : lines.length - 1) : at + action.by];
      return work.goTo(scope, next?.id ?? null);
    }
  }
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

function isTyping(target: EventTarget | null): boolean {
  if (!(target instanceof HTMLElement)) return false;
  return target.isContentEditable || target.matches('input, textarea, select') || target.closest('dialog') !== null;
}

/** A list box and a select move by arrows themselves. */
const isOwnArrows = (target: EventTarget | null) => target instanceof Element && target.closest('[role="listbox"], select, input') !== null;
