import type { LeafletTable } from '../core/leaflet/leafletTable.ts';
import type { VisitContent } from '../core/visit/visitContent.ts';
import { namedRhythms, rhythmKept, stripTimes, usualRhythms } from './dayRhythms.ts';
import { findingFills, itemExclusions, mouthFills } from './findingFills.ts';
import { dayTables } from './plaque/dayTables.ts';
import { mouthPresets } from './plaque/presets.ts';
import { protocolTables } from './protocols/protocolTables.ts';
import { questions } from './questions.ts';
import { readingNoise } from './readingNoise.ts';
import { readyEventNames } from './readyDayNames.ts';
import { regimenTables } from './regimenTables.ts';
import { swabConditions } from './swabConditions.ts';
import { versions } from './versions.ts';

/** Every clinical table of this edition, as an assessment takes them, with the leaflet in the languages that are at hand. */
export const contentWith = (leaflet: LeafletTable): VisitContent => ({
  questions,
  findingFills,
  itemExclusions,
  mouthFills,
  protocols: protocolTables,
  swabConditions,
  readingNoise,
  regimen: regimenTables,
  leaflet,
  acidDay: { tables: dayTables, mouths: mouthPresets, eventNames: readyEventNames },
  dayUses: { usual: usualRhythms, named: namedRhythms, times: stripTimes, rhythmKept },
  versions,
});
