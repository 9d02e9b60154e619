import type { FastifyPluginAsyncZod } from 'fastify-type-provider-zod';
import { z } from 'zod';
import { dropStudy } from '../../actions/dropStudy.ts';
import { importStudyReadings } from '../../actions/importStudyReadings.ts';
import { linkStudyPerson } from '../../actions/linkStudyPerson.ts';
import { planStudy } from '../../actions/planStudy.ts';
import { recordStudyReading } from '../../actions/recordStudyReading.ts';
import { reportStudy } from '../../actions/reportStudy.ts';
import { requireMeter } from '../../actions/requireSupplies.ts';
import { AppError } from '../../api/errors.ts';
import { NewStudy, NewStudyReading, ReportBody, StudyPersonBody, StudyTable, VoidBody } from '../../api/swabChecks.ts';
import { content } from '../../content/allContent.ts';
import { reportOf } from '../../core/checks/reportOf.ts';
import { listCatalog } from '../../store/read/catalog.ts';
import type { ContextOf } from '../context.ts';
import { sendCsv } from '../sendCsv.ts';
import { localDate } from '../siteClock.ts';
import { readStudy } from './readChecks.ts';
import { readCutoffStudy } from './readCutoffStudy.ts';
import { studyReadingsCsv } from './studyReadingsCsv.ts';

const CutoffQuery = z.strictObject({ meterId: z.string().min(1).max(100), withinMonths: z.coerce.number().int().min(1).max(120) });
const StudyId = z.strictObject({ id: z.uuid() });

/** Swab studies: planned, taken swab by swab or from a table, reported or given up. The report is computed here, from what is on record. */
export const studyRoutes: FastifyPluginAsyncZod<{ contextOf: ContextOf }> = async (app, { contextOf }) => {
  app.post('/api/studies', { schema: { body: NewStudy } }, async (req, reply) => {
    return reply.code(201).send(await planStudy(await contextOf(req), req.body));
  });

  app.get('/api/cutoff-study', { schema: { querystring: CutoffQuery } }, async (req) => readCutoffStudy(await contextOf(req), req.query));

  app.get('/api/studies/:id', { schema: { params: StudyId } }, async (req) => readStudy(await contextOf(req), req.params.id));

  app.get('/api/studies/:id/readings.csv', { schema: { params: StudyId } }, async (req, reply) => {
    const context = await contextOf(req);
    const { study, readings } = await readStudy(context, req.params.id);
    const lots = (await listCatalog(context.db, context.scope, 'lot')).map(({ body }) => body);
    return sendCsv(reply, 'swab-study.csv', studyReadingsCsv(study, readings, lots));
  });

  app.post('/api/studies/:id/readings', { schema: { params: StudyId, body: NewStudyReading } }, async (req, reply) => {
    return reply.code(201).send(await recordStudyReading(await contextOf(req), { studyId: req.params.id, ...req.body }));
  });

  app.post('/api/studies/:id/table', { schema: { params: StudyId, body: StudyTable } }, async (req) => {
    return importStudyReadings(await contextOf(req), { studyId: req.params.id, text: req.body.text });
  });

  app.put('/api/studies/:id/people', { schema: { params: StudyId, body: StudyPersonBody } }, async (req) => {
    const { part, patientId, version: expectedVersion } = req.body;
    return linkStudyPerson(await contextOf(req), { studyId: req.params.id, part, patientId, expectedVersion });
  });

  app.post('/api/studies/:id/report', { schema: { params: StudyId, body: ReportBody } }, async (req) => {
    const context = await contextOf(req);
    const { study, readings } = await readStudy(context, req.params.id);
    const meter = await requireMeter(context.db, context.scope, study.meterId);
    const outcome = reportOf(study, readings, meter, content.readingNoise);
    if (!outcome.ok) throw new AppError('INPUT_INVALID', `${outcome.says} ${outcome.wouldHelp}`);
    const { version: expectedVersion } = req.body;
    const onDate = await localDate(context);
    return reportStudy(context, { studyId: study.id, expectedVersion, onDate, report: outcome.report });
  });

  app.post('/api/studies/:id/drop', { schema: { params: StudyId, body: VoidBody } }, async (req) => {
    const { version: expectedVersion, reason } = req.body;
    return dropStudy(await contextOf(req), { studyId: req.params.id, expectedVersion, reason });
  });
};
