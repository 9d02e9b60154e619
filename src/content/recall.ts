import type { CareRow, OldBitewingRow, RecallRow } from '../core/regimen/tables.ts';
import type { Level } from '../core/risk/types.ts';
import type { SourceRef } from '../core/visit/answer.ts';

const read = (key: string, note?: string): SourceRef => ({ key, status: 'read', note });
const memory = (key: string, note?: string): SourceRef => ({ key, status: 'memory', note });

const FOREVER = 200;
const CHILD_6PLUS = ['child_list_6plus'];
const CHILD_0_5 = ['child_list_0_5'];
const FOUR_LEVEL = ['four_level_6plus_2019', 'four_level_0_5_2010'];
const SCORED = ['scored_list_0_6', 'scored_list_over_6'];

const childRecall = (protocols: readonly string[], source: SourceRef): RecallRow[] =>
  (
    [
      ['low', 6, 12],
      ['moderate', 6, 6],
      ['high', 3, 3],
    ] as const
  ).map(([level, fromMonths, toMonths]) => ({
    protocols,
    level,
    fromAgeYears: 0,
    belowAgeYears: FOREVER,
    fromMonths,
    toMonths,
    table: 'Child list table, 2022',
    source,
  }));

const fourLevelRecall: RecallRow[] = (
  [
    ['low', 6, 12],
    ['moderate', 4, 6],
    ['high', 3, 4],
    ['extreme', 3, 3],
  ] as const
).map(([level, fromMonths, toMonths]) => ({
  protocols: FOUR_LEVEL,
  level,
  fromAgeYears: 0,
  belowAgeYears: FOREVER,
  fromMonths,
  toMonths,
  table: 'Four-level care rows, 2007 and 2019',
  source: memory('F2007', 'rows of care from memory'),
}));

/** Months to the next routine visit by list and level; the last rows are bounds for every list without rows of its own. */
export const recallRows: readonly RecallRow[] = [
  ...childRecall(CHILD_6PLUS, read('AAPD2022p270')),
  ...childRecall(CHILD_0_5, read('AAPDcards', 'secondary')),
  ...fourLevelRecall,
  {
    protocols: [],
    fromAgeYears: 0,
    belowAgeYears: 18,
    fromMonths: 3,
    toMonths: 12,
    table: 'Recall bounds, 2004: shortest and longest, under 18',
    source: read('nice2004'),
  },
  {
    protocols: [],
    fromAgeYears: 18,
    belowAgeYears: FOREVER,
    fromMonths: 3,
    toMonths: 24,
    table: 'Recall bounds, 2004: shortest and longest, adults',
    source: read('nice2004'),
  },
];

const OLD_TABLE = '2012 edition, replaced 2026';
const old = (fromAgeYears: number, belowAgeYears: number, raised: boolean, fromMonths: number, toMonths: number): OldBitewingRow => ({
  fromAgeYears,
  belowAgeYears,
  raised,
  fromMonths,
  toMonths,
  label: OLD_TABLE,
  source: read('bitewings2012', 'ages of the stages are ours; for children only where contacts cannot be seen'),
});

/** The superseded table of bitewing intervals, shown as such and never as current. */
export const oldBitewings: readonly OldBitewingRow[] = [
  old(0, 12, true, 6, 12),
  old(0, 12, false, 12, 24),
  old(12, 18, true, 6, 12),
  old(12, 18, false, 18, 36),
  old(18, FOREVER, true, 6, 18),
  old(18, FOREVER, false, 24, 36),
];

const HIGH_FLUORIDE = [['F_PASTE_5000'], ['F_PASTE_2800'], ['F_RINSE_02', 'F_RINSE_005', 'F_GEL_SNF2']] as const;
const RINSE_FIRST = [['F_RINSE_005'], ['F_GEL_SNF2']] as const;
const PROFESSIONAL = [['F_VARNISH'], ['F_GEL_APF']] as const;
const VARNISH_ONLY = [['F_VARNISH']] as const;

