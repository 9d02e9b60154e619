import { content } from '../content/allContent.ts';
import { sayDate } from '../core/reading/parseTakenAt.ts';
import { amountAtAge } from '../core/regimen/amountAtAge.ts';
import { signedByOf } from '../core/regimen/buildLine.ts';
import { checkItem } from '../core/regimen/checkItem.ts';
import { checkTogether } from '../core/regimen/checkTogether.ts';
import { settleTables } from '../core/regimen/disagreement/settleTables.ts';
import { findPassedLimit } from '../core/regimen/fluorideIntake.ts';
import { protocolsOn } from '../core/regimen/local/localProtocol.ts';
import { planFluoride } from '../core/regimen/planFluoride.ts';
import { type SignatureCover, sayOver } from '../core/regimen/signatureCover.ts';
import { unliftedBars } from '../core/regimen/signatures.ts';
import type { PersonFacts, ShelfItem, SignedBy } from '../core/regimen/types.ts';
import { ageOn } from '../core/visit/ageOn.ts';
import { assessVisit } from '../core/visit/assessVisit.ts';
import { addDays, addMonthsToDate } from '../core/visit/calendar.ts';
import { type Course, listCoursesOfVisit } from '../store/read/courses.ts';
import { listMovesOfVisit } from '../store/read/stock.ts';
import { listTasksOfPatient } from '../store/read/tasks.ts';
import { listVisits } from '../store/read/visits.ts';
import type { Db } from '../store/schema.ts';
import type { SiteScope } from '../store/siteScope.ts';
import type { LoadedVisit } from './loadVisit.ts';
import { CHECK_HOLDS_MONTHS, findCover } from './signatureCovers.ts';

/** Note of the task that a yes at the counter leaves behind. Nothing of what is new stands in it. */
export const REFILL_STOPPED = 'Something new was told at the counter: ask before anything more is given.';

/** One item of the agreed regimen, as the counter may go on with it today. */
export interface RefillLine {
  readonly shelfItemId: string;
  readonly name: string;
  /** `waits`: a dentist alone may give it, until a signature covers another pack. */
  readonly state: 'may-be-given' | 'waits' | 'stopped';
  /** A sentence for whatever is not simply given; empty otherwise. */
  readonly says: string;
  /** Packs that may go in all, those given among them; null = no signature is needed. */
  readonly coveredPacks: number | null;
  /** Packs given from this visit so far. */
  readonly given: number;
  /** On what it goes; null = nobody signed, or no signature is needed. */
  readonly signedBy: SignedBy | null;
  /** Why the signature covers no further pack. */
  readonly over: SignatureCover['over'];
  readonly lastGivenOn: string | null;
}

export interface Refills {
  /** Why nothing is given from this visit today; null = it may be. */
  readonly notHere: string | null;
  readonly lines: readonly RefillLine[];
}

/**
 * What of a closed visit may be given again on a later day: the packs that were agreed, within their course, looked at anew with the
 * answers of that visit and today's age. Whether anything is new since then is asked by whoever gives it.
 */
export async function findRefills(db: Db, scope: SiteScope, loaded: LoadedVisit, today: string): Promise<Refills> {
  const notHere = await whyNotHere(db, scope, loaded, today);
  const courses = (await listCoursesOfVisit(db, scope, loaded.visit.id)).filter(({ state }) => state === 'agreed');
  const { shelf } = loaded.input.practice;
  const taken = courses.flatMap((course) => {
    const item = shelf.find(({ id }) => id === course.shelfItemId);
    return item && item.use.atVisit !== true ? [{ course, item }] : [];
  });
  const moves = (await listMovesOfVisit(db, scope, loaded.visit.id)).filter(({ takenBack }) => takenBack === null);
  const looked = lookAnew(loaded, taken, today);
  const lines = await Promise.all(
    taken.map(async ({ course, item }): Promise<RefillLine> => {
      const given = moves.filter(({ shelfItemId }) => shelfItemId === item.id);
      const packs = -given.reduce((sum, { quantity }) => sum + quantity, 0);
      const { bars, needsSignature } = looked(course, item);
      const signature = needsSignature ? course.signature : null;
      const cover = signature ? await findCover(db, scope, signature, { visitId: loaded.visit.id, today }) : null;
      const signedBy = signature && signedByOf(signature);
      const waits = needsSignature && (cover === null || cover.over !== null);
      const stopped =
        whyOver(course, item, today) ?? (bars.length > 0 ? `Not given, because: ${bars.join('; ')}. The hygienist looks first.` : null);
      return {
        ...{ shelfItemId: item.id, name: item.name, given: packs, lastGivenOn: given.at(-1)?.onDate ?? null },
        ...{ signedBy, over: cover?.over ?? null, coveredPacks: needsSignature ? packs + (cover?.left ?? 0) : null },
        state: stopped !== null ? 'stopped' : waits ? 'waits' : 'may-be-given',
        says: stopped ?? (waits ? `Waits for the dentist: ${sayOver(signedBy, cover?.over ?? null, sayDate)}.` : ''),
      };
    }),
  );
  return { notHere, lines };
}

