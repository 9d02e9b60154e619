import { expect, test } from 'vitest';
import { mouthPresets } from '../../../content/plaque/presets.ts';
import type { DayAnswer, DayAsk } from './day.worker.ts';
import { createDayClient, type DayState } from './dayClient.ts';
import type { DayQuestion, DrawnDay } from './drawDay.ts';

const question = (wakeMinute: number, mouth = mouthPresets.average): DayQuestion => ({
  day: { wakeMinute, sleepMinute: 1380, events: [] },
  mouth,
  measured: {},
  isLive: true,
});
const drawn = {} as DrawnDay;

function openFake() {
  const sent: DayAsk[] = [];
  let answer: (given: DayAnswer) => void = () => undefined;
  let fail: () => void = () => undefined;
  const client = createDayClient((onAnswer, onFailure) => {
    answer = onAnswer;
    fail = onFailure;
    return { post: (ask) => sent.push(ask) };
  });
  const seen: (number | string)[] = [];
  const note = (state: DayState) => seen.push(state.state === 'drawn' ? state.question.day.wakeMinute : state.state);
  const stop = client.listen('told', note);
  return {
    client,
    sent,
    seen,
    stop,
    answer: (ask: DayAsk | undefined) => ask && answer({ id: ask.id, slot: ask.slot, drawn }),
    fail: () => fail(),
  };
}

test('while one is worked out, only the newest of the others waits; each answer is shown', () => {
  const { client, sent, seen, answer } = openFake();
  for (const minute of [1, 2, 3]) client.ask('told', question(minute));
  expect(sent.map((ask) => ask.question.day.wakeMinute)).toEqual([1]);
  answer(sent[0]);
  expect(sent.map((ask) => ask.question.day.wakeMinute)).toEqual([1, 3]);
  answer(sent[1]);
  expect(seen).toEqual([1, 3]);
});

test('an answer of another mouth is dropped, and one that nobody listens to any more', () => {
  const { client, sent, seen, answer, stop } = openFake();
  client.ask('told', question(1));
  client.ask('told', question(1, mouthPresets.approximal));
  answer(sent[0]);
  expect(seen).toEqual([]);
  stop();
  answer(sent[1]);
  expect(seen).toEqual([]);
});

test('two pictures do not wait for each other', () => {
  const { client, sent } = openFake();
  client.ask('told', question(1));
  client.ask('changed', question(2));
  expect(sent).toHaveLength(2);
});

test('a worker that fails says so, and is asked again', () => {
  const { client, sent, seen, fail } = openFake();
  client.ask('told', question(1));
  fail();
  client.ask('told', question(2));
  expect(seen).toEqual(['problem']);
  expect(sent).toHaveLength(2);
});
