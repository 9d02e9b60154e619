import { chanceFrom } from '../content/demo/chance.ts';
import { addDays } from '../content/demo/days.ts';
import { type DemoControl, demoPlan, drawControls } from '../content/demo/drawControls.ts';
import { type DemoStudy, drawDaysStudy, drawHandsStudy, drawLotStudy } from '../content/demo/drawStudies.ts';
import { utcOf } from '../content/demo/londonTime.ts';
import { DAYS_SINCE_LOT_EXPIRED, DEMO_METER } from '../content/demo/practice.ts';
import { readingNoise } from '../content/readingNoise.ts';
import { reportOf } from '../core/checks/reportOf.ts';
import type { TrainingStep } from '../core/checks/training.ts';
import { listStudyReadings } from '../store/read/checks.ts';
import type { ActionContext } from './context.ts';
import { importStudyReadings } from './importStudyReadings.ts';
import type { DemoTeam } from './makeDemoVisit.ts';
import { planStudy } from './planStudy.ts';
import { questionReadings } from './questionReadings.ts';
import { recordControl } from './recordControl.ts';
import { recordMeterCheck } from './recordMeterCheck.ts';
import { recordTraining } from './recordTraining.ts';
import { reportStudy } from './reportStudy.ts';
import { requireStudy } from './requireStudy.ts';
import { requireMeter } from './requireSupplies.ts';
import { saveControlPlan } from './saveControlPlan.ts';
import { saveMeterCheckPlan } from './saveMeterCheckPlan.ts';
import { writeCsv } from './writeCsv.ts';

/** One thing to write, at the time at which it would have happened. */
export interface DemoCheckStep {
  readonly at: string;
  readonly make: (team: DemoTeam) => Promise<unknown>;
}

/** Of the invented practice: two years of controls, its studies, and who was trained when. */
export function listDemoChecks(seed: number, today: string): readonly DemoCheckStep[] {
  const chance = chanceFrom(seed + 77);
  const controls = drawControls(today, chance);
  const hands = drawHandsStudy(seed, chance);
  // A chance of its own: with this one the target that it carries lies near what the later controls are drawn from.
  const lots = drawLotStudy(seed, chanceFrom(seed + 84));
  const on = (day: number, time: string) => utcOf(addDays(today, day), time);
  return [
    { at: controls[9]?.at ?? on(-650, '08:15'), make: savePlan },
    ...controls.map((control) => ({ at: control.at, make: (team: DemoTeam) => takeControl(team, control) })),
    {
      at: on(-DAYS_SINCE_LOT_EXPIRED - 2, '12:30'),
      make: (team) => makeStudy(team, today, -DAYS_SINCE_LOT_EXPIRED - 2, lots),
    },
    { at: on(-40, '12:30'), make: (team) => makeHands(team, today, -40, hands) },
    ...listDaysStudy(drawDaysStudy(seed, chance), today),
    ...listTraining(today),
    ...listMeterChecks(today),
  ];
}

async function takeControl(team: DemoTeam, { by, at, lotId, rlu, note, did }: DemoControl): Promise<void> {
  const { resolved } = await recordControl(team.of(by), { meterId: DEMO_METER, lotId, rlu, takenAt: at, note, ...(did && { did }) });
  for (const { outIds } of resolved) await leaveReadings(team, outIds[0]);
}

/** The lead has looked at the readings between the last control in line and the one that was out. */
async function leaveReadings({ lead }: DemoTeam, outId: string | undefined): Promise<void> {
  if (outId === undefined) return;
  const reason = 'The new bottle was in line at once, so it was the solution and not the meter';
  await questionReadings(lead, { outId, decision: 'left', reason, expectedVersion: 0 });
}

async function savePlan({ lead }: DemoTeam): Promise<void> {
  await saveControlPlan(lead, { plan: demoPlan, expectedVersion: 0 });
}

const MINUTE_MS = 60_000;

/** The study of days goes on: planned some weeks ago, its readings so far typed in yesterday. */
function listDaysStudy(study: DemoStudy, today: string): readonly DemoCheckStep[] {
  const { readings: _, ...plan } = study;
  const day = -20;
  let studyId = '';
  return [
    {
      at: utcOf(addDays(today, day), '10:30'),
      make: async ({ lead }) => {
        studyId = (await planStudy(lead, plan)).id;
      },
    },
    { at: utcOf(addDays(today, -1), '16:40'), make: ({ lead }) => takeReadings(lead, studyId, study, { today, day }) },
  ];
}

