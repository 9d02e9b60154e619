import { plural } from '../../format.ts';
import { Key } from '../../parts/Key.tsx';
import { LineRow } from './LineRow.tsx';
import type { Line } from './line.ts';
import { isLeftOutText } from './questionLines.ts';
import { ReleaseLine } from './ReleaseLine.tsx';
import type { Scope } from './scopes.ts';
import { useVisit } from './visitContext.ts';

/** The lines of one scope. */
export function ScopeLines({ scope, lines }: { readonly scope: Scope; readonly lines?: readonly Line[] }) {
  const work = useVisit();
  const shown = lines ?? work.lines[scope];
  if (shown.length === 0) return null;
  const isSameForAll = isAllConfirmed(shown);
  return (
    <ul className="lines">
      {shown.map((line) => (
        <LineRow
          key={line.id}
          line={isSameForAll && line.tone === 'confirmed' ? { ...line, note: undefined } : line}
          scope={scope}
          isOpen={work.place.scope === scope && work.place.line === line.id}
          isFixed={work.isClosed}
          onOpen={work.goTo}
          onReply={work.reply}
          onDone={(s, l) => work.goOn({ scope: s, line: l })}
        >
          {line.private && <ReleaseLine line={line} />}
        </LineRow>
      ))}
    </ul>
  );
}

/** "=": asked today, no change. Stands there while something carried waits to be asked again. */
export function Reconfirm({ scope }: { readonly scope: Scope }) {
  const { lines, reconfirm, isClosed } = useVisit();
  const count = lines[scope].filter((l) => l.reconfirmable).length;
  if (count === 0 || isClosed) return null;
  return (
    <button type="button" className="answer reconfirm" aria-keyshortcuts="=" onClick={() => reconfirm(scope)}>
      <Key>=</Key>
      <span>
        {scope === 'look' ? 'seen' : 'asked'} today, no change ({plural(count, 'answer')})
      </span>
    </button>
  );
}

/** The server's or the form's "no", beside the work it is about. */
export function ScopeProblem({ scope }: { readonly scope: Scope }) {
  const { place, problem } = useVisit();
  return problem && place.scope === scope ? (
    <p className="problem" role="alert">
      {problem}
    </p>
  ) : null;
}

/** True when every question was asked again and none changed: then it is said once for the group, not on every line. */
export function isAllConfirmed(lines: readonly Line[]): boolean {
  const asked = lines.filter((l) => l.mayBeUnknown && !isLeftOutText(l.text));
  return asked.length > 0 && asked.every((l) => l.tone === 'confirmed');
}
