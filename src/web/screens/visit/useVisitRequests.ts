import { useState } from 'react';
import type { CorrectionBody } from '../../../api/apiTypes.ts';
import type { Releases } from '../../../api/signing.ts';
import type { ConfirmedLevel } from '../../../core/regimen/types.ts';
import type { ReleasedAnswer, VisitInput } from '../../../core/visit/types.ts';
import { ApiError, callApi } from '../../data/api.ts';
import { useSaveQueue } from '../../data/saving.ts';
import type { SignedOn } from '../../data/signingQueries.ts';
import { plural } from '../../format.ts';
import type { VisitDraft } from './useVisitDraft.ts';

/** What only the server can do: confirm the level, sign an item, close the visit. Each waits until every answer is saved. */
export function useVisitRequests(visitId: string, show: VisitDraft['show'], onClosed: () => void) {
  const queue = useSaveQueue();
  const [problem, setProblem] = useState<string | null>(null);

  /** True when it was done; the server's words stand in `problem` when not. */
  async function ask<T>(path: string, body: unknown, done: (answer: T) => void): Promise<boolean> {
    setProblem(null);
    try {
      await queue.settled();
      const held = queue.state().held.filter((job) => job.visitId === visitId).length;
      if (held > 0) {
        setProblem(`Not saved yet: ${plural(held, 'field')} typed by another member, who gives a code first.`);
        return false;
      }
      done(await callApi<T>('POST', `/api/visits/${visitId}/${path}`, body));
      return true;
    } catch (error) {
      if (!(error instanceof ApiError)) throw error;
      setProblem(error.message);
      return false;
    }
  }

  /** When it was decided, or undefined when it was not. */
  async function confirmLevel(level: string, reason: string | undefined): Promise<string | undefined> {
    let decidedAt: string | undefined;
    await ask<{ confirmed: ConfirmedLevel }>('level', reason ? { level, reason } : { level }, ({ confirmed }) => {
      decidedAt = confirmed.at;
      show((input) => ({ ...input, visit: { ...input.visit, confirmed } }));
    });
    return decidedAt;
  }
  const askRelease = (path: string, body: unknown) =>
    ask<Releases>(path, body, ({ signed, refused }) => show((input) => ({ ...input, visit: { ...input.visit, signed, refused } })));

  return {
    problem,
    confirmLevel,
    withdrawLevel: (decidedAt: string) =>
      ask('level/withdraw', { decidedAt }, () =>
        show((input) => {
          const { confirmed: _, ...visit } = input.visit;
          return { ...input, visit };
        }),
      ),
    correct: (correction: CorrectionBody) => ask('corrections', correction, () => undefined),
    sign: (shelfItemId: string, on: SignedOn = {}) => askRelease('signatures', { shelfItemId, ...on }),
    refuse: (shelfItemId: string, reason: string) => askRelease('refusals', { shelfItemId, reason }),
    withdraw: (shelfItemId: string, reason?: string) =>
      askRelease('withdrawals', reason === undefined ? { shelfItemId } : { shelfItemId, reason }),
    release: (question: string, { visit }: VisitInput) =>
      ask<{ released: ReleasedAnswer | null }>(
        'releases',
        { question, isReleased: visit.released?.[question] === undefined, heard: visit.speaker?.who },
        ({ released }) =>
          show((input) => {
            const { [question]: _, ...others } = input.visit.released ?? {};
            return { ...input, visit: { ...input.visit, released: released ? { ...others, [question]: released } : others } };
          }),
      ),
    close: () => ask('close', {}, onClosed),
  };
}