export const FOUR_LEVEL_TABLE = 'Four-level care rows, 2007 and 2019';
export const CHILD_TABLE = 'Child list table, 2022';
export const GUIDELINE_TABLE = 'Topical fluoride guideline, 2013';
const OLDER = [6, FOREVER] as const;
const YOUNGER = [0, 6] as const;
const ANY_AGE = [0, FOREVER] as const;

const row = (
  protocols: readonly string[],
  level: Level,
  [fromAgeYears, belowAgeYears]: readonly [from: number, below: number],
  table: string,
  needs: CareRow['needs'],
  source: SourceRef,
): CareRow => ({ protocols, level, fromAgeYears, belowAgeYears, table, needs, source });

const fourLevelSource = memory('F2007', 'rows of care from memory');
const underSix = read('ada2013', 'varnish is the only professional fluoride under 6');
const sweetened = { kind: 'sweetener', agentIds: [['XYLITOL'], ['POLYOL_GUM']] } as const;
const germs = { kind: 'antimicrobial' } as const;
const varnish = { kind: 'professional-fluoride', agentIds: VARNISH_ONLY } as const;
const professional = { kind: 'professional-fluoride', agentIds: PROFESSIONAL } as const;
const rinse = { kind: 'fluoride-extra', agentIds: RINSE_FIRST } as const;
const highFluoride = { kind: 'fluoride-extra', agentIds: HIGH_FLUORIDE } as const;
const buffers = { kind: 'acid-control' } as const;
const minerals = { kind: 'calcium-phosphate' } as const;

/** The scored lists have no rows of care: the four-level rows are used, and the need says so by their name. */
const FOUR_LEVEL_ROWS = [...FOUR_LEVEL, ...SCORED];

/** What each list's table of care adds to fluoride paste, by confirmed level. */
export const careRows: readonly CareRow[] = [
  row(FOUR_LEVEL_ROWS, 'low', OLDER, FOUR_LEVEL_TABLE, [], fourLevelSource),
  row(FOUR_LEVEL_ROWS, 'moderate', OLDER, FOUR_LEVEL_TABLE, [rinse, professional, sweetened], fourLevelSource),
  row(FOUR_LEVEL_ROWS, 'high', OLDER, FOUR_LEVEL_TABLE, [highFluoride, professional, sweetened, germs], fourLevelSource),
  row(
    FOUR_LEVEL_ROWS,
    'extreme',
    OLDER,
    FOUR_LEVEL_TABLE,
    [highFluoride, professional, sweetened, germs, buffers, minerals],
    fourLevelSource,
  ),
  row(FOUR_LEVEL_ROWS, 'low', YOUNGER, GUIDELINE_TABLE, [], underSix),
  row(FOUR_LEVEL_ROWS, 'moderate', YOUNGER, GUIDELINE_TABLE, [varnish], underSix),
  row(FOUR_LEVEL_ROWS, 'high', YOUNGER, GUIDELINE_TABLE, [varnish], underSix),
  row(FOUR_LEVEL_ROWS, 'extreme', YOUNGER, GUIDELINE_TABLE, [varnish], underSix),
  row(CHILD_6PLUS, 'low', ANY_AGE, CHILD_TABLE, [], read('AAPD2022p270')),
  row(CHILD_6PLUS, 'moderate', ANY_AGE, CHILD_TABLE, [professional], read('AAPD2022p270')),
  row(CHILD_6PLUS, 'high', ANY_AGE, CHILD_TABLE, [highFluoride, professional], read('AAPD2022p270')),
  row(CHILD_0_5, 'low', ANY_AGE, CHILD_TABLE, [], memory('AAPDcards', 'fluoride column from memory')),
  row(CHILD_0_5, 'moderate', ANY_AGE, CHILD_TABLE, [varnish], memory('AAPDcards', 'fluoride column from memory')),
  row(CHILD_0_5, 'high', ANY_AGE, CHILD_TABLE, [varnish], memory('AAPDcards', 'fluoride column from memory')),
];
