import type { VisitContent } from '../core/visit/visitContent.ts';
import { findingFills, itemExclusions, mouthFills } from './findingFills.ts';
import { dayTables } from './plaque/dayTables.ts';
import { mouthPresets } from './plaque/presets.ts';
import { protocolTables } from './protocols/protocolTables.ts';
import { questions } from './questions.ts';
import { readingNoise } from './readingNoise.ts';
import { readyEventNames } from './readyDayNames.ts';
import { regimenTables } from './regimenTables.ts';
import { swabConditions } from './swabConditions.ts';
import { leafletTable } from './texts/leafletTable.ts';
import { versions } from './versions.ts';

/** Every clinical table of this edition, as an assessment takes them. */
export const content: VisitContent = {
  questions,
  findingFills,
  itemExclusions,
  mouthFills,
  protocols: protocolTables,
  swabConditions,
  readingNoise,
  regimen: regimenTables,
  leaflet: leafletTable,
  acidDay: { tables: dayTables, mouths: mouthPresets, eventNames: readyEventNames },
  versions,
};
