import type { Browser } from 'playwright-core';

interface TraceEvent {
  readonly name: string;
  readonly ph: string;
  readonly pid: number;
  readonly tid: number;
  /** Processor time of the thread, µs. */
  readonly tdur?: number;
  readonly args?: { readonly name?: string };
}

/** Threads of a page that work while something is dragged, by Chromium's own names. */
const THREADS = {
  main: 'CrRendererMain',
  worker: 'DedicatedWorker thread',
  raster: 'ThreadPoolForegroundWorker',
  draw: 'VizCompositorThread',
};
const CATEGORIES = ['toplevel', 'devtools.timeline'];
/** What a thread of the pool calls its turns, and what the others do. */
const TURNS: readonly string[] = ['ThreadControllerImpl::RunTask', 'ThreadPool_RunTask'];

/** Processor time of each kind of thread while something is done, ms: what other work on the machine does not lengthen. */
export async function threadTimes(browser: Browser, run: () => Promise<void>): Promise<Readonly<Record<keyof typeof THREADS, number>>> {
  const session = await browser.newBrowserCDPSession();
  const events: TraceEvent[] = [];
  session.on('Tracing.dataCollected', ({ value }) => events.push(...(value as unknown as TraceEvent[])));
  await session.send('Tracing.start', { transferMode: 'ReportEvents', traceConfig: { includedCategories: CATEGORIES } });
  await run();
  const isComplete = new Promise((resolve) => session.once('Tracing.tracingComplete', resolve));
  await session.send('Tracing.end');
  await isComplete;
  await session.detach();
  const names = new Map(events.filter(({ name }) => name === 'thread_name').map((event) => [keyOf(event), event.args?.name]));
  const turns = events.filter(({ name, ph }) => ph === 'X' && TURNS.includes(name));
  const timeOf = (thread: string) =>
    turns.filter((event) => names.get(keyOf(event)) === thread).reduce((sum, { tdur = 0 }) => sum + tdur / 1000, 0);
  return { main: timeOf(THREADS.main), worker: timeOf(THREADS.worker), raster: timeOf(THREADS.raster), draw: timeOf(THREADS.draw) };
}

const keyOf = ({ pid, tid }: TraceEvent): string => `${pid} ${tid}`;
