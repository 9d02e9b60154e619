import type { LeafletTable } from '../../core/leaflet/leafletTable.ts';
import { agents } from '../agents.ts';
import { cautions } from '../cautions.ts';
import { leafletWordsEn } from './en.ts';
import { leafletWordsEs } from './es.ts';
import { leafletGoals, leafletUses } from './leafletUses.ts';

/** Everything that a leaflet is built from, besides the plan. */
export const leafletTable: LeafletTable = {
  uses: leafletUses,
  goals: leafletGoals,
  cautions,
  agents,
  words: { en: leafletWordsEn, es: leafletWordsEs },
};
