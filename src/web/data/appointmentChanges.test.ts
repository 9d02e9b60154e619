import { describe, expect, test } from 'vitest';
import type { AppointmentChange, DayLine, DayView } from '../../api/day.ts';
import { ApiError } from './api.ts';
import { createAppointmentChanges, withAppointment } from './appointmentChanges.ts';

/** A server with one appointment, which answers when it is let go. */
function oneAppointment() {
  let version = 1;
  const sent: AppointmentChange[] = [];
  const letGo: (() => void)[] = [];
  const change = createAppointmentChanges(async (id, asked) => {
    sent.push(asked);
    await new Promise<void>((resolve) => letGo.push(resolve));
    if (asked.version !== version) throw new ApiError(409, 'CONFLICT', 'somebody else was faster', null);
    version += 1;
    return { id, version, state: asked.state ?? 'planned', atTime: asked.atTime ?? null };
  });
  const answer = async () => {
    await settle();
    letGo.shift()?.();
    await settle();
  };
  const somebodyElse = () => {
    version += 1;
  };
  return { change, sent, answer, somebodyElse };
}

const settle = () => new Promise((resolve) => setTimeout(resolve, 0));
const MISSED = { id: 'a', version: 1, state: 'missed', reason: 'did not come' } as const;

describe('createAppointmentChanges', () => {
  test('missed, taken back and missed again, all from a list that was not read again: no conflict with oneself', async () => {
    const { change, sent, answer } = oneAppointment();
    const all = [change(MISSED), change({ id: 'a', version: 1, state: 'planned' }), change(MISSED)];
    for (let i = 0; i < 3; i += 1) await answer();
    expect((await Promise.all(all)).map((saved) => [saved?.version, saved?.state])).toEqual([
      [2, 'missed'],
      [3, 'planned'],
      [4, 'missed'],
    ]);
    expect(sent.map(({ version }) => version)).toEqual([1, 2, 3]);
  });

  test('the same key twice is sent once', async () => {
    const { change, sent, answer } = oneAppointment();
    const twice = [change(MISSED), change(MISSED)];
    await answer();
    expect(await Promise.all(twice)).toMatchObject([{ version: 2 }, undefined]);
    expect(sent).toHaveLength(1);
  });

  test('another time and back again, from one look at the list', async () => {
    const { change, sent, answer } = oneAppointment();
    const all = [change({ id: 'a', version: 1, atTime: '11:30' }), change({ id: 'a', version: 1, atTime: null }), change(MISSED)];
    for (let i = 0; i < 3; i += 1) await answer();
    expect((await Promise.all(all)).map((saved) => saved?.atTime)).toEqual(['11:30', null, null]);
    expect(sent).toEqual([
      { version: 1, atTime: '11:30' },
      { version: 2, atTime: null },
      { version: 3, state: 'missed', reason: 'did not come' },
    ]);
  });

  test('what somebody else changed is a conflict, and the next try builds on the list', async () => {
    const { change, answer, somebodyElse } = oneAppointment();
    somebodyElse();
    const refused = change(MISSED);
    const isRefused = expect(refused).rejects.toMatchObject({ status: 409 });
    await answer();
    await isRefused;
    const again = change({ ...MISSED, version: 2 });
    await answer();
    expect(await again).toMatchObject({ version: 3 });
  });
});

describe('withAppointment', () => {
  const line = (id: string, state: DayLine['state']) =>
    ({ state, patientId: 'same person', appointment: { id, version: 1, note: 'by the window', reason: null } }) as DayLine;
  const day = { lines: [line('a', 'not-here'), line('b', 'not-here'), line('c', 'open')] } as unknown as DayView;

  test('changes that line alone, also where one person has two', () => {
    const { lines } = withAppointment(day, { id: 'a', version: 2, state: 'missed', reason: 'did not come' });
    expect(lines.map(({ state }) => state)).toEqual(['missed', 'not-here', 'open']);
    expect(lines[0]?.appointment).toEqual({ id: 'a', version: 2, note: 'by the window', reason: 'did not come' });
    expect(lines[1]).toBe(day.lines[1]);
  });

  test('taken back it is expected again; a visit stays what it is', () => {
    const back = withAppointment(day, { id: 'a', version: 3, state: 'planned', reason: null });
    expect(back.lines[0]).toMatchObject({ state: 'not-here', appointment: { version: 3 } });
    expect(withAppointment(day, { id: 'c', version: 2, state: 'missed', reason: 'x' }).lines[2]?.state).toBe('open');
  });
});
