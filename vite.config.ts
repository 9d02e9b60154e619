import { join } from 'node:path';
import react from '@vitejs/plugin-react';
import { defineConfig, type Plugin } from 'vite';

const out = process.env.EBBLINE_DIST ?? 'dist';

/**
 * Packages of many small files, of which the server uses a part: built in, they need less memory and open fewer files at each start.
 * All that read schemas go together, so that there is one copy of the schema library.
 */
const BUNDLED = ['zod', 'fastify-type-provider-zod', 'kysely', 'date-fns', 'uuid', 'canonicalize', 'd3-array', 'internmap'];

const GENERATOR_SUPPORT = /@stdlib\/assert-has-generator-support\/lib\/index\.js$/;

/**
 * A numeric package asks by `eval` whether the engine has generators. The page's policy refuses `eval`, and the package would then sum its
 * series in another way than on the server. Every browser that can show the page has them.
 */
const withoutEval: Plugin = {
  name: 'ebbline-without-eval',
  transform: (_code, id) => (GENERATOR_SUPPORT.test(id) ? { code: 'module.exports = () => true;', map: null } : null),
};

/** One `vite build --app` makes three things: dist/web for the browser, dist/server.js and dist/cli.js for Node. */
export default defineConfig({
  plugins: [react(), withoutEval],
  worker: { plugins: () => [withoutEval] },
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
