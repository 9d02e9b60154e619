// Visits a second on the command line, by parts: JSON lines in, checked, assessed, JSON lines out. Built as the program is, then run.
import { mkdirSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { build } from 'vite';

// Inside the project, where the packages are found.
const folder = fileURLToPath(new URL('../node_modules/.ebbline-bench', import.meta.url));
mkdirSync(folder, { recursive: true });
try {
  await build({
    root: fileURLToPath(new URL('..', import.meta.url)),
    configFile: false,
    logLevel: 'error',
    ssr: { noExternal: ['zod'] },
    build: { ssr: 'bench/assessLinesRun.ts', outDir: folder, emptyOutDir: true, copyPublicDir: false },
  });
  await import(join(folder, 'assessLinesRun.js'));
} finally {
  rmSync(folder, { recursive: true, force: true });
}
