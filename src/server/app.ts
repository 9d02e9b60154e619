import helmet from '@fastify/helmet';
import staticFiles from '@fastify/static';
import Fastify, { type FastifyInstance } from 'fastify';

export interface AppDeps {
  /** Folder of the built pages: index.html and assets/. */
  readonly webRoot: string;
}

/** Everything the pages may load is their own: no inline script or style, no other host. */
const CONTENT_SECURITY_POLICY = {
  'default-src': ["'self'"],
  'script-src': ["'self'"],
  'style-src': ["'self'"],
  'img-src': ["'self'", 'data:'],
  'font-src': ["'self'"],
  'connect-src': ["'self'"],
  'object-src': ["'none'"],
  'base-uri': ["'none'"],
  'form-action': ["'self'"],
  'frame-ancestors': ["'none'"],
};

export async function buildApp({ webRoot }: AppDeps): Promise<FastifyInstance> {
  const app = Fastify({ forceCloseConnections: true });
  await app.register(helmet, {
    contentSecurityPolicy: { useDefaults: false, directives: CONTENT_SECURITY_POLICY },
    referrerPolicy: { policy: 'no-referrer' },
    // The server speaks plain HTTP on localhost; a proxy that adds TLS adds this too.
    strictTransportSecurity: false,
  });
  await app.register(staticFiles, {
    root: webRoot,
    cacheControl: false,
    setHeaders: (reply, path) => {
      // Vite puts a digest into the names below assets/, so those never change.
      reply.header('cache-control', path.includes('/assets/') ? 'public, max-age=31536000, immutable' : 'no-cache');
    },
  });
  app.setNotFoundHandler((req, reply) => {
    const wantsPage = (req.method === 'GET' || req.method === 'HEAD') && (req.headers.accept ?? '*/*').match(/text\/html|\*\/\*/);
    const isPageAddress = !/^\/(api|assets)\//.test(req.url);
    if (wantsPage && isPageAddress) return reply.sendFile('index.html');
    return reply.code(404).send({ error: 'not found' });
  });
  return app;
}
