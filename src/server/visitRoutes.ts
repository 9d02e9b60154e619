import type { FastifyPluginAsyncZod } from 'fastify-type-provider-zod';
import { z } from 'zod';
import { confirmLevel } from '../actions/confirmLevel.ts';
import { digestOf, finishVisit, readDayRecord, readStoredAssessment } from '../actions/finishVisit.ts';
import { type LoadedVisit, loadVisit } from '../actions/loadVisit.ts';
import { recordAnswer } from '../actions/recordAnswer.ts';
import { releasePrivate } from '../actions/releasePrivate.ts';
import { ConfirmLevelBody, FieldWrite, ReleaseBody } from '../api/apiTypes.ts';
import type { LeafletBundle, VisitBundle } from '../api/bundles.ts';
import { AppError } from '../api/errors.ts';
import { content } from '../content/allContent.ts';
import { LEAFLET_LANGUAGES } from '../core/leaflet/languages.ts';
import { assessVisit } from '../core/visit/assessVisit.ts';
import { leafletIn, printedOn } from '../core/visit/withReleases.ts';
import { listMembers } from '../store/read/members.ts';
import { checkField } from './checkField.ts';
import type { ContextOf } from './context.ts';
import { localDate } from './siteClock.ts';

/** One page in this language, instead of what the visit and its homes ask for. */
const LeafletQuery = z.strictObject({ language: z.enum(LEAFLET_LANGUAGES).optional() });

const VisitId = z.strictObject({ id: z.uuid() });

export const visitRoutes: FastifyPluginAsyncZod<{ contextOf: ContextOf }> = async (app, { contextOf }) => {
  app.get('/api/visits/:id', { schema: { params: VisitId } }, async (req): Promise<VisitBundle> => {
    const { db, scope } = await contextOf(req);
    const loaded = await loadVisit(db, scope, req.params.id);
    const { visit, patient, input, carried, draft, lastVisitOn, earlierDay } = loaded;
    const members = (await listMembers(db, scope)).filter((m) => m.active);
    return {
      visitId: visit.id,
      patientId: patient.id,
      profile: patient.profile,
      state: visit.state,
      input,
      carried,
      fieldVersions: Object.fromEntries(draft.fields.map((field) => [field.path, field.version])),
      savedFields: draft.fields.flatMap(({ path, value }) => (value === null ? [] : [path])),
      lastSavedAt:
        draft.fields
          .map((field) => field.savedAt)
          .sort()
          .at(-1) ?? null,
      lastVisitOn,
      earlierDay,
      members: members.map(({ id, name, trainedSwab, roles }) => ({ id, name, trainedSwab, maySign: roles.includes('dentist') })),
      visitVersion: visit.version,
      corrections: visit.said?.corrections ?? [],
      stored: visit.state === 'open' ? null : await readStoredAssessment(db, scope, loaded),
      dayRecord: await readDayRecord(db, scope, loaded),
    };
  });

  app.put('/api/visits/:id/fields', { schema: { params: VisitId, body: FieldWrite } }, async (req) => {
    const context = await contextOf(req);
    const { path, value, version } = req.body;
    const { input } = await openVisitOf(context, req.params.id);
    const checked = checkField(input, path, value);
    const saved = await recordAnswer(context, { visitId: req.params.id, path, value: checked, expectedVersion: version ?? 0 });
    return { path, version: saved.version, savedAt: saved.savedAt };
  });

  app.post('/api/visits/:id/level', { schema: { params: VisitId, body: ConfirmLevelBody } }, async (req) => {
    const context = await contextOf(req);
    const { input } = await openVisitOf(context, req.params.id);
    const { proposed, mouth } = assessVisit(input, content);
    if (mouth.kind === 'level-does-not-apply' || !proposed)
      throw new AppError('INPUT_INVALID', 'level: no caries level applies to this mouth or this age.');
    const { level, reason } = req.body;
    const confirmed = await confirmLevel(context, {
      visitId: req.params.id,
      level,
      proposed: proposed.level,
      protocol: proposed.protocol,
      edition: proposed.edition,
      ...(reason === undefined ? {} : { reason }),
      inputDigest: digestOf(input),
      codeVersion: content.versions.code,
      contentVersion: content.versions.content,
    });
    return { confirmed };
  });

  app.post('/api/visits/:id/releases', { schema: { params: VisitId, body: ReleaseBody } }, async (req) => {
    const { question, isReleased, heard } = req.body;
    if (!content.questions.some((q) => q.id === question && q.private === true))
      throw new AppError('INPUT_INVALID', `question: ${question} is no private question`);
    const context = await contextOf(req);
    return { released: await releasePrivate(context, { visitId: req.params.id, question, isReleased, heard }) };
  });

  app.post('/api/visits/:id/close', { schema: { params: VisitId, body: z.strictObject({}) } }, async (req) => {
    const context = await contextOf(req);
    const assessment = await finishVisit(context, req.params.id);
    return { closedAt: context.now(), leaflet: assessment.leaflet, assessment };
  });

  app.get('/api/visits/:id/leaflet', { schema: { params: VisitId, querystring: LeafletQuery } }, async (req): Promise<LeafletBundle> => {
    const context = await contextOf(req);
    const { db, scope } = context;
    const loaded = await loadVisit(db, scope, req.params.id);
    const stored = loaded.visit.state === 'open' ? assessVisit(loaded.input, content) : await readStoredAssessment(db, scope, loaded);
    const { assessment, past } = printedOn(stored, loaded.input, content, await localDate(context));
    const { language } = req.query;
    const leaflets = language === undefined ? assessment.leaflets : [leafletIn(language, assessment, loaded.input, content)];
    const { patient, input } = loaded;
    const { language: keptLanguage = null, largePrint = null } = patient.profile;
    const asks = (input.person.homes ?? []).length > 0 ? null : input.visit.language;
    return { patientId: patient.id, kept: { language: keptLanguage, largePrint }, asks, leaflets, past };
  });
};

async function openVisitOf(context: Parameters<typeof confirmLevel>[0], id: string): Promise<LoadedVisit> {
  const loaded = await loadVisit(context.db, context.scope, id);
  if (loaded.visit.state !== 'open') throw new AppError('VISIT_CLOSED', 'This visit is closed.');
  return loaded;
}
