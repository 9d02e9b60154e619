import { content } from '../content/allContent.ts';
import type { DemoReply } from '../content/demo/drawReplies.ts';
import type { DemoVisit } from '../content/demo/people.ts';
import type { PlanLine } from '../core/regimen/types.ts';
import type { Level, RiskResult } from '../core/risk/types.ts';
import { assessParts, assessVisit } from '../core/visit/assessVisit.ts';
import type { UsedSince, VisitInput } from '../core/visit/types.ts';
import { leafletsOf } from '../core/visit/withReleases.ts';
import { listCoursesOfVisit } from '../store/read/courses.ts';
import { readDraft } from '../store/read/draftFields.ts';
import { insertDraftFields } from '../store/write/draftFields.ts';
import { confirmLevel } from './confirmLevel.ts';
import type { ActionContext } from './context.ts';
import { digestOf, finishLoaded } from './finishVisit.ts';
import { type LoadedVisit, loadVisit } from './loadVisit.ts';
import { giveWhatIsAgreed } from './makeDemoStock.ts';
import { openVisit } from './openVisit.ts';
import { signItem } from './signItem.ts';

/** The invented team, by the ids of `demoMembers`. */
export interface DemoTeam {
  readonly lead: ActionContext;
  readonly of: (memberId: string) => ActionContext;
}

/** The time at which things would have happened. It never runs back, so that the log is in order. */
export interface DemoClock {
  readonly now: () => string;
  readonly moveTo: (time: string) => void;
}

const MINUTE_MS = 60_000;

function minutesAfter(time: string, minutes: number): string {
  return new Date(Date.parse(time) + minutes * MINUTE_MS).toISOString();
}

/** One past visit: opened, answered, confirmed, agreed, closed, and signed by the dentist afterwards where something waits. */
export async function makeDemoVisit(
  team: DemoTeam,
  clock: DemoClock,
  { patientId, visit }: { readonly patientId: string; readonly visit: DemoVisit },
): Promise<void> {
  const { onDate, startedAt } = visit;
  const hygienist = team.of(visit.by);
  const { id: visitId } = await openVisit(hygienist, { patientId, kind: 'chair', onDate });
  clock.moveTo(minutesAfter(startedAt, 12));
  await saveDraft(hygienist, visitId, listFields(visit));
  clock.moveTo(minutesAfter(startedAt, 20));
  const loaded = await confirmAsDrawn(hygienist, visitId, visit);
  const { input } = loaded;
  clock.moveTo(minutesAfter(startedAt, 26));
  const assessment = assessVisit(input, content);
  const said = { agreed: replyTo(assessment.plan.lines, visit.replies), used: sayUsed(input, visit.uses) };
  await saveDraft(hygienist, visitId, said);
  clock.moveTo(minutesAfter(startedAt, 30));
  // Nobody else is there: what was loaded, with what was just said, is what loading it again would give. Of the assessment only the leaflet
  // looks at what was agreed.
  const draft = await readDraft(hygienist.db, hygienist.scope, visitId);
  const agreed: VisitInput = { ...input, visit: { ...input.visit, ...said } };
  await finishLoaded(hygienist, { ...loaded, draft, input: agreed }, { ...assessment, ...leafletsOf(assessment, agreed, content) });
  await giveWhatIsAgreed(hygienist, visitId, agreed.visit);
  clock.moveTo(minutesAfter(startedAt, 34));
  if (visit.signs) await signWhatWaits(team.of('ahlgren'), visitId);
}

/** What was asked and seen, by path in the draft. */
function listFields({
  answers,
  findings,
  allExamined,
  meterId,
  reading,
  speaker,
  goals,
  acidDay,
}: DemoVisit): Readonly<Record<string, unknown>> {
  const asked = Object.entries(answers).map(([id, answer]) => [`answers.${id}`, answer] as const);
  return {
    ...Object.fromEntries(asked),
    findings,
    allExamined,
    meterId,
    reading,
    speaker,
    ...(goals.length > 0 ? { goals } : {}),
    ...(acidDay && { acidDay }),
  };
}

/** Fields of the draft in one transaction, where a page would save one after the other. */
async function saveDraft(
  { db, scope, actor, now }: ActionContext,
  visitId: string,
  fields: Readonly<Record<string, unknown>>,
): Promise<void> {
  const rows = Object.entries(fields).map(([path, value]) => ({
    visitId,
    path,
    value: JSON.stringify(value),
    memberId: actor.memberId,
    savedAt: now(),
  }));
  await db.transaction().execute((trx) => insertDraftFields(trx, scope, rows));
}

/** Confirms the level of the saved answers. @returns the visit with what was confirmed */
async function confirmAsDrawn(context: ActionContext, visitId: string, { confirmation }: DemoVisit): Promise<LoadedVisit> {
  const loaded = await loadVisit(context.db, context.scope, visitId);
  const { input } = loaded;
  const { proposed } = assessParts(input, content, ['risk']);
  if (!proposed) return loaded;
  const level = stepFrom(proposed, confirmation.step);
  const reason =
    level === proposed.level ? undefined : (confirmation.reason ?? 'Not everything is known yet; taken as the least it can be');
  const confirmed = await confirmLevel(context, {
    visitId,
    protocol: proposed.protocol,
    edition: proposed.edition,
    proposed: proposed.level,
    level,
    reason,
    inputDigest: digestOf(input),
    codeVersion: content.versions.code,
    contentVersion: content.versions.content,
  });
  return { ...loaded, input: { ...input, visit: { ...input.visit, confirmed } } };
}

/** A level up or down on the list, where there is one. */
function stepFrom({ level, notYet, levels }: RiskResult, step: -1 | 0 | 1): Level {
  const from = level ?? notYet?.atLeast ?? 'moderate';
  return levels[levels.indexOf(from) + step] ?? from;
}

function replyTo(lines: readonly PlanLine[], replies: readonly DemoReply[]): NonNullable<VisitInput['visit']['agreed']> {
  const said = lines.flatMap(({ shelfItemId }, i) => {
    const reply = replies[i];
    return reply ? [{ shelfItemId, ...reply }] : [];
  });
  return {
    items: Object.fromEntries(said.map(({ shelfItemId, said: state }) => [shelfItemId, state])),
    declinedWhy: Object.fromEntries(said.flatMap(({ shelfItemId, why }) => (why === undefined ? [] : [[shelfItemId, why]]))),
  };
}

function sayUsed({ visit }: VisitInput, uses: readonly UsedSince[]): NonNullable<VisitInput['visit']['used']> {
  const goingOn = (visit.pastCare ?? []).filter(({ until }) => until === undefined);
  return Object.fromEntries(goingOn.flatMap(({ shelfItemId }, i) => (uses[i] ? [[shelfItemId, uses[i]]] : [])));
}

async function signWhatWaits(dentist: ActionContext, visitId: string): Promise<void> {
  const courses = await listCoursesOfVisit(dentist.db, dentist.scope, visitId);
  const waiting = courses.filter(({ release }) => release === 'waiting');
  for (const { shelfItemId } of waiting) await signItem(dentist, { visitId, shelfItemId, stops: [], waits: true });
}
