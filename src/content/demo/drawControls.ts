import type { ControlNote, ControlPlan, StopDone } from '../../core/checks/control.ts';
import { MULTI_RULES } from '../../core/stats/multiRules.ts';
import type { Chance } from './chance.ts';
import { addDays } from './days.ts';
import { utcOf } from './londonTime.ts';
import { DAYS_SINCE_LOT_EXPIRED, DEMO_LOTS, DEMO_METER } from './practice.ts';

/** Invented: what the control solution reads with the old lot, and how far its readings scatter, on the logarithm. */
export const DEMO_CONTROL = { meanLn: Math.log(2_900), sdLn: 0.12 } as const;
/** How much higher the lot in use reads than the old one, as a difference of logarithms. */
export const DEMO_LOT_STEP_LN = 0.05;
export const DEMO_SOLUTION = 'ATP control, 1 in 10';

const FIRST_DAY = -728;
const WEEK_DAYS = 7;
const TAKERS = ['tomas', 'una', 'ines'] as const;
const MOST_SD = 1.9;
/** A solution that stood in the sun: its readings climb, and the fourth on one side is noticed. */
const DRIFT_FROM_WEEK = 62;
const DRIFT_SD = [-0.4, 1.2, 1.5, 1.8, 2.3] as const;

const DID: StopDone = { answer: 'new-solution', note: 'The old bottle had stood in the window' };

export interface DemoControl {
  /** UTC. */
  readonly at: string;
  readonly by: (typeof TAKERS)[number];
  readonly lotId: string;
  readonly rlu: number;
  readonly note: ControlNote;
  /** What was done before it, where the one before was out of limits. */
  readonly did?: StopDone;
}

/** Two years of weekly controls on the demo meter, with one drift that was noticed and put right the same morning. */
export function drawControls(today: string, chance: Chance): readonly DemoControl[] {
  const changeDay = -DAYS_SINCE_LOT_EXPIRED;
  const weeks = Math.floor(-FIRST_DAY / WEEK_DAYS);
  let last: readonly number[] = [];
  return Array.from({ length: weeks }, (_, week) => week).flatMap((week): DemoControl[] => {
    const day = FIRST_DAY + week * WEEK_DAYS;
    const drift = DRIFT_SD[week - DRIFT_FROM_WEEK];
    const z = drift ?? drawQuiet(last, chance);
    last = [...last.slice(-1), z];
    const lotId = day <= changeDay ? DEMO_LOTS.expired : DEMO_LOTS.inUse;
    const by = TAKERS[week % TAKERS.length] ?? 'tomas';
    const of = { by, lotId, note: noteOf(week, chance) };
    const at = (time: string) => utcOf(addDays(today, day), time);
    const rlu = (sd: number) => rluOf(lotId, sd);
    const first: DemoControl = { ...of, at: at('08:15'), rlu: rlu(z) };
    if (week !== DRIFT_FROM_WEEK + DRIFT_SD.length - 1) return [first];
    return [first, { ...of, at: at('08:40'), rlu: rlu(-0.3), note: { ...of.note, solution: solutionOf(week, ' new bottle') }, did: DID }];
  });
}

/** Within the usual band, and never three times on one side: without a drift no rule fires. */
function drawQuiet(last: readonly number[], chance: Chance): number {
  const drawn = 0.85 * chance.normal();
  const size = Math.min(Math.abs(drawn), MOST_SD);
  const sides = last.map(Math.sign);
  const [one, other] = sides;
  const side = one !== undefined && one === other ? -one : Math.sign(drawn) || 1;
  return side * size;
}

const rluOf = (lotId: string, z: number): number =>
  Math.round(Math.exp(DEMO_CONTROL.meanLn + (lotId === DEMO_LOTS.inUse ? DEMO_LOT_STEP_LN : 0) + DEMO_CONTROL.sdLn * z));

const solutionOf = (week: number, more = '') => ({ name: DEMO_SOLUTION, lot: `C-${1 + Math.floor(week / 26)}${more}` });

function noteOf(week: number, chance: Chance): ControlNote {
  return { solution: solutionOf(week), temperatureDegC: chance.whole(19, 24), storage: 'fridge-then-room' };
}

/** The plan as it was begun; the lot in use gets its target when it is compared with the old one. */
export const demoPlan: ControlPlan = {
  meterId: DEMO_METER,
  every: { kind: 'weekly-and-new-lot' },
  rules: MULTI_RULES,
  solution: { name: DEMO_SOLUTION },
  swabPriceCents: 245,
  targets: [{ lotId: DEMO_LOTS.expired, ...DEMO_CONTROL, count: 10, from: 'first-controls' }],
};
