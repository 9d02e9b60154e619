import type { Line, Reply } from './line.ts';
import type { Scope } from './scopes.ts';

export type KeyAction =
  | { readonly do: 'section'; readonly number: number }
  | { readonly do: 'open'; readonly line: string }
  | { readonly do: 'reply'; readonly line: string; readonly reply: Reply }
  | { readonly do: 'reconfirm' }
  | { readonly do: 'command'; readonly letter: string }
  | { readonly do: 'leave' }
  | { readonly do: 'move'; readonly by: 1 | -1 }
  | { readonly do: 'help' }
  | { readonly do: 'undo' }
  | { readonly do: 'note' }
  | { readonly do: 'person' }
  | { readonly do: 'day' }
  | { readonly do: 'history' }
  | { readonly do: 'release'; readonly line: string };

export interface KeyPlace {
  readonly scope: Scope;
  /** The open line, if any. */
  readonly line: Line | null;
  readonly lines: readonly Line[];
  /** Letters of the scope's own commands, e.g. c and g under Level. */
  readonly commands: string;
}

const SECTION_KEYS = '1234567';

/** What a key means where the work stands. Typing in a field and keys held with Ctrl, Alt or Meta never come here. */
export function actionOfKey(key: string, { line, lines, commands }: KeyPlace): KeyAction | null {
  if (key === '?') return { do: 'help' };
  if (key === 'Backspace') return { do: 'undo' };
  if (key === '.') return { do: 'note' };
  if (key === ',') return { do: 'history' };
  if (key === ';') return { do: 'person' };
  if (key === '-') return { do: 'day' };
  if (key === 'Escape') return { do: 'leave' };
  if (key === 'ArrowDown') return { do: 'move', by: 1 };
  if (key === 'ArrowUp') return { do: 'move', by: -1 };
  if (line?.private && key === '*') return { do: 'release', line: line.id };
  const reply = line && replyOfKey(key, line);
  if (line && reply) return { do: 'reply', line: line.id, reply };
  if (key === '=') return { do: 'reconfirm' };
  if (key.length === 1 && SECTION_KEYS.includes(key)) return { do: 'section', number: Number(key) };
  if (key.length === 1 && commands.includes(key)) return { do: 'command', letter: key };
  const wanted = lines.find((l) => l.letter === key);
  return wanted ? { do: 'open', line: wanted.id } : null;
}

/** The answer a key gives to the open line, if it gives one. */
export function replyOfKey(key: string, line: Line): Reply | undefined {
  if (line.mayBeUnknown && key === 'd') return { how: 'does-not-know' };
  if (line.mayBeUnknown && key === 'x') return { how: 'declined' };
  switch (line.entry.kind) {
    case 'yes-no':
      return key === 'y' || key === 'n' ? { how: 'asked', value: key === 'y' } : undefined;
    case 'digit':
      return /^\d$/.test(key) && Number(key) <= line.entry.max ? { how: 'asked', value: Number(key) } : undefined;
    case 'choice': {
      const choice = /^\d$/.test(key) ? line.entry.choices[key === '0' ? 9 : Number(key) - 1] : undefined;
      return choice && { how: 'asked', value: choice.id };
    }
    case 'past-date':
      return replyOfDateKey(key, line.entry);
    case 'list':
      return key === '0' ? { how: 'asked', value: [] } : undefined;
    default:
      return undefined;
  }
}

/** t: today; n: the choice in place of a date. */
function replyOfDateKey(key: string, { onDate, choices }: Extract<Line['entry'], { kind: 'past-date' }>): Reply | undefined {
  if (key === 't') return { how: 'asked', value: onDate };
  const [first] = choices;
  return key === 'n' && first ? { how: 'asked', value: first.id } : undefined;
}

/** The line to go to after an answer: the next one that wants a key, else the first before it, else none. */
export function nextWanted(lines: readonly Line[], answered: string | null): string | null {
  const at = lines.findIndex((l) => l.id === answered);
  const inOrder = [...lines.slice(at + 1), ...lines.slice(0, Math.max(at, 0))];
  return inOrder.find((l) => l.wanted && l.id !== answered)?.id ?? null;
}