async function whyNotHere(db: Db, scope: SiteScope, { visit, patient }: LoadedVisit, today: string): Promise<string | null> {
  if (visit.state !== 'closed') return 'The visit is open: what is agreed is given there.';
  const visits = (await listVisits(db, scope, patient.id)).filter(({ state }) => state !== 'void');
  if (visits.some(({ state }) => state === 'open')) return 'Another visit is open: what is agreed is given there.';
  if (visits.at(-1)?.id !== visit.id) return 'There is a later visit: packs are given from that one.';
  if (today >= addMonthsToDate(visit.onDate, CHECK_HOLDS_MONTHS))
    return `The last safety check is ${CHECK_HOLDS_MONTHS} months old or older, a limit of our own: a visit comes first.`;
  const tasks = await listTasksOfPatient(db, scope, patient.id);
  return tasks.some((task) => task.state === 'open' && task.note === REFILL_STOPPED)
    ? 'Something new was told at the counter: the hygienist looks first, at a visit.'
    : null;
}

function whyOver({ fromDate, toDate }: Course, { use }: ShelfItem, today: string): string | null {
  const ends = toDate ?? (fromDate !== null && use.courseDays !== undefined ? addDays(fromDate, use.courseDays) : null);
  return ends !== null && today >= ends ? 'The course is over.' : null;
}

type Taken = readonly { readonly course: Course; readonly item: ShelfItem }[];

/** Every rule with the answers of the visit and the age of today, beside the other packs that were agreed. */
function lookAnew({ input, patient }: LoadedVisit, taken: Taken, today: string) {
  const { settings, localProtocols = [] } = input.practice;
  const { jurisdiction, legal } = settings;
  const tables = settleTables(content.regimen, settings.disagreements);
  const { facts: then, confirmed, mouth } = assessVisit(input, content);
  const facts: PersonFacts = { ...then, ...ageOn(patient.birthDate, today) };
  const hasNoTeeth = mouth.kind === 'level-does-not-apply';
  const { intake } = planFluoride(
    taken.map(({ item }) => ({ item, use: amountAtAge(item, facts, jurisdiction, tables).use, state: 'signed' })),
    facts,
    tables,
  );
  const passed = findPassedLimit(intake);
  return (course: Course, item: ShelfItem): { readonly bars: readonly string[]; readonly needsSignature: boolean } => {
    const own = protocolsOn(localProtocols, today);
    const check = checkItem({ item, facts, level: confirmed?.level, jurisdiction, legal, localProtocols: own, hasNoTeeth, tables });
    const signatures = new Map([[item.id, course.signature ? [course.signature] : []]]);
    const meetings = taken
      .filter((other) => other.item.id !== item.id)
      .flatMap((other) => checkTogether(item, other.item, tables.interactions).filter(({ verdict }) => verdict === 'never-both'));
    const holdsFluoride = check.agent?.ppmRange !== undefined && check.agent.id !== 'F_PASTE_STD';
    return {
      bars: [
        // The counter is no place for what somebody told in private.
        ...unliftedBars(check, signatures).map((bar) => (bar.private ? 'a safety rule' : bar.because)),
        ...meetings.map(({ interaction }) => interaction.because),
        ...(passed && holdsFluoride ? [`fluoride above ${passed.name}`] : []),
      ],
      needsSignature: check.release !== 'anyone' || check.cautions.length > 0 || check.stops.length > 0,
    };
  };
}
