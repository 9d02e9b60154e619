import type { LeafletTable } from '../../core/leaflet/leafletTable.ts';
import { agents } from '../agents.ts';
import { cautions } from '../cautions.ts';
import { leafletGoals, leafletUses } from './leafletUses.ts';

/** What a leaflet is built from besides the plan and the words. */
export const leafletRules: Omit<LeafletTable, 'catalogs'> = {
  uses: leafletUses,
  goals: leafletGoals,
  cautions,
  agents,
  // A language leaves this list when a clinician whose mother tongue it is has read the catalog; who and when goes into docs/safety.md.
  awaitingReview: ['es', 'fr', 'ar'],
};
