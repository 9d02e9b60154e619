import { expect, test } from 'vitest';
import { sayEffect } from '../core/regimen/sayEffect.ts';
import { agents } from './agents.ts';

const effects = agents.flatMap((a) => a.evidence.flatMap(({ effect, source }) => (effect ? [{ ...effect, source }] : [])));

// Prevented fractions and ratios as read, with 95 % interval; `null`: no figure that may be used. No tolerance.
test.each([
  ['EV_TP10', 0.23, [0.19, 0.27], 'read'],
  ['EV_TP10-2800', 0.36, [0.27, 0.44], 'read'],
  ['EV_TP03', 0.24, [0.21, 0.28], 'read'],
  ['EV_TP19', -0.28, [-0.32, -0.25], 'memory'],
  ['EV_FV13', 0.43, [0.3, 0.57], 'mixed'],
  ['EV_FVPRE', 0.88, [0.81, 0.95], 'read'],
  ['EV_GEL02', 0.28, [0.19, 0.37], 'read'],
  ['EV_COMBO', 0.1, [0.02, 0.17], 'memory'],
  ['EV_XYL', 0.13, [0.08, 0.18], 'read'],
  ['EV_SFG', 0.28, [0.07, 0.48], 'read'],
  ['EV_SEAL', 0.12, [0.08, 0.19], 'memory'],
  ['EV_PVPI_RCT', 0.5, [0.31, 0.81], 'read'],
  ['EV_ROOT19', null, undefined, 'read'],
  ['EV_CHX15', null, undefined, 'mixed'],
] as const)('%s', (id, estimate, interval, status) => {
  const found = effects.filter((e) => e.id === id);
  expect(found.length).toBeGreaterThan(0);
  for (const e of found) expect([e.estimate, e.interval, e.source.status]).toEqual([estimate, interval, status]);
});

test('every interval holds its estimate, and every share is a share', () => {
  for (const { id, estimate, interval, measure } of effects) {
    if (estimate === null) continue;
    if (interval) expect([id, interval[0] <= estimate && estimate <= interval[1]]).toEqual([id, true]);
    if (/fraction|lower|share|risk-difference/.test(measure)) expect([id, Math.abs(estimate) <= 1]).toEqual([id, true]);
  }
});

test('nobody is promised prevention by these six', () => {
  const promised = agents.filter((a) => a.noPrevention !== undefined).map((a) => a.id);
  expect(promised.sort()).toEqual(['ARGININE', 'BICARB', 'HAP', 'NAOCL', 'SDF38', 'XYLITOL']);
});

test('a figure is said with its interval, its people and its certainty', () => {
  const effect = effects.find((e) => e.id === 'EV_TP03');
  expect(effect && sayEffect(effect)).toBe(
    'Prevented fraction 24 % (21 to 28): fluoride paste against placebo, surfaces of permanent teeth, 42,300 children, 70 trials, certainty high.',
  );
});

test('on roots daily 5,000 ppm paste stands before silver fluoride', () => {
  const paste = agents.find((a) => a.id === 'F_PASTE_5000');
  expect(paste?.evidence.some((e) => e.position?.rating === 'in-favour' && /roots? lesions/i.test(e.says) && /silver/.test(e.says))).toBe(
    true,
  );
});
