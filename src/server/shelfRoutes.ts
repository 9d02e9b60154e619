import type { FastifyPluginAsyncZod } from 'fastify-type-provider-zod';
import { z } from 'zod';
import { saveSettings } from '../actions/saveSettings.ts';
import { saveShelfItem } from '../actions/saveShelfItem.ts';
import { AppError } from '../api/errors.ts';
import { PracticeSettingsSchema, ShelfItemSchema } from '../api/visitSchema.ts';
import type { ShelfItem } from '../core/regimen/types.ts';
import { listCatalog } from '../store/read/catalog.ts';
import { findPractice } from '../store/read/sites.ts';
import type { ContextOf } from './context.ts';

const version = z.int().nonnegative();

/** What the practice keeps of its own: the shelf and the settings. Everything else on the page of rules comes with the program. */
export const shelfRoutes: FastifyPluginAsyncZod<{ contextOf: ContextOf }> = async (app, { contextOf }) => {
  app.get('/api/shelf', async (req) => {
    const { db, scope } = await contextOf(req);
    return { items: (await listCatalog(db, scope, 'shelf-item')).map((entry) => ({ item: entry.body, version: entry.version })) };
  });

  app.put(
    '/api/shelf/:id',
    { schema: { params: z.strictObject({ id: z.string().max(100) }), body: z.strictObject({ item: ShelfItemSchema, version }) } },
    async (req) => {
      const context = await contextOf(req);
      const { item, version: expectedVersion } = req.body;
      if (item.id !== req.params.id) throw new AppError('INPUT_INVALID', 'item.id: differs from the address');
      const saved = await saveShelfItem(context, { item: { ...item, traits: item.traits } satisfies ShelfItem, expectedVersion });
      return { version: saved.version };
    },
  );

  app.get('/api/rules', async (req) => {
    const { db, scope } = await contextOf(req);
    const stored = await findPractice(db, scope);
    if (!stored) throw new AppError('SITE_NOT_FOUND', 'This practice is not in the data file.');
    return { settings: stored.practice.settings, version: stored.version };
  });

  app.put('/api/settings', { schema: { body: z.strictObject({ settings: PracticeSettingsSchema, version }) } }, async (req) => {
    const context = await contextOf(req);
    const saved = await saveSettings(context, { settings: req.body.settings, expectedVersion: req.body.version });
    return { version: saved.version };
  });
};
