import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { applyField } from '../../../core/visit/applyField.ts';
import type { VisitInput } from '../../../core/visit/types.ts';
import { addToStep, readField, type UndoStep, undoStep } from './undoSteps.ts';

const CARRIED = { how: 'carried', value: 2, askedOn: '2026-05-09' } as const;
const start = {
  visit: { onDate: '2026-11-25', answers: { snacks: CARRIED }, findings: [{ tooth: '11', kind: 'restoration', isNew: false }] },
} as unknown as VisitInput;
const PATHS = ['answers.snacks', 'answers.water', 'findings', 'agreed', 'nextOn', 'reading'] as const;

/** The draft as the server keeps it, beside the page: what is saved, and what both show of it. */
function player() {
  let input = start;
  const saved = new Map<string, unknown>();
  const steps: UndoStep[] = [];
  const save = (path: string, value: unknown) => {
    if (value === null) saved.delete(path);
    else saved.set(path, value);
  };
  return {
    input: () => input,
    saved,
    act: (puts: readonly { path: string; value: unknown }[]) => {
      let step: UndoStep = [];
      for (const { path, value } of puts) {
        step = addToStep(step, { path, before: readField(input, path), wasSaved: saved.has(path), after: value });
        input = applyField(input, path, value);
        save(path, value);
      }
      steps.push(step);
    },
    undo: () => {
      const step = steps.pop();
      if (!step) return;
      const undone = undoStep(input, step);
      if ('changedSince' in undone) throw new Error(`changed since: ${undone.changedSince}`);
      input = undone.input;
      for (const { path, value } of undone.saves) save(path, value);
    },
  };
}

/** Half of the values are ones that a comparison or a missing field could trip over. */
const value = fc.oneof(
  fc.constantFrom<unknown>([], {}, false, 0, '', CARRIED),
  fc.jsonValue().filter((v) => v !== null),
);
const put = fc.record({ path: fc.constantFrom(...PATHS), value });
const action = fc.oneof(
  fc.constantFrom<'undo' | { path: string; value: unknown }[]>('undo', 'undo', [{ path: 'answers.snacks', value: CARRIED }]),
  fc.array(put, { minLength: 1, maxLength: 4 }),
);

test('any actions, undone one by one, end in what was there before, on the page and in what is saved', () => {
  fc.assert(
    fc.property(fc.array(action, { maxLength: 20 }), (actions) => {
      const run = player();
      const states: string[] = [];
      const stateNow = () => JSON.stringify([run.input(), [...run.saved].sort(([a], [b]) => (a < b ? -1 : 1))]);
      for (const one of actions) {
        if (one === 'undo') {
          run.undo();
          const before = states.pop();
          if (before !== undefined) expect(JSON.parse(stateNow())).toEqual(JSON.parse(before));
        } else {
          states.push(stateNow());
          run.act(one);
        }
      }
      while (states.length > 0) {
        run.undo();
        expect(JSON.parse(stateNow())).toEqual(JSON.parse(states.pop() ?? ''));
      }
      expect(run.saved.size).toBe(0);
      expect(run.input()).toEqual(start);
    }),
    { numRuns: 500, seed: 20_261_125 },
  );
});

describe('a step back', () => {
  test('brings the carried answer back and takes the saved one out', () => {
    const step = [{ path: 'answers.snacks', before: CARRIED, wasSaved: false, after: { how: 'asked', value: 4 } }];
    const input = applyField(start, 'answers.snacks', { how: 'asked', value: 4 });
    expect(undoStep(input, step)).toMatchObject({
      input: { visit: { answers: { snacks: CARRIED } } },
      saves: [{ path: 'answers.snacks', value: null }],
    });
  });

  test("does not cross somebody else's save", () => {
    const step = [{ path: 'answers.snacks', before: CARRIED, wasSaved: false, after: { how: 'asked', value: 4 } }];
    const theirs = applyField(start, 'answers.snacks', { how: 'asked', value: 7 });
    expect(undoStep(theirs, step)).toEqual({ changedSince: 'answers.snacks' });
  });
});
