import type { StudyDesign, StudyRun } from '../../core/checks/study.ts';
import type { Chance } from './chance.ts';
import { DEMO_LOT_STEP_LN } from './drawControls.ts';
import { demoMembers } from './members.ts';
import { DEMO_LOTS, DEMO_METER } from './practice.ts';

export interface DemoStudy {
  readonly kind: 'hands' | 'new-lot' | 'paired-days';
  readonly meterId: string;
  readonly lotIds: readonly string[];
  readonly design: StudyDesign;
  readonly runs: readonly StudyRun[];
  /** Of each swab taken so far, with the days since the study began. */
  readonly readings: readonly { readonly run: number; readonly rlu: number; readonly day: number }[];
}

/** Invented, on the logarithm: one swab after another, how far off three pairs of hands are, between days of one person. */
const SD_SWAB = 0.13;
const SHIFT_OF_HANDS = [-0.1, 0.02, 0.12];
const SD_DAYS = 0.34;
const LOWEST_LEVEL_RLU = 800;

const nameOf = (id: string) => demoMembers.find((member) => member.id === id)?.name ?? id;

/** In a drawn order, numbered as they are taken. */
function shuffled(runs: readonly Omit<StudyRun, 'index'>[], chance: Chance): readonly StudyRun[] {
  const left = [...runs];
  const order = runs.flatMap(() => left.splice(chance.whole(0, left.length - 1), 1));
  return order.map((run, index) => ({ index, ...run }));
}

/** Three pairs of hands on five strengths of a solution, twice each. */
export function drawHandsStudy(seed: number, chance: Chance): DemoStudy {
  const operators = ['ines', 'tomas', 'una'].map(nameOf);
  const shift = new Map(operators.map((name, i) => [name, SHIFT_OF_HANDS[i] ?? 0]));
  const parts = ['A', 'B', 'C', 'D', 'E'].map((letter) => `Solution ${letter}`);
  const planned = parts.flatMap((part) => operators.flatMap((operator) => [1, 2].map((replicate) => ({ part, operator, replicate }))));
  const runs = shuffled(planned, chance);
  const readings = runs.map(({ index, part = '', operator = '' }) => {
    const level = Math.log(LOWEST_LEVEL_RLU) + 0.8 * parts.indexOf(part);
    return { run: index, rlu: Math.round(Math.exp(level + (shift.get(operator) ?? 0) + SD_SWAB * chance.normal())), day: 0 };
  });
  const design: StudyDesign = { medium: 'atp-solution', parts: parts.length, operators, replicates: 2, seed };
  return { kind: 'hands', meterId: DEMO_METER, lotIds: [DEMO_LOTS.inUse], design, runs, readings };
}

/** So many that their interval can lie within 20 %: with eight it cannot be said whether two lots read alike. */
const LOT_PAIRS = 24;

/** Solutions, each swabbed with the lot in use and with the next one. */
export function drawLotStudy(seed: number, chance: Chance): DemoStudy {
  const lotIds = [DEMO_LOTS.expired, DEMO_LOTS.inUse];
  const parts = Array.from({ length: LOT_PAIRS }, (_, i) => `Solution ${i + 1}`);
  const runs = shuffled(
    parts.flatMap((part) => lotIds.map((lotId) => ({ part, lotId, operator: nameOf('tomas'), replicate: 1 }))),
    chance,
  );
  const readings = runs.map(({ index, part = '', lotId }) => {
    const level = Math.log(LOWEST_LEVEL_RLU) + 0.15 * parts.indexOf(part) + (lotId === DEMO_LOTS.inUse ? DEMO_LOT_STEP_LN : 0);
    return { run: index, rlu: Math.round(Math.exp(level + SD_SWAB * chance.normal())), day: 0 };
  });
  const design: StudyDesign = { medium: 'atp-solution', parts: parts.length, operators: [nameOf('tomas')], replicates: 1, seed };
  return { kind: 'new-lot', meterId: DEMO_METER, lotIds, design, runs, readings };
}

const PEOPLE = 12;
/** Who came on both days so far, and who on the first. */
const PAIRS_SO_FAR = 4;
const FIRSTS_SO_FAR = 7;

/** People who agreed, swabbed on two days; it goes on. They stand under numbers, without a name. */
export function drawDaysStudy(seed: number, chance: Chance): DemoStudy {
  const people = Array.from({ length: PEOPLE }, (_, i) => `Person ${i + 1}`);
  const planned = people.flatMap((part) => [1, 2].map((replicate) => ({ part, operator: nameOf('una'), replicate })));
  const runs = planned.map((run, index) => ({ index, ...run }));
  const taken = runs
    .slice(0, 2 * PAIRS_SO_FAR)
    .concat(runs.slice(2 * PAIRS_SO_FAR, 2 * FIRSTS_SO_FAR).filter(({ index }) => index % 2 === 0));
  const levels = people.map(() => Math.log(3_000) + 0.7 * chance.normal());
  const readings = taken.map(({ index, replicate }) => {
    const level = levels[Math.floor(index / 2)] ?? 0;
    const rlu = Math.round(Math.exp(level + Math.hypot(SD_SWAB, SD_DAYS) * chance.normal()));
    return { run: index, rlu: Math.min(Math.max(rlu, 60), 50_000), day: Math.floor(index / 4) + 3 * (replicate - 1) };
  });
  const design: StudyDesign = { medium: 'people', parts: PEOPLE, operators: [nameOf('una')], replicates: 2, seed };
  return { kind: 'paired-days', meterId: DEMO_METER, lotIds: [DEMO_LOTS.inUse], design, runs, readings };
}
