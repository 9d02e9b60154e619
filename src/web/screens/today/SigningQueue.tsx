import { useQueryClient } from '@tanstack/react-query';
import { type KeyboardEvent, useLayoutEffect, useRef, useState } from 'react';
import type { SigningLine } from '../../../api/signing.ts';
import { useSignedIn } from '../../data/hiding.ts';
import { refuseItem, signItem, useSigning, withdrawRelease } from '../../data/signingQueries.ts';
import { useSend } from '../../data/useSend.ts';
import { joinWords, plural } from '../../format.ts';
import { Key } from '../../parts/Key.tsx';
import { useSingleKeys } from '../../preferences.ts';
import { goTo } from '../../routing.ts';
import type { Covers } from '../signing/SignForm.tsx';
import { SigningRow } from './SigningRow.tsx';

/** What was decided last here, so that one key takes it back. */
interface Decided {
  readonly line: SigningLine;
  readonly did: 'signed' | 'not released';
}

/** Everything that waits for a signature, one line each; a member without the right sees how many and who could sign. */
export function SigningQueue() {
  const session = useSignedIn();
  const signing = useSigning(session.member.id);
  const client = useQueryClient();
  const section = useRef<HTMLElement>(null);
  const [decided, setDecided] = useState<Decided | null>(null);
  const [asking, setAsking] = useState<{ readonly id: string; readonly what: 'reason' | 'covers' } | null>(null);
  const sending = useSend();
  const singleKeys = useSingleKeys();
  const isDentist = session.member.roles.includes('dentist') === true;
  // To the next row once the rows are drawn anew, and not to one that is about to go.
  const nextRow = useRef<number | null>(null);
  // biome-ignore lint/correctness/useExhaustiveDependencies: whenever the rows were read again
  useLayoutEffect(() => {
    if (nextRow.current !== null) focusRow(section.current, nextRow.current);
    nextRow.current = null;
  }, [signing.dataUpdatedAt]);
  if (!signing.data || (signing.data.count === 0 && !decided)) return null;
  const { count, signers, lines } = signing.data;

  const send = (work: () => Promise<unknown>, next: Decided | null, row: number) =>
    void sending.send(async () => {
      // The row goes away under the focus: until the next one has it, the section keeps the keys.
      if (!asking) section.current?.focus();
      await work();
      section.current?.focus();
      setAsking(null);
      setDecided(next);
      nextRow.current = row;
      await Promise.all([['signing'], ['people'], ['day']].map((queryKey) => client.invalidateQueries({ queryKey })));
    });
  const sign = (line: SigningLine, row: number, covers: Covers = {}) => {
    const [order] = line.orders;
    if (!isDentist && !order) return;
    const on = isDentist ? covers : { ...covers, standingOrderId: order?.id };
    send(() => signItem(line.visitId, line.shelfItemId, on), { line, did: 'signed' }, row);
  };
  const refuse = (line: SigningLine, row: number, reason: string) =>
    send(() => refuseItem(line.visitId, line.shelfItemId, reason), { line, did: 'not released' }, row);
  // A closed visit takes nothing back without a reason; seconds after the key was pressed, this is one.
  const undo = ({ line }: Decided) =>
    send(() => withdrawRelease(line.visitId, line.shelfItemId, line.isOpen ? undefined : 'taken back at once'), null, 0);

  const onKeyDown = (event: KeyboardEvent) => {
    if (event.ctrlKey || event.metaKey || event.altKey || isTyping(event.target)) return;
    const row = rowOf(event.target);
    const line = row === undefined ? undefined : lines[row];
    const keys: Readonly<Record<string, (() => void) | undefined>> = {
      s: line && row !== undefined && singleKeys ? () => sign(line, row) : undefined,
      p:
        line?.isForHome && (isDentist || line.orders.length > 0) && singleKeys
          ? () => setAsking({ id: idOf(line), what: 'covers' })
          : undefined,
      r: line && isDentist && singleKeys ? () => setAsking({ id: idOf(line), what: 'reason' }) : undefined,
      u: decided && singleKeys ? () => undo(decided) : undefined,
    };
    const by = event.key === 'ArrowDown' ? 1 : event.key === 'ArrowUp' ? -1 : 0;
    const act = by === 0 ? keys[event.key] : () => focusRow(section.current, (row ?? -by) + by);
    if (!act) return;
    event.preventDefault();
    act();
  };

  return (
    <section className="signing" aria-label="Waiting for a signature" tabIndex={-1} ref={section} onKeyDown={onKeyDown}>
      <h2>Waiting for a signature</h2>
      <p>{sayQueue(count, signers)}</p>
      <p role="status" className="hint">
        {decided && `${decided.line.item}, ${decided.line.person}: ${decided.did}.`}
      </p>
      {decided && (
        <p className="actions">
          <button type="button" className="action" aria-keyshortcuts="u" onClick={() => undo(decided)}>
            <Key>u</Key> Undo
          </button>
        </p>
      )}
      {sending.problem && asking?.what !== 'covers' && (
        <p className="problem" role="alert">
          {sending.problem}
        </p>
      )}
      {lines.length > 0 && (
        // Long lists stay folded for those who cannot sign in person.
        <details open={isDentist}>
          <summary>{sayLines(lines, isDentist)}</summary>
          <ol className="signing-lines">
            {lines.map((line, row) => (
              <SigningRow
                key={idOf(line)}
                line={line}
                row={row}
                right={isDentist ? 'in person' : line.orders.length > 0 ? 'on an order' : 'none'}
                asks={asking?.id === idOf(line) ? asking.what : null}
                today={session.today}
                problem={sending.problem}
                onOpen={() => goTo(`/visits/${line.visitId}#plan`)}
                onSign={(covers) => sign(line, row, covers)}
                onRefuse={(reason) => refuse(line, row, reason)}
                onAsk={(what) => {
                  setAsking(what && { id: idOf(line), what });
                  if (!what) focusRow(section.current, row);
                }}
              />
            ))}
          </ol>
        </details>
      )}
    </section>
  );
}

function sayLines(lines: readonly SigningLine[], isDentist: boolean): string {
  const onOrder = lines.filter((line) => line.orders.length > 0).length;
  if (isDentist || onOrder === 0) return 'Each of them, oldest first';
  return `Each of them, oldest first; ${onOrder} can be signed on a standing order`;
}

const idOf = (line: SigningLine) => `${line.visitId} ${line.shelfItemId}`;

function sayQueue(count: number, signers: readonly string[]): string {
  if (count === 0) return 'Nothing waits any more.';
  const items = `In the whole practice ${plural(count, 'item')} ${count === 1 ? 'waits' : 'wait'}, for people of today and of other days.`;
  if (signers.length === 0) return `${items} No dentist is in the team, so nobody can sign in person.`;
  return `${items} ${joinWords(signers)} can sign.`;
}

const isTyping = (target: EventTarget | null) => target instanceof HTMLElement && target.matches('input, textarea, select');

function rowOf(target: EventTarget): number | undefined {
  const row = target instanceof HTMLElement ? target.closest<HTMLElement>('[data-signing]')?.dataset.signing : undefined;
  return row === undefined ? undefined : Number(row);
}

/** The row with this number, or the last one before it; with no row left, a button of the section keeps the focus near. */
function focusRow(section: HTMLElement | null, row: number): void {
  const rows = section?.querySelectorAll<HTMLElement>('[data-signing] [data-row]') ?? [];
  const target = rows[Math.max(0, Math.min(row, rows.length - 1))] ?? section?.querySelector<HTMLElement>('button');
  target?.focus();
}
