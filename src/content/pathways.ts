import type { Given, Pathway, PathwayRow } from '../core/regimen/needs/pathway.ts';
import type { Level } from '../core/risk/types.ts';
import type { SourceRef } from '../core/visit/answer.ts';
import { CHILD_TABLE, FOUR_LEVEL_TABLE, GUIDELINE_TABLE } from './recall.ts';

const read = (key: string, note?: string): SourceRef => ({ key, status: 'read', note });
const memory = (key: string, note?: string): SourceRef => ({ key, status: 'memory', note });
const mixed = (key: string, note?: string): SourceRef => ({ key, status: 'mixed', note });

const FOREVER = 200;
const RAISED: readonly Level[] = ['moderate', 'high', 'extreme'];
const HIGH_AND_ABOVE: readonly Level[] = ['high', 'extreme'];

const given = (says: string, ...agentIds: readonly string[]): Given => (agentIds.length > 0 ? { says, agentIds } : { says });
const months = (from: number, to: number): Given => given(from === to ? `${from} months` : `${from} to ${to} months`);

const PASTE_TWICE = given('paste twice a day', 'F_PASTE_STD');
const XYLITOL_DAILY = given('6 to 10 g xylitol a day', 'XYLITOL');
const SEAL = given('yes');
const SEAL_OPTIONAL = given('optional');
const CHLORHEXIDINE = given(
  'chlorhexidine 0.12 % for a week of each month; a guideline of 2011 advises against chlorhexidine for decay, and it is never proposed by default',
  'CHX_RINSE',
);

const OLDER = { fromAgeYears: 6, belowAgeYears: FOREVER };
const YOUNGER = { fromAgeYears: 0, belowAgeYears: 6 };
const fourLevelSource = memory('F2007', 'rows of care from memory; the tables of 2021 were not reached');

const fourLevel: Pathway = {
  id: 'four-level',
  name: FOUR_LEVEL_TABLE,
  edition: '2007, with later forms to 2021',
  speaksOf: 'ages from 6',
  rows: [
    {
      levels: ['low'],
      called: 'low',
      ...OLDER,
      gives: {
        'home-fluoride': given('paste of 1,000 to 1,450 ppm twice a day', 'F_PASTE_STD'),
        'professional-fluoride': given('varnish optional, for exposed roots', 'F_VARNISH'),
        sealing: SEAL_OPTIONAL,
        recall: months(6, 12),
        bitewings: months(24, 36),
      },
      source: fourLevelSource,
    },
    {
      levels: ['moderate'],
      called: 'moderate',
      ...OLDER,
      gives: {
        'home-fluoride': given('paste twice a day and a rinse, sodium fluoride 0.05 %', 'F_PASTE_STD', 'F_RINSE_005'),
        'professional-fluoride': given('varnish once or twice, then every 4 to 6 months', 'F_VARNISH'),
        sweetener: XYLITOL_DAILY,
        sealing: SEAL,
        recall: months(4, 6),
        bitewings: months(18, 24),
      },
      source: fourLevelSource,
    },
    {
      levels: ['high'],
      called: 'high',
      ...OLDER,
      gives: {
        'home-fluoride': given('paste, sodium fluoride 1.1 % (about 5,000 ppm), twice a day', 'F_PASTE_5000'),
        'professional-fluoride': given('varnish one to three times, then every 3 to 4 months', 'F_VARNISH'),
        antimicrobial: CHLORHEXIDINE,
        sweetener: XYLITOL_DAILY,
        sealing: SEAL,
        recall: months(3, 4),
        bitewings: months(6, 18),
      },
      source: fourLevelSource,
    },
    {
      levels: ['extreme'],
      called: 'extreme',
      ...OLDER,
      gives: {
        'home-fluoride': given(
          'paste, sodium fluoride 1.1 % (about 5,000 ppm), twice a day, and a rinse, sodium fluoride 0.05 %, when the mouth is dry',
          'F_PASTE_5000',
          'F_RINSE_005',
        ),
        'professional-fluoride': given('varnish one to three times, then every 3 months', 'F_VARNISH'),
        antimicrobial: CHLORHEXIDINE,
        sweetener: XYLITOL_DAILY,
        'acid-control': given('bicarbonate rinse or gum four to six times a day', 'BICARB'),
        'calcium-phosphate': given('calcium-phosphate paste twice a day', 'CPP_ACP'),
        sealing: SEAL,
        recall: months(3, 3),
        bitewings: months(6, 6),
      },
      source: fourLevelSource,
    },
  ],
};

