import type { BalanceTable } from '../../core/risk/protocol.ts';
import { riskItems } from './items.ts';

/** Four levels, under 6, form of 2010 with the examination items of the version studied in 2016. */
export const fourLevelChild2010: BalanceTable = {
  kind: 'balance',
  id: 'four_level_0_5_2010',
  edition: '2010',
  screenName: 'Four-level, young child, 2010',
  owner: 'Ramos-Gomez F, Featherstone JDB and colleagues; form published with the California Dental Association',
  citation:
    'Ramos-Gomez F, Crystal YO, Ng MW, Crall JJ, Featherstone JDB. J Calif Dent Assoc 2010;38(10):746-761, Table 2; item table of 2016: Chaffee BW and others, JDR Clin Trans Res 2016;1(2):131-142.',
  levels: ['low', 'moderate', 'high', 'extreme'],
  applies: {
    fromAgeYears: 0,
    belowAgeYears: 6,
    source: { key: 'RG2010', status: 'proposal', note: 'form for 0 to 5; completed years, our reading' },
  },
  items: riskItems,
  rows: [
    {
      item: 'caregiver_decay_12m',
      role: 'risk',
      anyOf: [{ item: 'caregiver_decay_12m', is: true }],
      source: { key: 'RG2010', status: 'read', note: 'that it stands in the column which alone suggests high is from memory' },
    },
    {
      item: 'bottle_sugared_fluid',
      role: 'risk',
      anyOf: [{ item: 'bottle_sugared_fluid', is: true }],
      source: { key: 'RG2010', status: 'read' },
    },
    { item: 'bottle_continual', role: 'risk', anyOf: [{ item: 'bottle_continual', is: true }], source: { key: 'RG2010', status: 'read' } },
    { item: 'bottle_in_bed', role: 'risk', anyOf: [{ item: 'bottle_in_bed', is: true }], source: { key: 'RG2010', status: 'read' } },
    {
      item: 'snacks_between_meals_per_day',
      role: 'risk',
      anyOf: [{ item: 'snacks_between_meals_per_day', from: 4, to: null }],
      source: { key: 'RG2010', status: 'read', note: 'counts above 3 a day' },
    },
    {
      item: 'medicine_saliva_reducing',
      role: 'risk',
      anyOf: [{ item: 'medicine_saliva_reducing', is: true }],
      source: { key: 'RG2010', status: 'read', note: 'the form groups medicine with medical and genetic causes' },
    },
    {
      item: 'special_care_needs',
      role: 'risk',
      anyOf: [{ item: 'special_care_needs', is: true }],
      source: { key: 'RG2010', status: 'read' },
    },
    {
      item: 'low_income_or_literacy',
      role: 'risk',
      anyOf: [{ item: 'low_income_or_literacy', is: true }],
      source: { key: 'RG2010', status: 'read' },
    },
    {
      item: 'water_fluoridated',
      role: 'protective',
      anyOf: [{ item: 'water_fluoridated', is: true }],
      source: { key: 'RG2010', status: 'read' },
    },
    {
      item: 'water_fluoridated_drunk',
      role: 'protective',
      anyOf: [{ item: 'water_fluoridated_drunk', is: true }],
      source: { key: 'RG2010', status: 'read' },
    },
    {
      item: 'toothpaste_f_once_daily',
      role: 'protective',
      anyOf: [{ item: 'toothpaste_f_once_daily', is: true }],
      source: { key: 'RG2010', status: 'read' },
    },
    {
      item: 'toothpaste_f_twice_daily',
      role: 'protective',
      anyOf: [{ item: 'toothpaste_f_twice_daily', is: true }],
      source: { key: 'RG2010', status: 'read' },
    },
    { item: 'varnish_f_6m', role: 'protective', anyOf: [{ item: 'varnish_f_6m', is: true }], source: { key: 'RG2010', status: 'read' } },
    {
      item: 'xylitol_caregiver',
      role: 'protective',
      anyOf: [{ item: 'xylitol_caregiver', is: true }],
      source: { key: 'RG2010', status: 'read' },
    },
    {
      item: 'decay_or_white_spot_evident_child',
      role: 'disease',
      anyOf: [{ item: 'decay_or_white_spot_evident_child', is: true }],
      source: { key: 'C2016ada', status: 'read', note: 'from the 17-item version of 2016; wording of the 2010 form from memory' },
    },
    {
      item: 'restoration_for_decay_recent',
      role: 'disease',
      anyOf: [{ item: 'restoration_for_decay_recent', is: true }],
      source: { key: 'C2016ada', status: 'read', note: '24 months; from the 17-item version of 2016' },
    },
    {
      item: 'plaque_heavy_visible',
      role: 'risk',
      anyOf: [{ item: 'plaque_heavy_visible', is: true }],
      source: { key: 'C2016ada', status: 'read' },
    },
    {
      item: 'saliva_visually_inadequate',
      role: 'risk',
      anyOf: [{ item: 'saliva_visually_inadequate', is: true }],
      source: { key: 'C2016ada', status: 'read' },
    },
    {
      item: 'gum_bleeds_easily',
      role: 'risk',
      anyOf: [{ item: 'gum_bleeds_easily', is: true }],
      source: { key: 'RG2010', status: 'memory' },
    },
    {
      item: 'appliance_orthodontic_or_removable',
      role: 'risk',
      anyOf: [{ item: 'appliance_orthodontic_or_removable', is: true }],
      source: { key: 'RG2010', status: 'memory' },
    },
  ],
  decisive: {
    anyOf: [{ item: 'caregiver_decay_12m', is: true }],
    source: { key: 'RG2010', status: 'memory', note: 'the column which alone suggests high; the other two items of it are disease items' },
  },
  lifts: {
    anyOf: [
      { item: 'saliva_visually_inadequate', is: true },
      { item: 'medicine_saliva_reducing', is: true },
      { item: 'special_care_needs', is: true },
    ],
    alsoJudgedHigh: false,
    source: {
      key: 'RG2010',
      status: 'memory',
      note: 'high with special needs or low saliva; counting a medicine without a look at saliva is our proposal',
    },
  },
  liftAloneSource: null,
  barsLow: [],
  suspicion: null,
  defaults: {
    lowMaxRisk: 1,
    lowMaxNet: -2,
    highMinRisk: 4,
    highMinNet: 1,
    source: { key: 'project', status: 'proposal', note: 'no numbers in the source, which leaves these steps to judgement' },
  },
  steps: [
    { text: 'Any yes in the first column: likely high.', source: { key: 'RG2010', status: 'read' } },
    { text: 'Otherwise weigh the risk columns against the protective column.', source: { key: 'RG2010', status: 'memory' } },
    { text: 'Extreme for a child at high risk with special needs or low saliva.', source: { key: 'RG2010', status: 'memory' } },
    {
      text: 'Our numbers for the weighing: low needs at most 1 risk tick and at least 2 more ticks for protection; high needs at least 4 risk ticks and more of them than of protection.',
      source: { key: 'project', status: 'proposal' },
    },
  ],
  notes: [
    {
      text: 'A form of 2021 for 0 to 6 exists with fewer risk lines; its tables were not read, so the form of 2010 is used.',
      source: { key: 'F2021guide', status: 'memory' },
    },
  ],
  remarks: [{ flag: 'special-needs-low', levels: ['low'], anyOf: [{ item: 'special_care_needs', is: true }] }],
  recall: [],
};
