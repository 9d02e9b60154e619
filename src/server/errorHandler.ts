import type { FastifyError, FastifyInstance } from 'fastify';
import { hasZodFastifySchemaValidationErrors } from 'fastify-type-provider-zod';
import { ERRORS, errorCodeOf } from '../api/errors.ts';

/** What every refused request answers with. Both values travel with a conflict, so that nothing typed is lost. */
interface Refusal {
  readonly error: { readonly code: string; readonly message: string; readonly path?: string };
  readonly theirs?: unknown;
  readonly yours?: unknown;
  readonly version?: number | undefined;
}

export function installErrorHandler(app: FastifyInstance): void {
  app.setErrorHandler((error: FastifyError, req, reply) => {
    const { status, body } = toRefusal(error);
    if (status >= 500) req.log.error(error);
    return reply.code(status).send(body);
  });
}

function toRefusal(error: FastifyError): { status: number; body: Refusal } {
  if (hasZodFastifySchemaValidationErrors(error)) {
    const issue = error.validation[0];
    const path = issue?.instancePath.split('/').filter(Boolean).join('.') ?? '';
    return {
      status: 400,
      body: { error: { code: 'INPUT_INVALID', message: `${path || 'input'}: ${issue?.message ?? 'not valid'}`, path } },
    };
  }
  const code = errorCodeOf(error);
  if (code !== undefined) {
    const conflict = code === 'CONFLICT' ? conflictParts(error) : {};
    const path = 'path' in error && typeof error.path === 'string' ? { path: error.path } : {};
    return { status: ERRORS[code].status, body: { error: { code, message: error.message, ...path }, ...conflict } };
  }
  if (isStoreFull(error)) {
    const message = 'the disk is full. Make room on it; what you typed stays on the page';
    return { status: ERRORS.STORE_FULL.status, body: { error: { code: 'STORE_FULL', message } } };
  }
  // Fastify's own refusals: malformed JSON, too large, unsupported type.
  if (error.statusCode !== undefined && error.statusCode < 500) {
    return { status: error.statusCode, body: { error: { code: 'INPUT_INVALID', message: error.message } } };
  }
  return {
    status: 500,
    body: { error: { code: 'INTERNAL', message: 'Something went wrong on our side. What you typed is still on the page.' } },
  };
}

/** By SQLite's name, by PostgreSQL's (disk_full), and by the file's own. */
const FULL = ['SQLITE_FULL', '53100', 'ENOSPC'];
const isStoreFull = (error: { readonly code?: unknown }) => typeof error.code === 'string' && FULL.includes(error.code);

/** A field's conflict carries the saved field; the page needs its value and its version. */
function conflictParts(error: Error): Pick<Refusal, 'theirs' | 'yours' | 'version'> {
  const current: unknown = Reflect.get(error, 'current');
  const yours: unknown = Reflect.get(error, 'yours');
  if (typeof current !== 'object' || current === null || !('version' in current) || typeof current.version !== 'number')
    return { theirs: current, yours };
  const theirs = 'value' in current ? current.value : current;
  return { theirs, yours, version: current.version };
}
