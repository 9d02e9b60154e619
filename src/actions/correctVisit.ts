import { AppError } from '../api/errors.ts';
import { content } from '../content/allContent.ts';
import type { Level } from '../core/risk/types.ts';
import { applyField } from '../core/visit/applyField.ts';
import { assessVisit } from '../core/visit/assessVisit.ts';
import type { CorrectedField, VisitCorrection } from '../core/visit/correction.ts';
import type { VisitAssessment, VisitInput } from '../core/visit/types.ts';
import { ConflictError } from '../store/errors.ts';
import type { Db } from '../store/schema.ts';
import type { VisitSaid } from '../store/storedJson.ts';
import { insertRows, updateRow } from '../store/write/rows.ts';
import { requireReason } from './checks.ts';
import { type ClosingResult, toResultColumns } from './closeVisit.ts';
import { saidOf } from './closingSaid.ts';
import { type ActionContext, type ChangeLog, inTransaction } from './context.ts';
import { type Correcting, correctCourses, correctFindings, correctReading, correctTasks } from './correctRows.ts';
import { listDayResults } from './dayResults.ts';
import { digestOf, listClosingResults } from './finishVisit.ts';
import { type LoadedVisit, loadVisit } from './loadVisit.ts';
import { resultTime } from './resultTime.ts';
import { requireRight } from './rights.ts';

export interface CorrectVisitInput {
  readonly visitId: string;
  /** Version of the visit as it was read. */
  readonly expectedVersion: number;
  readonly reason: string;
  /** Local date, ISO. */
  readonly onDate: string;
  /** Fields as they are saved in an open visit, checked by the caller; null takes a field out ("noted by mistake"). */
  readonly changes: readonly { readonly path: string; readonly value: unknown }[];
  /** A level confirmed anew on the corrected answers. */
  readonly level?: Level | undefined;
}

/**
 * Corrects a closed visit: what was said and seen is put right with a reason, and everything is computed anew as new results while the
 * old ones stay. Nothing is deleted: a finding noted by mistake says so, and each row that changes keeps its earlier text in the log.
 * @throws AppError VISIT_NOT_FOUND, REASON_REQUIRED, INPUT_INVALID; ConflictError when somebody corrected it meanwhile
 */
export async function correctVisit(context: ActionContext, input: CorrectVisitInput): Promise<VisitAssessment> {
  const { db, scope, actor, now } = context;
  requireRight(actor, 'correctVisit');
  const reason = requireReason(input.reason);
  const loaded = await loadVisit(db, scope, input.visitId);
  if (loaded.visit.state !== 'closed') throw new AppError('VISIT_NOT_FOUND', 'Only a closed visit is corrected; an open one is changed.');
  const changes = listChanges(loaded.input, input);
  if (changes.length === 0 && input.level === undefined) throw new AppError('INPUT_INVALID', 'changes: nothing differs from the record.');
  const corrected = applyChanges(loaded.input, input);
  const at = await resultTime(db, scope, input.visitId, now());
  const decided = decideLevel(corrected, input.level, { by: actor.name, at, reason });
  const assessment = assessVisit(decided, content);
  const before = loaded.input.visit.confirmed?.level ?? null;
  const allChanges = input.level === undefined ? changes : [...changes, { path: 'level', before, after: input.level }];
  const dayResults = await listDayResults(decided, digestOf(decided));
  const correction: VisitCorrection = { at, on: input.onDate, by: actor.name, reason, changes: allChanges };
  await inTransaction(context, 'correctVisit', (trx, log) =>
    writeCorrection(trx, log, {
      context,
      loaded,
      input: decided,
      assessment,
      dayResults,
      correction,
      expectedVersion: input.expectedVersion,
      hasLevel: input.level !== undefined,
    }),
  );
  return assessment;
}

/** The fields that differ, with both values; the last change of a field counts. */
function listChanges({ visit }: VisitInput, { changes }: CorrectVisitInput): CorrectedField[] {
  return [...new Map(changes.map(({ path, value }) => [path, value]))].flatMap(([path, value]) => {
    const before = fieldOf(visit, path);
    return isSameJson(before, value) ? [] : [{ path, before, after: value ?? null }];
  });
}

function fieldOf(visit: VisitInput['visit'], path: string): unknown {
  const [first = '', question] = path.split('.', 2);
  const value: unknown = first === 'answers' ? visit.answers[question ?? ''] : Reflect.get(visit, first);
  return value ?? null;
}

const isSameJson = (a: unknown, b: unknown) => JSON.stringify(sorted(a ?? null)) === JSON.stringify(sorted(b ?? null));

