import fc from 'fast-check';
import { expect, test } from 'vitest';
import { draftDigest } from './draftDigest.ts';

const drafts = fc.uniqueArray(fc.record({ path: fc.string(), version: fc.integer({ min: 1, max: 9 }) }), { selector: ({ path }) => path });

test('the same fields give the same digest in any order, and any other draft another one', () => {
  fc.assert(
    fc.property(drafts, drafts, (one, two) => {
      expect(draftDigest([...one].reverse())).toBe(draftDigest(one));
      const text = (draft: typeof one) => JSON.stringify(draft.map(({ path, version }) => [path, version]).sort());
      expect(draftDigest(one) === draftDigest(two)).toBe(text(one) === text(two));
    }),
  );
});

test('paths cannot run into one another', () => {
  expect(draftDigest([{ path: 'a",1]\n["b', version: 1 }])).not.toBe(
    draftDigest([
      { path: 'a', version: 1 },
      { path: 'b', version: 1 },
    ]),
  );
});
