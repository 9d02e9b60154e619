import type { ActionContext } from '../../src/actions/context.ts';
import type { PlanStudyInput } from '../../src/actions/planStudy.ts';
import { recordControl } from '../../src/actions/recordControl.ts';
import type { ControlPlan } from '../../src/core/checks/control.ts';
import { MULTI_RULES } from '../../src/core/stats/multiRules.ts';

/** Invented: controls of about 3,000 RLU, with a spread of 10 %. */
export const PLAN: ControlPlan = {
  meterId: 'meter-a',
  every: { kind: 'weekly-and-new-lot' },
  rules: MULTI_RULES,
  solution: { name: 'ATP solution', lot: 'S-1' },
  targets: [{ lotId: 'lot-1', meanLn: Math.log(3000), sdLn: 0.1, count: 12, from: 'comparison' }],
};
export const IN_LINE = 3000;
export const FAR_TOO_HIGH = 4200;

/** Two parts by two hands, twice each. */
export const STUDY: PlanStudyInput = {
  kind: 'hands',
  meterId: 'meter-a',
  lotIds: ['lot-1'],
  design: { medium: 'atp-solution', parts: 2, operators: ['Member assistant', 'Member hygienist'], replicates: 2, seed: 7 },
  runs: ['Member assistant', 'Member hygienist'].flatMap((operator, o) =>
    ['A', 'B'].flatMap((part, p) => [1, 2].map((replicate, r) => ({ index: 4 * o + 2 * p + r, part, operator, replicate }))),
  ),
};

/** Two people who agreed, swabbed on two days. */
export const DAYS_STUDY: PlanStudyInput = {
  ...STUDY,
  kind: 'paired-days',
  design: { ...STUDY.design, medium: 'people' },
  runs: ['Person 1', 'Person 2', 'Person 1', 'Person 2'].map((part, index) => ({ index, part, replicate: index < 2 ? 1 : 2 })),
};

export const control = (context: ActionContext, rlu: number, takenAt?: string) =>
  recordControl(context, { meterId: 'meter-a', lotId: 'lot-1', rlu, ...(takenAt === undefined ? {} : { takenAt }) });
