import { expect, test } from 'vitest';
import { sayEffect } from '../core/regimen/sayEffect.ts';
import { agents } from './agents.ts';
import { benefits } from './benefits.ts';
import { disagreements } from './disagreements.ts';

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

test('and none of the six has a figure from which a number needed to treat could be worked out', () => {
  const withFigure = new Set(benefits.rows.map((r) => r.agentId));
  expect(agents.filter((a) => a.noPrevention !== undefined && withFigure.has(a.id)).map((a) => a.id)).toEqual([]);
});

test('what is never proposed by itself, only by a choice, each with a source', () => {
  const byChoice = agents.filter((a) => a.byChoiceOnly !== undefined).map((a) => a.id);
  expect(byChoice.sort()).toEqual(['CA_PRERINSE', 'CHX_RINSE', 'CHX_VARNISH', 'F_SUPP', 'NAOCL', 'PVPI', 'SDF38']);
});

// Minutes with nothing to eat, drink or brush afterwards, US, UK, place not known. rinseLabels, smpcHighFluoride (2,800 ppm) and
// varnishMonographs read, the others from memory. No tolerance.
test.each([
  ['F_PASTE_2800', 30, 30, 30, 'read'],
  ['F_PASTE_5000', 30, 30, 30, 'memory'],
  ['F_RINSE_005', 30, 15, 30, 'read'],
  ['F_RINSE_02', 30, 15, 30, 'mixed'],
  ['F_GEL_APF', 30, 30, 30, 'memory'],
  ['F_GEL_SNF2', 30, 30, 30, 'memory'],
  ['F_VARNISH', 240, 240, 240, 'read'],
] as const)('%s: wait %i, %i, %i minutes, %s', (id, US, UK, unknown, status) => {
  expect(agents.find((a) => a.id === id)?.waitMinutes).toMatchObject({ US, UK, unknown, source: { status } });
});

test('no other agent has a waiting time without standing above', () => {
  expect(agents.filter((a) => a.waitMinutes !== undefined)).toHaveLength(7);
});

// Which reviews speak of which agent, where one speaks of several.
test.each([
  ['EV_COMBO', ['F_PASTE_STD', 'F_RINSE_005', 'F_VARNISH']],
  ['EV_COMPARE', ['F_PASTE_STD', 'F_RINSE_005']],
  ['EV_CHX15', ['CHX_RINSE', 'CHX_VARNISH']],
] as const)('%s stands with each agent that it is about', (id, agentIds) => {
  expect(agents.filter((a) => a.evidence.some((e) => e.effect?.id === id)).map((a) => a.id)).toEqual(agentIds);
});

test('the comparison of 22 treatments is told with its trials, people and certainty wherever it stands', () => {
  const lines = agents.flatMap((a) => a.evidence.filter((e) => e.source.key === 'urquhart2019').map((e) => [a.id, e.says] as const));
  expect(lines.map(([id]) => id)).toEqual(['F_PASTE_5000', 'F_VARNISH', 'SEALANT']);
  for (const [, line] of lines) expect(line).toMatch(/44 trials, 7,378 people, certainty low to moderate/);
});

test('the sides of a disagreement say what their sources say', () => {
  const sideOf = (id: string, side: string) => disagreements.find((d) => d.id === id)?.positions.find((p) => p.id === side);
  // arginineTrials (read): 1.5 % no difference, 8 % 26 % fewer surfaces, in one trial.
  expect(sideOf('arginine', 'by-choice')?.says).toMatch(/1\.5 %.*26 % fewer.*8 %/);
  // The US rule for anticaries products says nothing of emptying the stomach; the table of a review does.
  expect(sideOf('after-swallowing', 'older')?.sources.map((s) => s.key)).toEqual(['swallowedReview']);
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