function sorted(value: unknown): unknown {
  if (Array.isArray(value)) return value.map(sorted);
  if (typeof value !== 'object' || value === null) return value;
  const parts = Object.entries(value).filter(([, part]) => part !== undefined);
  return Object.fromEntries(parts.sort(([a], [b]) => (a < b ? -1 : 1)).map(([key, part]) => [key, sorted(part)]));
}

function applyChanges(input: VisitInput, { changes, onDate }: CorrectVisitInput): VisitInput {
  const applied = changes.reduce((before, { path, value }) => applyField(before, path, value), input);
  return { ...applied, visit: { ...applied.visit, correctedOn: onDate } };
}

/** The level confirmed anew stands on what the list proposes of the corrected answers; a level that differs from it was changed. */
function decideLevel(input: VisitInput, level: Level | undefined, who: { by: string; at: string; reason: string }): VisitInput {
  if (level === undefined) return input;
  const { proposed, mouth } = assessVisit(input, content);
  if (mouth.kind === 'level-does-not-apply' || !proposed)
    throw new AppError('INPUT_INVALID', 'level: no caries level applies to this mouth or this age.');
  if (!proposed.levels.includes(level)) throw new AppError('INPUT_INVALID', `level: ${proposed.screenName} has no level ${level}.`);
  const { protocol, edition } = proposed;
  const changedFrom = proposed.level !== null && proposed.level !== level ? { changedFrom: proposed.level } : {};
  return { ...input, visit: { ...input.visit, confirmed: { level, protocol, edition, ...who, ...changedFrom } } };
}

interface Writing {
  readonly context: ActionContext;
  readonly loaded: LoadedVisit;
  readonly input: VisitInput;
  readonly assessment: VisitAssessment;
  /** Worked out before the transaction: in one only queries are awaited. */
  readonly dayResults: readonly ClosingResult[];
  readonly correction: VisitCorrection;
  readonly expectedVersion: number;
  readonly hasLevel: boolean;
}

async function writeCorrection(trx: Db, log: ChangeLog, writing: Writing): Promise<void> {
  const { context, loaded, input, assessment, correction, expectedVersion } = writing;
  const { scope, newId } = context;
  const { visit } = loaded;
  const said: VisitSaid = { ...saidOf(input.visit), corrections: [...(visit.said?.corrections ?? []), correction] };
  const { answers, allExamined } = input.visit;
  const row = await updateRow(
    trx,
    scope,
    'visit',
    { id: visit.id, version: expectedVersion },
    {
      answers: JSON.stringify(answers),
      said: JSON.stringify(said),
      allExamined: allExamined === undefined ? null : allExamined ? 1 : 0,
    },
  );
  if (!row) throw new ConflictError('The visit', expectedVersion, visit.version);
  log.row('visit', row, correction.reason);
  const has = (...paths: string[]) => correction.changes.some(({ path }) => paths.includes(path));
  const correcting: Correcting = { trx, log, context, loaded, input, assessment, correction };
  if (has('findings')) await correctFindings(correcting);
  if (has('reading', 'meterId')) await correctReading(correcting);
  await correctCourses(correcting);
  await correctTasks(correcting);
  const madeAt = correction.at;
  const results = [...listClosingResults(assessment, input), ...writing.dayResults].map((result) => ({
    id: newId(),
    visitId: visit.id,
    madeAt,
    ...toResultColumns(result),
  }));
  for (const result of await insertRows(trx, scope, 'result', results)) log.row('result', result, correction.reason);
  if (writing.hasLevel) await writeDecision(trx, log, writing);
}

async function writeDecision(trx: Db, log: ChangeLog, { context, loaded, input, assessment, correction }: Writing): Promise<void> {
  const { confirmed } = input.visit;
  if (!confirmed) return;
  const { level, protocol, edition } = confirmed;
  const decision = {
    id: context.newId(),
    visitId: loaded.visit.id,
    kind: 'risk',
    protocol,
    edition,
    level,
    inputDigest: digestOf(input),
    codeVersion: assessment.versions.code,
    contentVersion: assessment.versions.content,
    madeAt: correction.at,
    decision: level === assessment.proposed?.level ? 'confirmed' : 'changed',
    decidedBy: context.actor.memberId,
    reason: correction.reason,
    body: JSON.stringify({ proposed: assessment.proposed?.level ?? null, by: context.actor.name }),
  } as const;
  for (const row of await insertRows(trx, context.scope, 'result', [decision])) log.row('result', row, correction.reason);
}
