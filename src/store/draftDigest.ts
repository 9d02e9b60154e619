import { createHash } from 'node:crypto';

/**
 * Names one state of a visit's draft. What was computed from a draft carries its digest, so that closing can tell that nobody has
 * saved another answer in the meantime.
 */
export function draftDigest(fields: readonly { readonly path: string; readonly version: number }[]): string {
  const lines = fields.map(({ path, version }) => JSON.stringify([path, version])).sort();
  return createHash('sha256').update(lines.join('\n')).digest('hex');
}
