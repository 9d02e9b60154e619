import type { LeafletTable } from '../leaflet/leafletTable.ts';
import type { NoiseTable } from '../reading/noiseTable.ts';
import type { SwabCondition } from '../reading/types.ts';
import type { DayUseTables } from '../regimen/dayStrip/dayUseTables.ts';
import type { RegimenTables } from '../regimen/tables.ts';
import type { FindingFill, ItemExclusion } from '../risk/findingFill.ts';
import type { MouthFill } from '../risk/mouthFill.ts';
import type { ProtocolTable } from '../risk/protocol.ts';
import type { AcidDayContent } from './leafletStrip.ts';
import type { Question } from './question.ts';

/** Every clinical table that one assessment reads. Passed in, so that an old visit can be replayed with the edition that made it. */
export interface VisitContent {
  readonly questions: readonly Question[];
  readonly findingFills: readonly FindingFill[];
  readonly itemExclusions: readonly ItemExclusion[];
  readonly mouthFills: readonly MouthFill[];
  readonly protocols: readonly ProtocolTable[];
  readonly swabConditions: readonly SwabCondition[];
  readonly readingNoise: NoiseTable;
  readonly regimen: RegimenTables;
  readonly leaflet: LeafletTable;
  readonly acidDay: AcidDayContent;
  readonly dayUses: DayUseTables;
  readonly versions: { readonly code: string; readonly content: string };
}