/** Planned, taken whole and reported on one day. @returns its id */
async function makeStudy({ lead }: DemoTeam, today: string, day: number, study: DemoStudy): Promise<string> {
  const { readings: _, ...plan } = study;
  const { id: studyId } = await planStudy(lead, plan);
  await takeReadings(lead, studyId, study, { today, day });
  const { body, version } = await requireStudy(lead.db, lead.scope, studyId);
  const meter = await requireMeter(lead.db, lead.scope, study.meterId);
  const outcome = reportOf(body, await listStudyReadings(lead.db, lead.scope, studyId), meter, readingNoise);
  if (!outcome.ok) throw new RangeError(`the demonstration's study: ${outcome.says}`);
  await reportStudy(lead, { studyId, expectedVersion: version, onDate: addDays(today, day), report: outcome.report });
  return studyId;
}

interface StudyDay {
  readonly today: string;
  /** On which the study began, before today. */
  readonly day: number;
}

async function takeReadings(lead: ActionContext, studyId: string, { readings }: DemoStudy, { today, day }: StudyDay): Promise<void> {
  const lines = readings.map(({ run, rlu, day: later }) => {
    const at = Date.parse(utcOf(addDays(today, day + later), '11:00')) + run * MINUTE_MS;
    return [run + 1, rlu, new Date(at).toISOString()];
  });
  const { problems } = await importStudyReadings(lead, { studyId, text: writeCsv([['run', 'rlu', 'taken at'], ...lines]) });
  if (problems[0]) throw new RangeError(`the demonstration's study: line ${problems[0].line}: ${problems[0].message}`);
}

/** Whoever took part in the study of hands is qualified by it. */
async function makeHands(team: DemoTeam, today: string, day: number, study: DemoStudy): Promise<void> {
  const studyId = await makeStudy(team, today, day, study);
  const onDate = addDays(today, day);
  for (const id of ['ines', 'una']) await train(team, id, onDate, { kind: 'qualified-by-study', studyId }, addDays(today, day + 365));
}

async function train({ lead, of }: DemoTeam, id: string, onDate: string, step: TrainingStep, dueOn?: string): Promise<void> {
  await recordTraining(lead, { memberId: of(id).actor.memberId, step, onDate, ...(dueOn === undefined ? {} : { dueOn }) });
}

/** Invented: the limits on the check device of the demo meter, and what it showed every quarter; once with a lens that was not clean. */
const DEVICE = { everyDays: 91, limits: { lowRlu: 900, highRlu: 1_100 } } as const;

function listMeterChecks(today: string): readonly DemoCheckStep[] {
  const shown: readonly (readonly [by: string, day: number, time: string, rlu: number, words?: string])[] = [
    ['una', -340, '12:20', 1_012],
    ['tomas', -249, '12:20', 871],
    ['tomas', -249, '12:35', 1_004, 'lens wiped first'],
    ['ines', -158, '12:20', 1_027],
    ['una', -67, '12:20', 995],
  ];
  const plan = { meterId: DEMO_METER, ...DEVICE };
  return [
    { at: utcOf(addDays(today, -340), '12:10'), make: ({ lead }) => saveMeterCheckPlan(lead, { plan, expectedVersion: 0 }) },
    ...shown.map(([by, day, time, rlu, words]) => {
      const at = utcOf(addDays(today, day), time);
      const check = { meterId: DEMO_METER, checkedBy: 'device', rlu, takenAt: at, temperatureDegC: 21, ...(words && { words }) } as const;
      return { at, make: ({ of }: DemoTeam) => recordMeterCheck(of(by), check) };
    }),
  ];
}

const WITH_INES: TrainingStep = { kind: 'supervised-swab', with: 'Ines Marrow' };

/** Who did what, days before today; Tomas is asked for another swab, Wim is still learning, Dr. Ahlgren has read the card. */
function listTraining(today: string): readonly DemoCheckStep[] {
  const steps: readonly (readonly [id: string, day: number, step: TrainingStep, dueDay?: number])[] = [
    ['ines', -727, { kind: 'read-card' }],
    ['ines', -726, { kind: 'qualified-by-lead', reason: 'Wrote the card, and swabbed for three years before' }],
    ['tomas', -720, { kind: 'read-card' }],
    ['tomas', -718, { kind: 'watched' }],
    ['tomas', -715, WITH_INES],
    ['tomas', -712, WITH_INES],
    ['tomas', -708, WITH_INES],
    ['tomas', -377, { kind: 'qualified-by-lead', reason: 'Three swabs along the path, none repeated' }, -12],
    ['una', -600, { kind: 'read-card' }],
    ['una', -598, WITH_INES],
    ['wim', -33, { kind: 'read-card' }],
    ['wim', -26, { kind: 'watched' }],
    ['wim', -9, WITH_INES],
    ['ahlgren', -300, { kind: 'read-card' }],
  ];
  return steps.map(([id, day, step, dueDay]) => ({
    at: utcOf(addDays(today, day), '13:10'),
    make: (team) => train(team, id, addDays(today, day), step, dueDay === undefined ? undefined : addDays(today, dueDay)),
  }));
}
