import { content } from '../content/allContent.ts';
import { sayDate } from '../core/reading/parseTakenAt.ts';
import { signedByOf } from '../core/regimen/buildLine.ts';
import { checkItem } from '../core/regimen/checkItem.ts';
import { checkTogether } from '../core/regimen/checkTogether.ts';
import { settleTables } from '../core/regimen/disagreement/settleTables.ts';
import { findPassedLimit } from '../core/regimen/fluorideIntake.ts';
import { protocolsOn } from '../core/regimen/local/localProtocol.ts';
import { planFluoride } from '../core/regimen/planFluoride.ts';
import { sayCovers, sayOver } from '../core/regimen/signatureCover.ts';
import type { PlanLine, ShelfItem, SignedItem } from '../core/regimen/types.ts';
import { assessVisit } from '../core/visit/assessVisit.ts';
import { turnedDownWord } from '../core/visit/turnedDown.ts';
import type { VisitAssessment } from '../core/visit/types.ts';
import { type Course, listCoursesOfVisit } from '../store/read/courses.ts';
import type { Db } from '../store/schema.ts';
import type { SiteScope } from '../store/siteScope.ts';
import type { LoadedVisit } from './loadVisit.ts';
import { findCover } from './signatureCovers.ts';

export interface GivingCover {
  /** Packs that may go in all, those given among them. */
  readonly packs: number;
  /** Why none goes beyond, as a clause. */
  readonly whyNoMore: string;
}

/** Where an item stands for the person of a visit: what giving it has to know. */
export interface GivingFacts {
  /** `outside`: neither the plan of an open visit nor the record of a closed one holds it, or the safety check is of another day. */
  readonly place: 'in-plan' | 'waits' | 'outside';
  /** Why it must not be given outside the plan, as clauses: a rule that stops it or has to ask first, or what it must not meet. */
  readonly bars: readonly string[];
  /** Outside the plan, a dentist's to give: prescription, dentist only, or with something to check on record. */
  readonly isForDentist: boolean;
  readonly isTurnedDown: boolean;
  /** How far the signature of a pack for home goes; absent = none is needed, or it is used at the visit. */
  readonly cover?: GivingCover | undefined;
}

/** @returns undefined when the item is not on the shelf */
export async function findGivingFacts(
  db: Db,
  scope: SiteScope,
  loaded: LoadedVisit,
  { shelfItemId, today }: { readonly shelfItemId: string; readonly today: string },
): Promise<GivingFacts | undefined> {
  const item = loaded.input.practice.shelf.find(({ id }) => id === shelfItemId);
  if (!item) return undefined;
  const assessment = assessVisit(loaded.input, content);
  const place = loaded.visit.onDate === today ? await placeOf(db, scope, loaded, { assessment, shelfItemId }) : 'outside';
  const isTurnedDown = turnedDownWord(loaded.input.visit.agreed, shelfItemId) !== undefined;
  if (place === 'outside') return { place, isTurnedDown, ...checkOutside(item, assessment, loaded) };
  const signature = loaded.input.visit.signed.find((signed) => signed.shelfItemId === shelfItemId);
  const isBound = place === 'in-plan' && signature !== undefined && item.use.atVisit !== true;
  const cover = isBound ? await coverOfGiving(db, scope, signature, { visitId: loaded.visit.id, today }) : undefined;
  return { place, isTurnedDown, bars: [], isForDentist: place === 'waits', cover };
}

async function coverOfGiving(
  db: Db,
  scope: SiteScope,
  signature: SignedItem,
  place: { readonly visitId: string; readonly today: string },
): Promise<GivingCover> {
  const { given, left, over } = await findCover(db, scope, signature, place);
  const whyNoMore =
    over === null ? `${signature.by} signed for ${sayCovers(signature, sayDate)}` : sayOver(signedByOf(signature), over, sayDate);
  return { packs: given + left, whyNoMore };
}

async function placeOf(
  db: Db,
  scope: SiteScope,
  { visit }: LoadedVisit,
  { assessment, shelfItemId }: { readonly assessment: VisitAssessment; readonly shelfItemId: string },
): Promise<GivingFacts['place']> {
  if (visit.state === 'open') return placeInPlan(assessment.plan.lines, shelfItemId);
  return placeOnRecord(await listCoursesOfVisit(db, scope, visit.id), shelfItemId);
}

function placeInPlan(lines: readonly PlanLine[], id: string): GivingFacts['place'] {
  const line = lines.find(({ shelfItemId }) => shelfItemId === id);
  if (!line) return 'outside';
  return line.state === 'waiting-for-signature' ? 'waits' : 'in-plan';
}

function placeOnRecord(courses: readonly Course[], id: string): GivingFacts['place'] {
  const course = courses.find(({ shelfItemId }) => shelfItemId === id);
  if (!course) return 'outside';
  return course.release === 'waiting' || course.release === 'refused' ? 'waits' : 'in-plan';
}

/** Every rule for one pack, and what it would meet in this person's plan. */
function checkOutside(
  item: ShelfItem,
  { facts, confirmed, mouth, plan }: VisitAssessment,
  { input }: LoadedVisit,
): Pick<GivingFacts, 'bars' | 'isForDentist'> {
  const { settings, shelf } = input.practice;
  const localProtocols = protocolsOn(input.practice.localProtocols ?? [], input.visit.onDate);
  const tables = settleTables(content.regimen, settings.disagreements);
  const hasNoTeeth = mouth.kind === 'level-does-not-apply';
  const { jurisdiction, legal } = settings;
  const check = checkItem({
    item,
    facts,
    level: confirmed?.level,
    jurisdiction,
    legal,
    localProtocols,
    hasNoTeeth,
    tables,
  });
  const beside = plan.lines.flatMap((line) => {
    const other = shelf.find(({ id }) => id === line.shelfItemId);
    return other ? [{ item: other, use: line.use, state: line.state }] : [];
  });
  const meetings = beside.flatMap((other) =>
    checkTogether(item, other.item, tables.interactions)
      .filter(({ verdict }) => verdict === 'never-both')
      .map(({ interaction }) => `${interaction.because} (${other.item.name})`),
  );
  const passed = findPassedLimit(planFluoride([...beside, { item, use: item.use, state: 'proposed' }], facts, tables).intake);
  return {
    bars: [
      ...[...check.stops, ...check.asks].map(({ because }) => because),
      ...meetings,
      ...(passed ? [`fluoride above ${passed.name}`] : []),
    ],
    isForDentist: check.release !== 'anyone' || check.cautions.length > 0,
  };
}