const childSource = read('AAPD2022p270', 'supplements for places without fluoride in the water left out: off by default');
const youngSource = mixed('AAPDcards', 'intervals read in study notes; fluoride from memory');

const childList: Pathway = {
  id: 'child-list',
  name: CHILD_TABLE,
  edition: '2022',
  speaksOf: 'children and adolescents, in three levels',
  rows: [
    {
      levels: ['low'],
      called: 'low',
      fromAgeYears: 6,
      belowAgeYears: 18,
      gives: { 'home-fluoride': PASTE_TWICE, sealing: SEAL, recall: months(6, 12), bitewings: months(12, 24) },
      source: childSource,
    },
    {
      levels: ['moderate'],
      called: 'moderate',
      fromAgeYears: 6,
      belowAgeYears: 18,
      gives: {
        'home-fluoride': PASTE_TWICE,
        'professional-fluoride': given('every 6 months'),
        sealing: SEAL,
        recall: months(6, 6),
        bitewings: months(6, 12),
      },
      source: childSource,
    },
    {
      levels: HIGH_AND_ABOVE,
      called: 'high',
      fromAgeYears: 6,
      belowAgeYears: 18,
      gives: {
        'home-fluoride': given('paste or gel of 0.5 % fluoride (about 5,000 ppm)', 'F_PASTE_5000'),
        'professional-fluoride': given('every 3 months; silver fluoride on cavities', 'SDF38'),
        sealing: SEAL,
        recall: months(3, 3),
        bitewings: months(6, 6),
      },
      source: childSource,
    },
    { levels: ['low'], called: 'low', ...YOUNGER, gives: { recall: months(6, 12), bitewings: months(12, 24) }, source: youngSource },
    {
      levels: ['moderate'],
      called: 'moderate',
      ...YOUNGER,
      gives: { 'professional-fluoride': given('every 6 months'), recall: months(6, 6), bitewings: months(6, 12) },
      source: youngSource,
    },
    {
      levels: HIGH_AND_ABOVE,
      called: 'high',
      ...YOUNGER,
      gives: {
        'professional-fluoride': given('every 3 months; silver fluoride', 'SDF38'),
        recall: months(3, 3),
        bitewings: months(6, 6),
      },
      source: youngSource,
    },
  ],
};

const guidelineSource = read('ada2013');
const WEEKLY_RINSE_OR_PASTE = given(
  'rinse of 0.09 % fluoride at least once a week, or paste or gel of 0.5 % fluoride (about 5,000 ppm) twice a day',
  'F_RINSE_02',
  'F_PASTE_5000',
);
const VARNISH_OR_GEL = given('varnish, or acidulated gel of 1.23 % for 4 minutes, every 3 to 6 months', 'F_VARNISH', 'F_GEL_APF');

const guideline: Pathway = {
  id: 'topical-2013',
  name: GUIDELINE_TABLE,
  edition: '2013',
  speaksOf: 'people at raised risk',
  rows: [
    {
      levels: RAISED,
      called: 'raised risk, under 6',
      ...YOUNGER,
      gives: { 'professional-fluoride': given('varnish of 2.26 % fluoride every 3 to 6 months', 'F_VARNISH') },
      source: guidelineSource,
    },
    {
      levels: RAISED,
      called: 'raised risk, adult with root caries; by expert opinion',
      fromAgeYears: 18,
      belowAgeYears: FOREVER,
      withRootLesion: true,
      gives: {
        'home-fluoride': given(
          'rinse of 0.09 % fluoride every day, or paste or gel of 0.5 % fluoride (about 5,000 ppm) twice a day',
          'F_RINSE_02',
          'F_PASTE_5000',
        ),
        'professional-fluoride': VARNISH_OR_GEL,
      },
      source: guidelineSource,
    },
    {
      levels: RAISED,
      called: 'raised risk, 6 to 18; the paste by expert opinion',
      fromAgeYears: 6,
      belowAgeYears: 18,
      gives: { 'home-fluoride': WEEKLY_RINSE_OR_PASTE, 'professional-fluoride': VARNISH_OR_GEL },
      source: guidelineSource,
    },
    {
      levels: RAISED,
      called: 'raised risk, over 18; by expert opinion',
      fromAgeYears: 18,
      belowAgeYears: FOREVER,
      gives: { 'home-fluoride': WEEKLY_RINSE_OR_PASTE, 'professional-fluoride': VARNISH_OR_GEL },
      source: guidelineSource,
    },
  ],
};

