import { join } from 'node:path';
import react from '@vitejs/plugin-react';
import { defineConfig } from 'vite';

const out = process.env.EBBLINE_DIST ?? 'dist';

/**
 * Packages of many small files, of which the server uses a part: built in, they need less memory and open fewer files at each start.
 * All that read schemas go together, so that there is one copy of the schema library.
 */
const BUNDLED = ['zod', 'fastify-type-provider-zod', 'kysely', 'date-fns', 'uuid', 'canonicalize', 'd3-array', 'internmap'];

/** One `vite build --app` makes three things: dist/web for the browser, dist/server.js and dist/cli.js for Node. */
export default defineConfig({
  plugins: [react()],
  builder: {},
  environments: {
    client: {
      // No inlining: the page's policy allows fonts and scripts from 'self' only, not from data: addresses.
      build: { outDir: join(out, 'web'), assetsInlineLimit: 0, chunkSizeWarningLimit: 1_200, rolldownOptions: { input: 'index.html' } },
    },
    ssr: {
      resolve: { noExternal: BUNDLED },
      build: {
        outDir: out,
        emptyOutDir: false,
        ssr: true,
        copyPublicDir: false,
        rolldownOptions: {
          input: { server: 'src/server/main.ts', cli: 'src/cli/main.ts' },
          output: { entryFileNames: '[name].js', chunkFileNames: 'chunks/[name]-[hash].js' },
        },
      },
    },
  },
});
