import { createHash } from 'node:crypto';
import { AppError } from '../api/errors.ts';
import { content } from '../content/allContent.ts';
import { keepByTable } from '../core/keep/keepByTable.ts';
import { isSwabBegun } from '../core/reading/isSwabBegun.ts';
import { ageOn } from '../core/visit/ageOn.ts';
import { assessVisit } from '../core/visit/assessVisit.ts';
import { completeStored } from '../core/visit/completeStored.ts';
import type { DaysRecord } from '../core/visit/dayRecord.ts';
import type { VisitAssessment, VisitInput } from '../core/visit/types.ts';
import { withReleases } from '../core/visit/withReleases.ts';
import { canonicalJson } from '../store/chain.ts';
import { listResults } from '../store/read/results.ts';
import type { Db, ResultKind } from '../store/schema.ts';
import type { SiteScope } from '../store/siteScope.ts';
import { type ClosingResult, closeVisit } from './closeVisit.ts';
import { listClosingCourses, listTasks, listUsed, saidOf } from './closingSaid.ts';
import type { ActionContext } from './context.ts';
import { listDayResults } from './dayResults.ts';
import { type LoadedVisit, loadVisit } from './loadVisit.ts';

/** Which part of an assessment each kind of stored result keeps; together they are the whole of it. */
const STORED_PARTS = {
  reading: ['reading'],
  risk: ['mouth', 'proposed', 'proposedSentence', 'compare', 'couldChange'],
  needs: ['needs', 'facts', 'unknownAnswers', 'safetyUnknown'],
  regimen: ['plan', 'leaflet', 'leaflets', 'sources', 'versions'],
} as const satisfies Partial<Record<ResultKind, readonly (keyof VisitAssessment)[]>>;

type StoredKind = keyof typeof STORED_PARTS;
const STORED_KINDS = Object.keys(STORED_PARTS) as readonly StoredKind[];

/**
 * Assesses the saved draft of an open visit and closes the visit with what came out. The result on the record is computed here, not
 * taken from the page.
 * @throws AppError VISIT_NOT_FOUND, VISIT_CLOSED; ConflictError when somebody saved another field meanwhile
 */
export async function finishVisit(context: ActionContext, visitId: string): Promise<VisitAssessment> {
  return finishLoaded(context, await loadVisit(context.db, context.scope, visitId));
}

/**
 * The same for a visit that was loaded and assessed already; `loaded.draft` says of which draft, and closing is a conflict if it is
 * another by now.
 */
export async function finishLoaded(
  context: ActionContext,
  loaded: LoadedVisit,
  assessment = assessVisit(loaded.input, content),
): Promise<VisitAssessment> {
  if (loaded.visit.state !== 'open') throw new AppError('VISIT_CLOSED', 'This visit is closed.');
  const { input } = loaded;
  const { visit } = input;
  await closeVisit(context, {
    visitId: loaded.visit.id,
    draftDigest: loaded.draft.digest,
    answers: visit.answers,
    said: saidOf(visit),
    allExamined: visit.allExamined,
    reading: isSwabBegun(visit.reading) ? { swab: visit.reading, assessed: assessment.reading, meterId: visit.meterId } : undefined,
    findings: visit.findings,
    results: [...listClosingResults(assessment, input), ...(await listDayResults(input, digestOf(input)))],
    courses: listClosingCourses(assessment, visit),
    used: listUsed(loaded.pastCourses, assessment, visit),
    tasks: listTasks(assessment, visit),
  });
  return assessment;
}

/** The assessment that was stored when the visit closed, with signatures and refusals as they stand now. @throws AppError VISIT_NOT_FOUND when a part is missing */
export async function readStoredAssessment(db: Db, scope: SiteScope, { visit, input }: LoadedVisit): Promise<VisitAssessment> {
  const results = await listResults(db, scope, visit.id);
  const parts = STORED_KINDS.map((kind) => results.filter((r) => r.kind === kind && r.decision === null).at(-1)?.body);
  if (parts.includes(undefined)) throw new AppError('VISIT_NOT_FOUND', 'This visit was closed without a stored result.');
  const age = ageOn(input.person.birthDate, visit.onDate);
  // Each part was written by `toClosingResult`, and all of them together are a whole assessment.
  const stored = Object.assign({ ...age, confirmed: input.visit.confirmed ?? null }, ...parts) as VisitAssessment;
  return withReleases(completeStored(stored), input, content);
}

/** What was said of the described days when the visit closed or was last corrected; null while it is open, and where no day stands on it. */
export async function readDayRecord(db: Db, scope: SiteScope, { visit, input }: LoadedVisit): Promise<DaysRecord | null> {
  if (visit.state === 'open' || input.visit.acidDay === undefined) return null;
  // Written by `listDayResults`.
  return ((await listResults(db, scope, visit.id, 'day')).at(-1)?.body as DaysRecord | undefined) ?? null;
}

/** Names exactly what the core was given. */
export function digestOf(input: VisitInput): string {
  const { practice, person, visit } = input;
  // Canonical text has its keys in order, so the part that hardly ever changes can be kept as it is.
  const text = `{"person":${canonicalOf(person)},"practice":${canonicalPractice(practice)},"visit":${canonicalOf(visit)}}`;
  return createHash('sha256').update(text).digest('hex');
}

/** Optional fields that are not there must not count as a value. */
const canonicalOf = (part: object): string => canonicalJson(JSON.parse(JSON.stringify(part)));
const canonicalPractice = keepByTable(canonicalOf);

/** Everything that is kept of an assessment, by kind. */
export function listClosingResults(assessment: VisitAssessment, input: VisitInput): ClosingResult[] {
  const inputDigest = digestOf(input);
  return STORED_KINDS.map((kind) => toClosingResult(kind, assessment, inputDigest));
}

function toClosingResult(kind: StoredKind, assessment: VisitAssessment, inputDigest: string): ClosingResult {
  const body = Object.fromEntries(STORED_PARTS[kind].map((part) => [part, assessment[part]]));
  const { proposed, versions } = assessment;
  const said =
    kind === 'risk' && proposed ? { protocol: proposed.protocol, edition: proposed.edition, level: proposed.level ?? undefined } : {};
  return { kind, ...said, inputDigest, body, codeVersion: versions.code, contentVersion: versions.content };
}