const toolkitSource = read('preventionToolkit', 'from study notes, edition not stated; ages 10 and 16 also on the labels');
const STRONGER = 'paste of 1,350 to 1,500 ppm twice a day';
const TWICE_A_YEAR = given('varnish of 2.26 % fluoride twice a year', 'F_VARNISH');
const TWICE_OR_MORE = given('varnish of 2.26 % fluoride twice a year or more', 'F_VARNISH');

type Band = readonly [fromAgeYears: number, belowAgeYears: number];
const toolkitRow = (isRaised: boolean, [fromAgeYears, belowAgeYears]: Band, gives: PathwayRow['gives']): PathwayRow => ({
  levels: isRaised ? RAISED : ['low'],
  called: isRaised ? 'raised risk' : 'everyone',
  fromAgeYears,
  belowAgeYears,
  gives,
  source: toolkitSource,
});
const atHome = (says: string, ...agentIds: readonly string[]) => ({ 'home-fluoride': given(says, 'F_PASTE_STD', ...agentIds) });

const toolkit: Pathway = {
  id: 'toolkit-2021',
  name: 'National toolkit, 2021',
  edition: '2021, by study notes',
  speaksOf: 'every age',
  rows: [
    toolkitRow(false, [0, 3], atHome('a smear of paste of at least 1,000 ppm twice a day')),
    toolkitRow(true, [0, 3], atHome('a smear of paste of 1,350 to 1,500 ppm twice a day')),
    toolkitRow(false, [3, 7], { ...atHome('a pea of paste above 1,000 ppm twice a day'), 'professional-fluoride': TWICE_A_YEAR }),
    toolkitRow(true, [3, 7], { ...atHome('a pea of paste of 1,350 to 1,500 ppm twice a day'), 'professional-fluoride': TWICE_A_YEAR }),
    toolkitRow(false, [7, 18], { ...atHome(STRONGER), 'professional-fluoride': TWICE_A_YEAR }),
    toolkitRow(true, [7, 8], { ...atHome(STRONGER), 'professional-fluoride': TWICE_OR_MORE }),
    toolkitRow(true, [8, 10], {
      ...atHome(`${STRONGER} and a rinse, sodium fluoride 0.05 %, at another time`, 'F_RINSE_005'),
      'professional-fluoride': TWICE_OR_MORE,
    }),
    toolkitRow(true, [10, 16], {
      ...atHome('paste of 2,800 ppm, and a rinse, sodium fluoride 0.05 %, at another time', 'F_PASTE_2800', 'F_RINSE_005'),
      'professional-fluoride': TWICE_OR_MORE,
    }),
    toolkitRow(true, [16, FOREVER], {
      ...atHome(
        'paste of 2,800 or about 5,000 ppm, and a rinse, sodium fluoride 0.05 %, at another time',
        'F_PASTE_2800',
        'F_PASTE_5000',
        'F_RINSE_005',
      ),
      'professional-fluoride': TWICE_OR_MORE,
    }),
    toolkitRow(false, [18, FOREVER], atHome(STRONGER)),
  ],
};

const table2022Source = read('careTable2022');
const AT_LEAST_1450 = given('paste of at least 1,450 ppm twice a day', 'F_PASTE_STD');
const UP_TO_3_MONTHS = given('as often as every 3 months');

const careTable: Pathway = {
  id: 'care-table-2022',
  name: 'Care table, 2022',
  edition: '2022',
  speaksOf: 'three levels',
  rows: [
    {
      levels: ['low'],
      called: 'low',
      fromAgeYears: 0,
      belowAgeYears: FOREVER,
      gives: { 'home-fluoride': given('paste of at least 1,000 ppm twice a day', 'F_PASTE_STD') },
      source: table2022Source,
    },
    {
      levels: ['moderate'],
      called: 'medium',
      fromAgeYears: 0,
      belowAgeYears: FOREVER,
      gives: {
        'home-fluoride': AT_LEAST_1450,
        'professional-fluoride': given('varnish twice a year', 'F_VARNISH'),
        recall: UP_TO_3_MONTHS,
      },
      source: table2022Source,
    },
    {
      levels: HIGH_AND_ABOVE,
      called: 'high',
      fromAgeYears: 0,
      belowAgeYears: FOREVER,
      gives: {
        'home-fluoride': AT_LEAST_1450,
        'professional-fluoride': given('varnish four times a year', 'F_VARNISH'),
        recall: UP_TO_3_MONTHS,
      },
      source: table2022Source,
    },
  ],
};

/** Published pathways of care, in our own words, to lay beside the practice's own. */
export const pathways: readonly Pathway[] = [fourLevel, childList, guideline, toolkit, careTable];
