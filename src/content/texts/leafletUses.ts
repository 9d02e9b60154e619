import type { LeafletGoal, LeafletUse } from '../../core/leaflet/leafletTable.ts';
import type { SourceRef } from '../../core/visit/answer.ts';

const read = (key: string): SourceRef => ({ key, status: 'read' });
const words: SourceRef = { key: 'leaflet-words', status: 'proposal' };
const convention: SourceRef = { key: 'leaflet-convention', status: 'memory' };

/** How each agent is used at home or at the visit. The first row that fits is taken; figures stand only where a label was read. */
export const leafletUses: readonly LeafletUse[] = [
  { agentId: 'F_PASTE_LOW', use: 'brush', rhythm: 'brushing', measure: 'paste', source: read('leaflet-paste') },
  { agentId: 'F_PASTE_STD', use: 'brush', rhythm: 'brushing', measure: 'paste', source: read('leaflet-paste') },
  { agentId: 'F_PASTE_2800', use: 'brush-strong', rhythm: 'brushing', measure: 'paste', ribbonCm: 1, source: read('leaflet-paste-2800') },
  {
    agentId: 'F_PASTE_5000',
    jurisdiction: 'UK',
    use: 'brush-strong',
    rhythm: 'brushing',
    measure: 'paste',
    ribbonCm: 2,
    source: read('leaflet-paste-5000'),
  },
  { agentId: 'F_PASTE_5000', use: 'brush-strong', rhythm: 'brushing', measure: 'paste', source: words },
  { agentId: 'ARGININE', use: 'brush', rhythm: 'brushing', measure: 'paste', source: words },
  { agentId: 'FTCP', use: 'brush', rhythm: 'brushing', measure: 'paste', source: words },
  // Beside fluoride paste, and at another time of the day than it.
  { agentId: 'HAP', forms: ['paste', 'gel'], use: 'brush', rhythm: 'apart-from-brushing', measure: 'pea', source: words },
  // The US label puts the rinse after brushing; elsewhere it is used at another time, so that both count.
  {
    agentId: 'F_RINSE_005',
    jurisdiction: 'US',
    use: 'rinse',
    rhythm: 'brushing',
    measure: 'mL',
    source: read('leaflet-rinse-005'),
  },
  { agentId: 'F_RINSE_005', use: 'rinse', rhythm: 'apart-from-brushing', measure: 'mL', source: read('leaflet-rinse-005') },
  { agentId: 'F_RINSE_02', use: 'rinse', rhythm: 'apart-from-brushing', measure: 'mL', source: convention },
  { agentId: 'F_GEL_SNF2', use: 'gel', rhythm: 'brushing', measure: 'none', source: convention },
  {
    agentId: 'CHX_RINSE',
    use: 'rinse-germs',
    rhythm: 'apart-from-brushing',
    measure: 'mL',
    source: read('leaflet-chlorhexidine'),
  },
  { agentId: 'NAOCL', use: 'rinse-written-plan', rhythm: 'apart-from-brushing', measure: 'mL', source: words },
  { agentId: 'ESSENTIAL_OILS', use: 'rinse', rhythm: 'apart-from-brushing', measure: 'mL', source: convention },
  { agentId: 'BICARB', forms: ['powder'], use: 'rinse-soda', rhythm: 'after-meals', measure: 'none', source: read('leaflet-bicarbonate') },
  { agentId: 'BICARB', use: 'rinse', rhythm: 'after-meals', measure: 'mL', source: words },
  { agentId: 'XYLITOL', forms: ['gum'], use: 'chew', rhythm: 'after-meals', measure: 'piece', source: read('leaflet-polyol') },
  { agentId: 'XYLITOL', forms: ['lozenge'], use: 'melt', rhythm: 'after-meals', measure: 'piece', source: read('leaflet-polyol') },
  { agentId: 'POLYOL_GUM', use: 'chew', rhythm: 'after-meals', measure: 'piece', source: read('leaflet-polyol') },
  { agentId: 'CPP_ACP', use: 'spread', rhythm: 'after-meals', measure: 'pea-on-finger', source: convention },
  { agentId: 'SALIVA', forms: ['lozenge'], use: 'melt', rhythm: 'when-dry', measure: 'piece', source: words },
  { agentId: 'SALIVA', use: 'moisten', rhythm: 'when-dry', measure: 'none', source: words },
  { agentId: 'F_VARNISH', use: 'varnish', rhythm: 'brushing', measure: 'none', source: read('leaflet-varnish') },
  { agentId: 'SDF38', use: 'silver', rhythm: 'brushing', measure: 'none', source: words },
  { agentId: 'SEALANT', use: 'sealant', rhythm: 'brushing', measure: 'none', source: words },
  { agentId: 'F_GEL_APF', use: 'at-visit', rhythm: 'brushing', measure: 'none', source: words },
  { agentId: 'CHX_VARNISH', use: 'varnish', rhythm: 'brushing', measure: 'none', source: words },
  { agentId: 'PVPI', use: 'at-visit', rhythm: 'brushing', measure: 'none', source: words },
  { agentId: 'HAP', use: 'rinse', rhythm: 'apart-from-brushing', measure: 'mL', source: words },
  { agentId: 'CA_PRERINSE', use: 'as-shown', rhythm: 'brushing', measure: 'mL', source: words },
  { agentId: 'F_SUPP', use: 'as-shown', rhythm: 'brushing', measure: 'none', source: words },
];

const BOTTLE_BELOW_YEARS = 3;
const RINSE_FROM_YEARS = 6;

/** What may be agreed as a thing to keep or to try. Within a family, the first that fits the age is suggested when nothing was agreed. */
export const leafletGoals: readonly LeafletGoal[] = [
  { id: 'brush-morning-night', family: 'care' },
  { id: 'grown-up-brushes', family: 'care', belowAgeYears: 7 },
  { id: 'spit-no-rinse', family: 'care', fromAgeYears: RINSE_FROM_YEARS },
  { id: 'clean-between', family: 'care', fromAgeYears: RINSE_FROM_YEARS },
  { id: 'sweet-drink-with-meal', family: 'food' },
  { id: 'sweet-food-with-meal', family: 'food' },
  { id: 'water-between-meals', family: 'food' },
  { id: 'no-long-sipping', family: 'food' },
  { id: 'water-after-night-brush', family: 'food' },
  { id: 'no-sweet-bottle', family: 'bottle-or-cup', belowAgeYears: BOTTLE_BELOW_YEARS },
  { id: 'no-sweet-bottle-at-night', family: 'bottle-or-cup', belowAgeYears: BOTTLE_BELOW_YEARS },
  { id: 'rinse-after-sweet', family: 'afterwards', fromAgeYears: RINSE_FROM_YEARS },
  { id: 'wipe-after-sweet', family: 'afterwards', belowAgeYears: RINSE_FROM_YEARS },
];
