import type { SwabReading } from '../../core/reading/types.ts';
import type { Level } from '../../core/risk/types.ts';
import type { Answers } from '../../core/visit/answer.ts';
import type { DescribedDays } from '../../core/visit/describedDays.ts';
import type { Finding, Speaker, UsedSince } from '../../core/visit/types.ts';
import { readyDays } from '../readyDays.ts';
import { type Chance, chanceFrom } from './chance.ts';
import { drawAnswers } from './drawAnswers.ts';
import { type DemoAppointment, drawAppointments } from './drawAppointments.ts';
import { ageAt, drawFindings } from './drawFindings.ts';
import { drawLook } from './drawLook.ts';
import { drawReading } from './drawReading.ts';
import { type DemoReply, drawReplies, drawUses } from './drawReplies.ts';
import { utcOf } from './londonTime.ts';
import { type DemoGuardian, type DemoHome, type DemoName, demoNames } from './names.ts';
import { drawPastDecay, NO_PAST_DECAY, type PastDecay } from './pastDecay.ts';
import { type DemoProfile, drawProfile } from './profile.ts';

/** How the level was confirmed: as the practice's list proposed it, or a step away from it with a reason. */
export interface DemoConfirmation {
  readonly step: -1 | 0 | 1;
  readonly reason?: string | undefined;
}

export interface DemoVisit {
  readonly onDate: string;
  /** When the person sat down, ISO UTC. */
  readonly startedAt: string;
  /** Which hygienist saw the person, an id of `demoMembers`. */
  readonly by: 'ines' | 'una';
  readonly answers: Answers;
  readonly findings: readonly Finding[];
  readonly allExamined: boolean;
  readonly meterId: string;
  readonly reading: SwabReading;
  readonly confirmation: DemoConfirmation;
  /** Replies to the items of the plan, in its order. */
  readonly replies: readonly DemoReply[];
  /** What became of the items of the visit before, in their order; empty at the first. */
  readonly uses: readonly UsedSince[];
  readonly speaker: Speaker;
  /** In the person's own words; often nothing was said. */
  readonly goals: readonly string[];
  /** The day as it was told; seldom. Invented, like the person. */
  readonly acidDay?: DescribedDays | undefined;
  /** The dentist signed what waited for a signature. */
  readonly signs: boolean;
}

export interface DemoPermission {
  readonly given: boolean;
  /** The person, or who speaks for a child. */
  readonly by: string;
  /** ISO local date. */
  readonly on: string;
}

export type DemoPermissions = Readonly<Record<'care' | 'messages' | 'use-of-data', DemoPermission>>;

export interface DemoPerson {
  readonly name: string;
  readonly birthDate: string;
  readonly language: 'en' | 'es';
  /** "TQ-1042". */
  readonly chartNumber: string;
  readonly guardians: readonly DemoGuardian[];
  readonly homes: readonly DemoHome[];
  /** '' = asked, none needed; absent = nobody has asked. */
  readonly interpreter?: string | undefined;
  /** Absent for a person who is new. */
  readonly permissions?: DemoPermissions | undefined;
  /** What the level drew from, and what decay had done before the first visit: for tests of plausibility, never written to a store. */
  readonly drawnRisk: Level;
  readonly past: PastDecay;
  /** Oldest first, all before today, kept or not. */
  readonly appointments: readonly DemoAppointment[];
  readonly today?: DemoAppointment | undefined;
  /** Oldest first, all before today; empty for a person who is new. */
  readonly visits: readonly DemoVisit[];
}

const FIRST_CHART_NUMBER = 1_001;
/** Far from the seeds of the people themselves. */
const LOOK_SEED = 900_000_007;

/**
 * Eighty invented people with their visits of the last two years, the same for the same seed and day.
 * @param seed   whole number
 * @param today  ISO local date; every visit is before it
 */
export function buildDemoPeople(seed: number, today: string): readonly DemoPerson[] {
  return demoNames.map((name, i) => buildDemoPerson(name, i, { seed, today }));
}

/** @param place  0, 1, 2 ...: which of the people of this seed */
export function buildDemoPerson(
  demoName: DemoName,
  place: number,
  { seed, today }: { readonly seed: number; readonly today: string },
): DemoPerson {
  const chance = chanceFrom(seed * 100_003 + place);
  // A second row of draws: what comes from it leaves everything that comes from the first as it is.
  const apart = chanceFrom(seed * 100_003 + place + LOOK_SEED);
  const drawn = drawProfile(demoName, chance, today);
  const { name, ageYears, traits, guardians = [], homes = [], interpreter, todayAt, todayNote } = demoName;
  const appointments = traits.includes('never-seen') ? [] : drawAppointments(drawn, chance, today);
  const kept = appointments.filter(({ state }) => state === 'planned');
  const firstOn = appointments[0]?.onDate ?? today;
  const past = drawn.isToothless ? NO_PAST_DECAY : drawPastDecay(ageAt(drawn, firstOn), drawn.pastRank, chance);
  return {
    name,
    birthDate: drawn.birthDate,
    language: traits.includes('spanish') ? 'es' : 'en',
    chartNumber: `TQ-${FIRST_CHART_NUMBER + place}`,
    guardians,
    homes,
    interpreter: interpreter ?? (appointments[0] && apart.happens(ASKED_ABOUT_INTERPRETER) ? '' : undefined),
    permissions: appointments[0] && drawPermissions(guardians[0]?.name ?? name, appointments[0].onDate, chance),
    drawnRisk: drawn.risk,
    past,
    appointments,
    today: todayAt === undefined ? undefined : { onDate: today, atTime: todayAt, state: 'planned', note: todayNote },
    visits: drawVisits(
      { profile: { ...drawn, past }, demoName, today, isWorn: apart.happens(ageYears / WORN_AT_YEARS), apart },
      kept,
      chance,
    ),
  };
}

