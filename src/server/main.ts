import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { parseArgs } from 'node:util';
import { DEMO_CODE, DEMO_PASSWORD } from '../content/demo/members.ts';
import { buildApp } from './app.ts';
import { PRACTICE_OPTIONS, type PracticeOption } from './askPractice.ts';
import { listen } from './listen.ts';
import { DEMO_PASSPHRASE, type OpenedPractice, openDemo, openReal } from './openPractice.ts';
import { SignInAddress } from './sessions.ts';

// The built server stands in dist/, the pages in dist/web/, the data beside dist/ unless said otherwise.
const here = dirname(fileURLToPath(import.meta.url));
const DATA = process.env.EBBLINE_DATA ?? join(here, '..', 'data');

const { values } = readOptions();
const now = () => new Date().toISOString();

try {
  const practice = await open();
  const address = new SignInAddress(practice.invented);
  const { store, scope, firstMemberId } = practice;
  const app = await buildApp({ webRoot: join(here, 'web'), db: store.db, scope, now, address, firstMemberId });
  closeOnSignal(async () => {
    await app.close();
    await store.close();
  });
  const origin = await listen(app, portOf(values.port));
  sayStarted(practice, `${origin}/sign-in/${address.token}`);
} catch (error) {
  console.error(`Ebbline could not start. ${error instanceof Error ? error.message : error}`);
  process.exit(1);
}

function readOptions() {
  const text = { type: 'string' } as const;
  const flag = { type: 'boolean', default: false } as const;
  const practice = Object.fromEntries(PRACTICE_OPTIONS.map((name) => [name, text])) as Record<PracticeOption, typeof text>;
  try {
    return parseArgs({ options: { port: text, data: text, empty: flag, practice: flag, ...practice } });
  } catch (error) {
    console.error(error instanceof Error ? error.message : error);
    process.exit(2);
  }
}

function open(): Promise<OpenedPractice> {
  if (!values.empty && !values.practice) return openDemo({ folder: values.data ?? join(DATA, 'demo'), now, say: console.log });
  return openReal({
    folder: values.data ?? join(DATA, 'practice'),
    begin: values.empty,
    now,
    passphrase: process.env.EBBLINE_PASSPHRASE,
    interactive: process.stdin.isTTY === true,
    practiceOptions: Object.fromEntries(PRACTICE_OPTIONS.flatMap((name) => (values[name] === undefined ? [] : [[name, values[name]]]))),
  });
}

function portOf(given: string | undefined): number | undefined {
  if (given === undefined) return undefined;
  const port = Number(given);
  if (Number.isInteger(port) && port >= 0 && port <= 65_535) return port;
  throw new RangeError(`--port must be a whole number from 0 to 65535, not ${given}`);
}

function sayStarted({ invented, recoveryKey }: OpenedPractice, address: string): void {
  if (invented) {
    console.log('Demo practice "Tern Quay Dental": invented, and so is everybody in it.');
    console.log(
      `Its passphrase is public: "${DEMO_PASSPHRASE}". Every member signs in with the password "${DEMO_PASSWORD}" and has the code ${DEMO_CODE}.`,
    );
  }
  if (recoveryKey !== undefined) {
    console.log('Print this recovery key now and lock it away. It opens the data if the passphrase is lost, and it is shown only once:');
    console.log(`  ${recoveryKey}`);
  }
  console.log(`Ebbline is ready: ${address}  (Ctrl-C stops it)`);
}

function closeOnSignal(close: () => Promise<void>): void {
  let isClosing = false;
  // npm forwards the terminal's Ctrl-C, so the same signal may come twice.
  for (const signal of ['SIGINT', 'SIGTERM'] as const) {
    process.on(signal, () => {
      if (isClosing) return;
      isClosing = true;
      close().then(
        () => process.exit(0),
        (error: unknown) => {
          console.error(error);
          process.exit(1);
        },
      );
    });
  }
}
