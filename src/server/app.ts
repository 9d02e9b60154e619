import cookie from '@fastify/cookie';
import helmet from '@fastify/helmet';
import rateLimit from '@fastify/rate-limit';
import staticFiles from '@fastify/static';
import swagger from '@fastify/swagger';
import Fastify, { type FastifyInstance } from 'fastify';
import { jsonSchemaTransform, serializerCompiler, validatorCompiler, type ZodTypeProvider } from 'fastify-type-provider-zod';
import { versions } from '../content/versions.ts';
import type { Db } from '../store/schema.ts';
import type { SiteScope } from '../store/siteScope.ts';
import { calculatorRoutes } from './calculatorRoutes.ts';
import { checkRoutes } from './checks/checkRoutes.ts';
import { meterCheckRoutes } from './checks/meterCheckRoutes.ts';
import { stopRoutes } from './checks/stopRoutes.ts';
import { studyRoutes } from './checks/studyRoutes.ts';
import { buildRequestContext } from './context.ts';
import { correctionRoutes } from './correctionRoutes.ts';
import { dayRoutes } from './day/dayRoutes.ts';
import { installErrorHandler } from './errorHandler.ts';
import { localProtocolRoutes } from './localProtocolRoutes.ts';
import { peopleRoutes } from './peopleRoutes.ts';
import { practiceRoutes } from './practiceRoutes.ts';
import type { SignInAddress } from './sessions.ts';
import { shelfRoutes } from './shelfRoutes.ts';
import { signInRoutes } from './signInRoutes.ts';
import { signingRoutes } from './signingRoutes.ts';
import { stockRoutes } from './stockRoutes.ts';
import { visitRoutes } from './visitRoutes.ts';
import { whoRoutes } from './whoRoutes.ts';

export interface AppDeps {
  /** Folder of the built pages: index.html and assets/. */
  readonly webRoot: string;
  readonly db: Db;
  readonly scope: SiteScope;
  readonly now: () => string;
  readonly address: SignInAddress;
  readonly firstMemberId: string;
}

/** Everything the pages may load is their own: no inline script or style, no other host. */
const CONTENT_SECURITY_POLICY = {
  'default-src': ["'self'"],
  'script-src': ["'self'"],
  // The hash is of one constant text, by which react-aria stops a double tap on a list from zooming.
  'style-src': ["'self'", "'sha256-38RhXrc7EdReTKsOm23ZPOCUgniTUUcjky8QOOrQx6o='"],
  'img-src': ["'self'", 'data:'],
  'font-src': ["'self'"],
  'connect-src': ["'self'"],
  'object-src': ["'none'"],
  'base-uri': ["'none'"],
  'form-action': ["'self'"],
  'frame-ancestors': ["'none'"],
};

export async function buildApp({ webRoot, ...deps }: AppDeps): Promise<FastifyInstance> {
  const app = Fastify({ forceCloseConnections: true }).withTypeProvider<ZodTypeProvider>();
  app.setValidatorCompiler(validatorCompiler);
  app.setSerializerCompiler(serializerCompiler);
  installErrorHandler(app);
  await app.register(helmet, {
    contentSecurityPolicy: { useDefaults: false, directives: CONTENT_SECURITY_POLICY },
    referrerPolicy: { policy: 'no-referrer' },
    // The server speaks plain HTTP on localhost; a proxy that adds TLS adds this too.
    strictTransportSecurity: false,
  });
  await app.register(cookie);
  await app.register(rateLimit, { global: false });
  await app.register(swagger, {
    openapi: { openapi: '3.1.0', info: { title: 'Ebbline', version: versions.code } },
    transform: jsonSchemaTransform,
  });
  await registerApi(app, deps);
  await registerPages(app, webRoot);
  return app;
}

async function registerApi(app: FastifyInstance, deps: Omit<AppDeps, 'webRoot'>): Promise<void> {
  const { findSigned, contextOf } = buildRequestContext(deps);
  await app.register(signInRoutes, { ...deps, findSigned });
  await app.register(whoRoutes, { ...deps, findSigned, contextOf });
  await app.register(dayRoutes, { contextOf });
  await app.register(peopleRoutes, { contextOf });
  await app.register(visitRoutes, { contextOf });
  await app.register(correctionRoutes, { contextOf });
  await app.register(signingRoutes, { contextOf });
  await app.register(localProtocolRoutes, { contextOf });
  await app.register(shelfRoutes, { contextOf });
  await app.register(stockRoutes, { contextOf });
  await app.register(practiceRoutes, { contextOf });
  await app.register(checkRoutes, { contextOf });
  await app.register(meterCheckRoutes, { contextOf });
  await app.register(stopRoutes, { contextOf });
  await app.register(studyRoutes, { contextOf });
  await app.register(calculatorRoutes);
  app.get('/api/openapi.json', { schema: { hide: true } }, () => app.swagger());
  app.addHook('onSend', async (req, reply) => {
    if (req.url.startsWith('/api/')) reply.header('cache-control', 'no-store');
  });
}

async function registerPages(app: FastifyInstance, webRoot: string): Promise<void> {
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
    return reply.code(404).send({ error: { code: 'NOT_FOUND', message: 'There is nothing at this address.' } });
  });
}
