import { describe, expect, test } from 'vitest';
import { ApiError } from './api.ts';
import { createSaveQueue, type SaveJob } from './saveQueue.ts';

const job = (path: string, value: unknown): SaveJob => ({ visitId: 'v1', path, value });
const settle = () => new Promise((resolve) => setTimeout(resolve, 0));

/** A server whose answers are let through one at a time. */
function standIn() {
  const sent: { job: SaveJob; version: number | undefined }[] = [];
  const answers: { resolve: (saved: { version: number; savedAt: string }) => void; reject: (error: unknown) => void }[] = [];
  const waits: number[] = [];
  const letGo: (() => void)[] = [];
  const queue = createSaveQueue({
    send: (j, version) => {
      sent.push({ job: j, version });
      return new Promise((resolve, reject) => answers.push({ resolve, reject }));
    },
    wait: (ms) => {
      waits.push(ms);
      return new Promise((resolve) => letGo.push(resolve));
    },
  });
  return { queue, sent, answers, waits, letGo };
}

describe('createSaveQueue', () => {
  test('is not saved before the server says so', async () => {
    const { queue, answers } = standIn();
    queue.put(job('answers.a', 1));
    expect(queue.state()).toMatchObject({ unsaved: 1, lastSavedAt: null });
    answers[0]?.resolve({ version: 1, savedAt: '2026-11-25T10:42:07Z' });
    await settle();
    expect(queue.state()).toMatchObject({ unsaved: 0, trying: false, lastSavedAt: '2026-11-25T10:42:07Z' });
  });

  test('of several values entered while one is on its way only the newest follows, with the version just given', async () => {
    const { queue, sent, answers } = standIn();
    queue.put(job('answers.a', 1));
    queue.put(job('answers.a', 2));
    queue.put(job('answers.a', 3));
    answers[0]?.resolve({ version: 1, savedAt: '2026-11-25T10:42:07Z' });
    await settle();
    expect(sent.map((s) => [s.job.value, s.version])).toEqual([
      [1, undefined],
      [3, 1],
    ]);
  });

  test('tries again with growing waits, newest value first in line, and keeps the others behind it', async () => {
    const { queue, sent, answers, waits, letGo } = standIn();
    queue.put(job('answers.a', 1));
    queue.put(job('answers.b', 7));
    answers[0]?.reject(new ApiError(0, 'NOT_REACHED', '', null));
    await settle();
    expect(queue.state()).toMatchObject({ trying: true, unsaved: 2, lastSavedAt: null });
    queue.put(job('answers.a', 2));
    letGo[0]?.();
    await settle();
    answers[1]?.reject(new ApiError(503, 'BUSY', '', null));
    await settle();
    letGo[1]?.();
    await settle();
    answers[2]?.resolve({ version: 1, savedAt: '2026-11-25T10:42:07Z' });
    await settle();
    answers[3]?.resolve({ version: 1, savedAt: '2026-11-25T10:42:08Z' });
    await settle();
    expect(sent.map((s) => `${s.job.path}=${s.job.value}`)).toEqual(['answers.a=1', 'answers.a=2', 'answers.a=2', 'answers.b=7']);
    expect(waits).toEqual([500, 1000]);
    expect(queue.state()).toMatchObject({ trying: false, unsaved: 0, lastSavedAt: '2026-11-25T10:42:08Z' });
  });

  test('a conflict waits for a choice; keeping yours sends it on top of theirs', async () => {
    const { queue, sent, answers } = standIn();
    queue.put(job('answers.a', 1));
    answers[0]?.reject(
      new ApiError(409, 'CONFLICT', '', {
        error: { code: 'CONFLICT' },
        theirs: { path: 'answers.a', value: 5, version: 4 },
        yours: 1,
        version: 4,
      }),
    );
    await settle();
    const [conflict] = queue.state().conflicts;
    expect(conflict).toMatchObject({ path: 'answers.a', value: 1, theirs: 5, version: 4 });
    expect(queue.state().unsaved).toBe(0);
    if (!conflict) return;
    queue.resolve(conflict, 'yours');
    await settle();
    expect(sent[1]).toMatchObject({ job: job('answers.a', 1), version: 4 });
    expect(queue.state().conflicts).toEqual([]);
  });

  test('its own write, whose answer was lost, is no conflict', async () => {
    const { queue, sent, answers, letGo } = standIn();
    queue.put(job('reading', { rlu: 5150, bound: 'exact' }));
    answers[0]?.reject(new ApiError(0, 'NOT_REACHED', '', null));
    await settle();
    letGo[0]?.();
    await settle();
    answers[1]?.reject(new ApiError(409, 'CONFLICT', '', { theirs: { bound: 'exact', rlu: 5150 }, version: 1 }));
    await settle();
    letGo[1]?.();
    await settle();
    expect(queue.state().conflicts).toEqual([]);
    expect(sent[2]?.version).toBe(1);
  });

  test('its own write, whose answer was lost, is no conflict with what was entered since; what somebody else wrote is', async () => {
    const { queue, sent, answers, letGo } = standIn();
    queue.put(job('reading', { beforeCleaning: true }));
    answers[0]?.reject(new ApiError(0, 'NOT_REACHED', '', null));
    await settle();
    queue.put(job('reading', { beforeCleaning: true, rlu: 5150 }));
    letGo[0]?.();
    await settle();
    answers[1]?.reject(new ApiError(409, 'CONFLICT', '', { theirs: { beforeCleaning: true }, version: 1 }));
    await settle();
    expect(queue.state().conflicts).toEqual([]);
    letGo[1]?.();
    await settle();
    expect(sent[2]).toMatchObject({ job: job('reading', { beforeCleaning: true, rlu: 5150 }), version: 1 });

    answers[2]?.resolve({ version: 2, savedAt: 's' });
    await settle();
    queue.put(job('reading', { rlu: 900 }));
    answers[3]?.reject(new ApiError(409, 'CONFLICT', '', { theirs: { beforeCleaning: true }, version: 3 }));
    await settle();
    expect(queue.state().conflicts).toMatchObject([{ theirs: { beforeCleaning: true }, version: 3 }]);
  });

  test('keeping theirs sends nothing, and a later answer builds on theirs', async () => {
    const { queue, sent, answers } = standIn();
    queue.put(job('answers.a', 1));
    answers[0]?.reject(new ApiError(409, 'CONFLICT', '', { error: { code: 'CONFLICT', theirs: 5, version: 4 } }));
    await settle();
    const [conflict] = queue.state().conflicts;
    if (conflict) queue.resolve(conflict, 'theirs');
    expect(sent).toHaveLength(1);
    queue.put(job('answers.a', 2));
    await settle();
    expect(sent[1]?.version).toBe(4);
  });

  test('a refused field is told and does not hold up the next', async () => {
    const { queue, sent, answers } = standIn();
    queue.put(job('reading', { rlu: -1 }));
    queue.put(job('answers.b', 7));
    answers[0]?.reject(new ApiError(400, 'INPUT_INVALID', 'a reading cannot be below 0', null));
    await settle();
    expect(queue.state().refused).toMatchObject([{ path: 'reading', message: 'a reading cannot be below 0' }]);
    expect(sent[1]?.job.path).toBe('answers.b');
    queue.giveUp(job('answers.b', 7));
    expect(queue.state().refused).toHaveLength(1);
    queue.giveUp(job('reading', undefined));
    expect(queue.state().refused).toEqual([]);
  });

  test('signed out: keeps the field and tries again', async () => {
    const { queue, answers, letGo, sent } = standIn();
    queue.put(job('answers.a', 1));
    answers[0]?.reject(new ApiError(401, 'SIGNED_OUT', '', null));
    await settle();
    expect(queue.state()).toMatchObject({ signedOut: true, unsaved: 1 });
    letGo[0]?.();
    await settle();
    expect(sent).toHaveLength(2);
  });

  test('the time of saving is the one of the newest acknowledgement, also when the clock of the server was set back', async () => {
    const { queue, answers } = standIn();
    queue.put(job('answers.a', 1));
    answers[0]?.resolve({ version: 1, savedAt: '2026-11-25T10:42:07Z' });
    await settle();
    queue.put(job('answers.a', 2));
    answers[1]?.resolve({ version: 2, savedAt: '2026-11-25T09:15:00Z' });
    await settle();
    expect(queue.state()).toMatchObject({ unsaved: 0, lastSavedAt: '2026-11-25T09:15:00Z' });
  });

  test('adopts the versions of a visit', async () => {
    const { queue, sent } = standIn();
    queue.adopt('v1', { 'answers.a': 9 }, '2026-11-25T09:00:00Z');
    queue.put(job('answers.a', 1));
    await settle();
    expect(sent[0]?.version).toBe(9);
    expect(queue.state().lastSavedAt).toBe('2026-11-25T09:00:00Z');
  });
});

