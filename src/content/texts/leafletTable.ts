import type { LeafletTable } from '../../core/leaflet/leafletTable.ts';
import { leafletRules } from './leafletRules.ts';
import ar from './locales/ar.json' with { type: 'json' };
import en from './locales/en.json' with { type: 'json' };
import es from './locales/es.json' with { type: 'json' };
import fr from './locales/fr.json' with { type: 'json' };

/** Everything that a leaflet is built from, besides the plan, in every language. */
export const leafletTable: LeafletTable = { ...leafletRules, catalogs: { en, es, fr, ar } };
