import type { FastifyPluginAsyncZod } from 'fastify-type-provider-zod';
import { z } from 'zod';
import { addAppointment } from '../../actions/addAppointment.ts';
import { changeAppointment } from '../../actions/changeAppointment.ts';
import type { ActionContext } from '../../actions/context.ts';
import { importDay, previewDay } from '../../actions/importDay.ts';
import {
  AppointmentChange,
  type CheckedDay,
  DayDate,
  DayRows,
  type FoundPerson,
  ListText,
  MOST_ROWS,
  NewAppointment,
  type ReadDay,
  type TakenDay,
} from '../../api/day.ts';
import { AppError } from '../../api/errors.ts';
import type { DateOrder } from '../../core/day/birthday.ts';
import type { DayRow } from '../../core/day/dayRow.ts';
import { findDateOrder } from '../../core/day/findDateOrder.ts';
import { listPatients } from '../../store/read/patients.ts';
import type { ContextOf } from '../context.ts';
import { localDate } from '../siteClock.ts';
import { listDay } from './listDay.ts';
import { listSheets } from './listSheets.ts';
import { readRows } from './readRows.ts';

const AppointmentId = z.strictObject({ id: z.uuid() });
const MOST_FOUND = 12;
const LIST_BYTES = 4_000_000;

/** Today and any other day: who is expected, and who came. */
export const dayRoutes: FastifyPluginAsyncZod<{ contextOf: ContextOf }> = async (app, { contextOf }) => {
  app.get('/api/days/:date', { schema: { params: DayDate } }, async (req) => listDay(await contextOf(req), req.params.date));

  app.post('/api/days/:date/appointments', { schema: { params: DayDate, body: NewAppointment } }, async (req, reply) => {
    const context = await contextOf(req);
    const onDate = dayOf(req.params.date, await localDate(context));
    const { appointmentId } = await addAppointment(context, { ...req.body, onDate });
    return reply.code(201).send({ id: appointmentId });
  });

  app.put('/api/appointments/:id', { schema: { params: AppointmentId, body: AppointmentChange } }, async (req) => {
    const { version, ...change } = req.body;
    return changeAppointment(await contextOf(req), { id: req.params.id, expectedVersion: version, ...change });
  });

  app.get('/api/days/:date/sheets', { schema: { params: DayDate } }, async (req) => ({
    sheets: await listSheets(await contextOf(req), req.params.date),
  }));

  app.post(
    '/api/days/:date/read',
    { bodyLimit: LIST_BYTES, schema: { params: DayDate, body: ListText } },
    async (req): Promise<ReadDay> => {
      const context = await contextOf(req);
      const list = readRows(req.body.text, req.body.columns);
      if (list.rows.length > MOST_ROWS)
        throw new AppError('INPUT_INVALID', `The list has ${list.rows.length} rows; ${MOST_ROWS} are taken at once.`);
      return { ...list, ...(await checkRows(context, req.params.date, { rows: list.rows })) };
    },
  );

  app.post('/api/days/:date/check', { bodyLimit: LIST_BYTES, schema: { params: DayDate, body: DayRows } }, async (req) =>
    checkRows(await contextOf(req), req.params.date, req.body),
  );

  app.post(
    '/api/days/:date/import',
    { bodyLimit: LIST_BYTES, schema: { params: DayDate, body: DayRows } },
    async (req): Promise<TakenDay> => {
      const context = await contextOf(req);
      const today = await localDate(context);
      const { rows, dateOrder } = req.body;
      return importDay(context, { onDate: dayOf(req.params.date, today), today, rows, dateOrder });
    },
  );

  app.get('/api/people/found', { schema: { querystring: z.strictObject({ text: z.string().max(200) }) } }, async (req) => {
    const { db, scope } = await contextOf(req);
    const found = await listPatients(db, scope, req.query.text, MOST_FOUND);
    return {
      people: found.map(
        ({ id, birthDate, profile }): FoundPerson => ({ id, birthDate, name: profile.name, chartNumber: profile.chartNumber ?? null }),
      ),
    };
  });
};

const dayOf = (date: string, today: string): string => (date === 'today' ? today : date);

type RowsToCheck = { readonly rows: readonly DayRow[]; readonly dateOrder?: DateOrder | undefined };

/** What the rows would do. Where the dates themselves tell which number is the day, that order is used, and said. */
async function checkRows(context: ActionContext, date: string, { rows, dateOrder }: RowsToCheck): Promise<CheckedDay> {
  const today = await localDate(context);
  const dates = findDateOrder(rows.filter(({ leftOut }) => !leftOut).map(({ birthday }) => birthday));
  const order = dateOrder ?? dates.told;
  const verdicts = await previewDay(context.db, context.scope, { onDate: dayOf(date, today), today, rows, dateOrder: order });
  return { dates, dateOrder: order ?? null, verdicts };
}