describe('a change of member', () => {
  /** Two members at one screen: what is sent carries who typed it. */
  function twoMembers() {
    let here: string | null = 'ines';
    const sent: SaveJob[] = [];
    let isAway = true;
    const queue = createSaveQueue({
      send: async (j) => {
        if (isAway) throw new ApiError(0, 'NOT_REACHED', '', null);
        sent.push(j);
        return { version: 1, savedAt: '2026-11-25T10:42:07Z' };
      },
      wait: () => settle().then(() => undefined),
      whoIsHere: () => here,
    });
    const become = (member: string | null) => {
      here = member;
      queue.resume();
    };
    return { queue, sent, become, comeBack: () => (isAway = false) };
  }

  test('a field that could not be sent waits for the member who typed it, and holds up nobody else', async () => {
    const { queue, sent, become, comeBack } = twoMembers();
    queue.put(job('answers.a', 1));
    become(null);
    await settle();
    await settle();
    expect(queue.state()).toMatchObject({ unsaved: 1, held: [{ path: 'answers.a', typedBy: 'ines' }] });
    comeBack();
    become('tomas');
    queue.put(job('answers.b', 2));
    await queue.settled();
    expect(sent).toEqual([{ ...job('answers.b', 2), typedBy: 'tomas' }]);
    expect(queue.state()).toMatchObject({ unsaved: 1, trying: false });
    become('ines');
    await queue.settled();
    expect(sent[1]).toEqual({ ...job('answers.a', 1), typedBy: 'ines' });
    expect(queue.state()).toMatchObject({ unsaved: 0, held: [] });
  });

  test('a newer value of the same field is the one of the member who typed it last', async () => {
    const { queue, sent, become, comeBack } = twoMembers();
    queue.put(job('answers.a', 1));
    become('tomas');
    comeBack();
    queue.put(job('answers.a', 2));
    await queue.settled();
    expect(sent).toEqual([{ ...job('answers.a', 2), typedBy: 'tomas' }]);
    expect(queue.state().unsaved).toBe(0);
  });
});
