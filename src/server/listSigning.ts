import type { ActionContext } from '../actions/context.ts';
import { readStoredAssessment } from '../actions/finishVisit.ts';
import { type LoadedVisit, loadVisit } from '../actions/loadVisit.ts';
import { hasRole } from '../actions/rights.ts';
import type { SigningLine, SigningView, StandingOrderView } from '../api/signing.ts';
import { content } from '../content/allContent.ts';
import { sayDirections } from '../core/regimen/sayDirections.ts';
import type { PlanLine } from '../core/regimen/types.ts';
import { assessVisit } from '../core/visit/assessVisit.ts';
import { wantedLines } from '../core/visit/turnedDown.ts';
import type { VisitAssessment } from '../core/visit/types.ts';
import { listCatalog } from '../store/read/catalog.ts';
import { listWaitingCourses } from '../store/read/courses.ts';
import { listMembers } from '../store/read/members.ts';
import { listResults } from '../store/read/results.ts';
import { listVisitsOfDay } from '../store/read/visits.ts';
import { localDate } from './siteClock.ts';

type Reader = Pick<ActionContext, 'db' | 'scope' | 'now' | 'actor'>;

/** Everything in the practice that waits for a signature: in open visits from the saved draft, in closed ones from the record. */
export async function listSigning(context: Reader): Promise<SigningView> {
  const { db, scope, actor } = context;
  const members = (await listMembers(db, scope)).filter((m) => m.active);
  const nameOf = new Map(members.map(({ id, name }) => [id, name]));
  const orders = (await listStandingOrders(context)).filter((order) => order.holds);
  const lines: SigningLine[] = [];
  for (const visitId of await listVisitsThatMayWait(context)) {
    const waiting = await readWaiting(context, visitId);
    lines.push(...waiting.map((w) => toLine(w, nameOf, orders)));
  }
  lines.sort((a, b) => (a.since < b.since ? -1 : 1));
  const mayLook = hasRole(actor, 'dentist') || hasRole(actor, 'hygienist');
  const signers = members.filter((m) => m.roles.includes('dentist')).map((m) => m.name);
  return { count: lines.length, signers, lines: mayLook ? lines : [] };
}

export async function listStandingOrders(context: Pick<Reader, 'db' | 'scope' | 'now'>): Promise<StandingOrderView[]> {
  const { db, scope } = context;
  const today = await localDate(context);
  return (await listCatalog(db, scope, 'standing-order')).map(({ id, body, version }) => {
    const { name, date, until, packs, shelfItemIds, signedBy, withdrawn, withdrawnBy } = body;
    const holds = withdrawn !== true && date <= today && (until === undefined || today <= until);
    return {
      id,
      version,
      name,
      date,
      ...(until && { until }),
      ...(packs !== undefined && { packs }),
      shelfItemIds: [...shelfItemIds],
      signedBy,
      holds,
      withdrawnBy: withdrawnBy ?? null,
    };
  });
}

/** Open visits, and closed ones with an item that waits on the record. */
async function listVisitsThatMayWait(context: Reader): Promise<readonly string[]> {
  const { db, scope } = context;
  const open = (await listVisitsOfDay(db, scope, await localDate(context))).filter((visit) => visit.state === 'open');
  const closed = (await listWaitingCourses(db, scope)).flatMap(({ visitId }) => visitId ?? []);
  return [...new Set([...open.map(({ id }) => id), ...closed])];
}

interface Waiting {
  readonly loaded: LoadedVisit;
  readonly assessment: VisitAssessment;
  readonly line: PlanLine;
  /** When the visit closed; absent while it is open. */
  readonly closedAt?: string | undefined;
}

async function readWaiting({ db, scope }: Reader, visitId: string): Promise<readonly Waiting[]> {
  const loaded = await loadVisit(db, scope, visitId);
  const isOpen = loaded.visit.state === 'open';
  if (!isOpen && loaded.visit.state !== 'closed') return [];
  const assessment = isOpen ? assessVisit(loaded.input, content) : await readStoredAssessment(db, scope, loaded);
  const closedAt = isOpen ? undefined : (await listResults(db, scope, visitId, 'regimen')).at(-1)?.madeAt;
  return wantedLines(assessment.plan.lines, loaded.input.visit.agreed)
    .filter((line) => line.state === 'waiting-for-signature')
    .map((line) => ({ loaded, assessment, line, closedAt }));
}

function toLine(
  { loaded, assessment, line, closedAt }: Waiting,
  nameOf: ReadonlyMap<string, string>,
  orders: readonly StandingOrderView[],
): SigningLine {
  const { visit, input, draft } = loaded;
  const { confirmed } = assessment;
  const lastField = [...draft.fields].sort((a, b) => (a.savedAt < b.savedAt ? -1 : 1)).at(-1);
  const closer = visit.closedBy === null ? undefined : nameOf.get(visit.closedBy);
  return {
    visitId: visit.id,
    shelfItemId: line.shelfItemId,
    person: input.person.name,
    ageYears: assessment.ageYears,
    ageMonths: assessment.ageMonths,
    onDate: visit.onDate,
    isOpen: visit.state === 'open',
    item: line.name,
    directions: sayDirections(line),
    because: line.because,
    level: confirmed ? `${confirmed.level}, confirmed by ${confirmed.by}` : null,
    cautions: line.warnings.map((w) => `${w.text} (${w.ruleId})`),
    notKnown: assessment.safetyUnknown.map((id) => content.questions.find((q) => q.id === id)?.label ?? id),
    askedBy: confirmed?.by ?? closer ?? (lastField && nameOf.get(lastField.memberId)) ?? 'not known',
    since: confirmed?.at ?? closedAt ?? lastField?.savedAt ?? `${visit.onDate}T00:00:00.000Z`,
    orders: orders
      .filter(
        (o) => o.shelfItemIds.includes(line.shelfItemId) && o.date <= visit.onDate && (o.until === undefined || visit.onDate <= o.until),
      )
      .map(({ id, name, date, until, packs, signedBy }) => ({ id, name, date, until, packs, by: signedBy })),
    isForHome: line.use.atVisit !== true,
  };
}
