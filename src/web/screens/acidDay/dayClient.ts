import type { DayAnswer, DayAsk, DaySlot } from './day.worker.ts';
import type { DayQuestion, DrawnDay } from './drawDay.ts';

/** What is known of the newest question of a picture. */
export type DayState =
  | { readonly state: 'working' }
  /** `since`: when the hand or the key moved that led to it, ms of this page. */
  | { readonly state: 'drawn'; readonly question: DayQuestion; readonly drawn: DrawnDay; readonly since: number }
  | { readonly state: 'problem'; readonly says: string };

export interface DayClient {
  /** Asks for the picture; of several questions that wait only the newest is sent. */
  readonly ask: (slot: DaySlot, question: DayQuestion, since?: number) => void;
  readonly listen: (slot: DaySlot, listener: (state: DayState) => void) => () => void;
}

interface Asked {
  readonly question: DayQuestion;
  readonly since: number;
}

interface Port {
  readonly post: (ask: DayAsk) => void;
}

/**
 * The questions of a page on their way to its worker, one at a time for each picture. An answer is shown unless its picture was asked
 * something of another mouth since, or nobody listens any more: then it is dropped.
 */
export function createDayClient(open: (onAnswer: (answer: DayAnswer) => void, onFailure: () => void) => Port): DayClient {
  const waiting = new Map<DaySlot, Asked>();
  const inFlight = new Map<DaySlot, Asked & { readonly id: number }>();
  const listeners = new Map<DaySlot, (state: DayState) => void>();
  let count = 0;

  const send = (slot: DaySlot, asked: Asked) => {
    count += 1;
    inFlight.set(slot, { id: count, ...asked });
    port.post({ id: count, slot, question: asked.question });
  };
  const onAnswer = (answer: DayAnswer) => {
    const { slot } = answer;
    const asked = inFlight.get(slot);
    if (asked?.id !== answer.id) return;
    inFlight.delete(slot);
    const next = waiting.get(slot);
    waiting.delete(slot);
    if (next) send(slot, next);
    const isStale = next !== undefined && next.question.mouth !== asked.question.mouth;
    if (isStale) return;
    listeners.get(slot)?.(
      'drawn' in answer
        ? { state: 'drawn', question: asked.question, drawn: answer.drawn, since: asked.since }
        : { state: 'problem', says: answer.problem },
    );
  };
  const onFailure = () => {
    inFlight.clear();
    for (const listener of listeners.values()) listener({ state: 'problem', says: 'It could not be worked out on this computer.' });
  };
  const port = open(onAnswer, onFailure);

  return {
    ask: (slot, question, since = performance.now()) => {
      if (inFlight.has(slot)) waiting.set(slot, { question, since });
      else send(slot, { question, since });
    },
    listen: (slot, listener) => {
      listeners.set(slot, listener);
      return () => {
        listeners.delete(slot);
        waiting.delete(slot);
        inFlight.delete(slot);
      };
    },
  };
}

let client: DayClient | undefined;

/** The worker of this page, begun with the first page that may show a day, so that it is warm when something is dragged. */
export function dayClient(): DayClient {
  client ??= createDayClient((onAnswer, onFailure) => {
    const worker = new Worker(new URL('./day.worker.ts', import.meta.url), { type: 'module' });
    worker.onmessage = ({ data }: MessageEvent<DayAnswer>) => onAnswer(data);
    worker.onerror = onFailure;
    return { post: (ask) => worker.postMessage(ask) };
  });
  return client;
}