/** Assumed: the front desk forgets a few. */
const ASKED_ABOUT_INTERPRETER = 0.9;
/** Wear from grinding or brushing comes with the years; assumed, so that it is about half at 75. */
const WORN_AT_YEARS = 150;

function drawPermissions(by: string, on: string, chance: Chance): DemoPermissions {
  const given = (share: number): DemoPermission => ({ given: chance.happens(share), by, on });
  return { care: given(1), messages: given(0.8), 'use-of-data': given(0.6) };
}

interface VisitPlace {
  readonly profile: DemoProfile;
  readonly demoName: DemoName;
  readonly appointment: DemoAppointment;
  readonly before: DemoVisit | undefined;
  readonly isLast: boolean;
  readonly today: string;
  readonly isWorn: boolean;
  readonly apart: Chance;
}

function drawVisits(
  place: Pick<VisitPlace, 'profile' | 'demoName' | 'today' | 'isWorn' | 'apart'>,
  kept: readonly DemoAppointment[],
  chance: Chance,
): readonly DemoVisit[] {
  const visits: DemoVisit[] = [];
  for (const [i, appointment] of kept.entries()) {
    visits.push(drawVisit({ ...place, appointment, before: visits.at(-1), isLast: i === kept.length - 1 }, chance));
  }
  return visits;
}

const DAY_MS = 86_400_000;

function drawVisit({ profile, demoName, appointment, before, isLast, today, isWorn, apart }: VisitPlace, chance: Chance): DemoVisit {
  const { onDate, atTime } = appointment;
  const startedAt = utcOf(onDate, atTime);
  const since = before && { daysSince: Math.round((Date.parse(onDate) - Date.parse(before.onDate)) / DAY_MS) };
  const visit = { profile, onDate, earlier: before?.findings ?? [], ...since };
  const findings = drawFindings(visit, chance);
  return {
    onDate,
    startedAt,
    by: chance.happens(0.62) ? 'ines' : 'una',
    answers: {
      ...drawAnswers({ ...visit, findings }, chance),
      ...drawLook({ profile, isWorn, onDate, findings, before: before?.answers }, apart),
    },
    findings,
    allExamined: true,
    ...drawReading({ profile, startedAt, today }, chance),
    confirmation: drawConfirmation(!before || findings.some(({ isNew }) => isNew), chance),
    replies: drawReplies(chance),
    uses: before ? drawUses(chance) : [],
    speaker: drawSpeaker(demoName, chance),
    goals: before || !chance.happens(0.4) ? [] : [chance.pick(GOALS)],
    ...(isLast && TOLD_DAYS[demoName.name] && { acidDay: TOLD_DAYS[demoName.name] }),
    // What waited at an earlier visit has been signed since.
    signs: !isLast || chance.happens(0.75),
  };
}

const toldDay = (id: string): DescribedDays => ({ days: readyDays.filter((ready) => ready.id === id).map(({ day }) => day) });

/** Who told a day at the last visit. */
const TOLD_DAYS: Readonly<Record<string, DescribedDays>> = {
  'Henrik Varghese': { ...toldDay('sipped-cola'), onLeaflet: 0 },
  'Carmen Aldous': toldDay('many-snacks'),
};

const GOALS = ['keep my own teeth', 'no more fillings', 'eat without pain', 'stop the dry feeling at night', 'fresh breath'];

function drawSpeaker({ guardians = [], ageYears, interpreter }: DemoName, chance: Chance): Speaker {
  const guardian = guardians.length > 0 && ageYears < 16 ? chance.pick(guardians) : undefined;
  const who = guardian ? ({ who: 'guardian', name: guardian.name } as const) : ({ who: 'patient' } as const);
  return interpreter === undefined ? who : { ...who, interpreter: chance.pickByShare({ professional: 3, family: 1 }) };
}

function drawConfirmation(isActive: boolean, chance: Chance): DemoConfirmation {
  if (chance.happens(0.05)) return { step: 1, reason: 'Began a sugared medicine for some months' };
  return !isActive && chance.happens(0.1)
    ? { step: -1, reason: 'No new lesion since the last visit, and home care is steady' }
    : { step: 0 };
}
