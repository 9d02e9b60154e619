import type { SwabReading } from '../../core/reading/types.ts';
import type { Answers } from '../../core/visit/answer.ts';
import type { Finding } from '../../core/visit/types.ts';
import { type Chance, chanceFrom } from './chance.ts';
import { addDays } from './days.ts';
import { drawAnswers } from './drawAnswers.ts';
import { drawFindings, type VisitDraw } from './drawFindings.ts';
import { drawReading } from './drawReading.ts';
import { type DemoName, demoNames } from './names.ts';
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
  readonly answers: Answers;
  readonly findings: readonly Finding[];
  readonly allExamined: boolean;
  readonly meterId: string;
  readonly reading: SwabReading;
  readonly confirmation: DemoConfirmation;
  /** The dentist signed what waited for a signature. */
  readonly signs: boolean;
}

export interface DemoPerson {
  readonly name: string;
  readonly birthDate: string;
  readonly language: 'en' | 'es';
  /** Oldest first, all before today; empty for a person who is new. */
  readonly visits: readonly DemoVisit[];
}

const LONGEST_PAST_DAYS = 720;

/**
 * Thirty invented people with up to four past visits each over two years, the same for the same seed and day.
 * Who eats much between meals has, on average, more lesions and higher readings; the readings scatter about each person's own mean by
 * the noise that the demonstration meter is assumed to have.
 * @param seed   whole number
 * @param today  ISO local date; every visit is before it
 */
export function buildDemoPeople(seed: number, today: string): readonly DemoPerson[] {
  return demoNames.map((name, i) => buildPerson(name, seed * 1_009 + i, today));
}

function buildPerson(demoName: DemoName, seed: number, today: string): DemoPerson {
  const chance = chanceFrom(seed);
  const profile = drawProfile(demoName, chance, today);
  const dates = demoName.traits.includes('never-seen') ? [] : drawDates(profile, chance, today);
  return {
    name: demoName.name,
    birthDate: profile.birthDate,
    language: demoName.traits.includes('spanish') ? 'es' : 'en',
    visits: drawVisits(profile, dates, chance),
  };
}

function drawVisits(profile: DemoProfile, dates: readonly string[], chance: Chance): readonly DemoVisit[] {
  const visits: DemoVisit[] = [];
  for (const [i, onDate] of dates.entries()) {
    const earlier = visits.at(-1)?.findings ?? [];
    visits.push(drawVisit({ profile, onDate, isFirst: i === 0, isLast: i === dates.length - 1, earlier }, chance));
  }
  return visits;
}

/** Oldest first, on working days, four to eleven months apart. */
function drawDates({ birthDate }: DemoProfile, chance: Chance, today: string): string[] {
  const dates: string[] = [];
  const earliest = [addDays(today, -LONGEST_PAST_DAYS), addDays(birthDate, 330)].sort().at(-1) ?? today;
  let date = addDays(today, -chance.whole(20, 230));
  for (let left = chance.whole(1, 4); left > 0 && date > earliest; left -= 1) {
    dates.unshift(onWorkingDay(date));
    date = addDays(date, -chance.whole(120, 330));
  }
  return dates;
}

const CLOSED_ON = ['12-25', '12-26', '01-01'];

/** The last day before, or the same, on which the practice is open. */
function onWorkingDay(date: string): string {
  const day = new Date(`${date}T00:00:00Z`).getUTCDay();
  return day === 0 || day === 6 || CLOSED_ON.includes(date.slice(5)) ? onWorkingDay(addDays(date, -1)) : date;
}

function drawVisit({ isLast, ...visit }: VisitDraw & { readonly isLast: boolean }, chance: Chance): DemoVisit {
  const { profile, onDate, isFirst } = visit;
  const findings = drawFindings(visit, chance);
  const startedAt = `${onDate}T${String(chance.whole(8, 15)).padStart(2, '0')}:${chance.pick(['00', '20', '40'])}:00.000Z`;
  return {
    onDate,
    startedAt,
    answers: drawAnswers({ ...visit, findings }, chance),
    findings,
    allExamined: true,
    ...drawReading(profile, startedAt, chance),
    confirmation: drawConfirmation(isFirst || findings.some(({ isNew }) => isNew), chance),
    // What waited at an earlier visit has been signed since.
    signs: !isLast || chance.happens(0.75),
  };
}

function drawConfirmation(isActive: boolean, chance: Chance): DemoConfirmation {
  if (chance.happens(0.06)) return { step: 1, reason: 'Began a sugared medicine for some months' };
  return !isActive && chance.happens(0.12)
    ? { step: -1, reason: 'No new lesion since the last visit, and home care is steady' }
    : { step: 0 };
}
