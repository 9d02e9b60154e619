import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { parseArgs } from 'node:util';
import { buildApp } from './app.ts';
import { listen } from './listen.ts';

const { values } = parseArgs({ options: { port: { type: 'string' } } });
const port = values.port === undefined ? undefined : Number(values.port);
if (port !== undefined && !(Number.isInteger(port) && port >= 0 && port <= 65_535)) {
  console.error(`--port must be a whole number from 0 to 65535, not ${values.port}`);
  process.exit(2);
}

// The built server stands in dist/, the pages in dist/web/.
const app = await buildApp({ webRoot: join(dirname(fileURLToPath(import.meta.url)), 'web') });

let isClosing = false;
// npm forwards the terminal's Ctrl-C, so the same signal may come twice.
for (const signal of ['SIGINT', 'SIGTERM'] as const) {
  process.on(signal, () => {
    if (isClosing) return;
    isClosing = true;
    app.close().then(
      () => process.exit(0),
      (error: unknown) => {
        console.error(error);
        process.exit(1);
      },
    );
  });
}

try {
  console.log(`Ebbline is ready: ${await listen(app, port)}  (Ctrl-C stops it)`);
} catch (error) {
  console.error(`Ebbline could not start: ${error instanceof Error ? error.message : error}`);
  process.exit(1);
}
