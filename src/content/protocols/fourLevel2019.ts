import type { BalanceTable } from '../../core/risk/protocol.ts';
import { riskItems } from './items.ts';

/** Four levels, age 6 and over, form of 2019. The balance without a disease tick uses our own numbers (`defaults`). */
export const fourLevel2019: BalanceTable = {
  kind: 'balance',
  id: 'four_level_6plus_2019',
  edition: '2019',
  screenName: 'Four-level, 2019',
  owner: 'Featherstone JDB and colleagues; form published with the California Dental Association',
  citation:
    'Featherstone JDB, Alston P, Chaffee BW, Rechmann P. J Calif Dent Assoc 2019;47(1):25-34; earlier form: Featherstone JDB and others, J Calif Dent Assoc 2007;35(10):703-713.',
  levels: ['low', 'moderate', 'high', 'extreme'],
  applies: {
    fromAgeYears: 6,
    belowAgeYears: null,
    source: { key: 'F2019form', status: 'proposal', note: 'form for age 6 to adult; completed years, our reading' },
  },
  items: riskItems,
  rows: [
    {
      item: 'lesion_cavity_or_dentin_new',
      role: 'disease',
      anyOf: [{ item: 'lesion_cavity_or_dentin_new', is: true }],
      source: { key: 'F2019form', status: 'read' },
    },
    {
      item: 'lesion_white_spot_smooth_new',
      role: 'disease',
      anyOf: [{ item: 'lesion_white_spot_smooth_new', is: true }],
      source: { key: 'F2019form', status: 'read' },
    },
    {
      item: 'lesion_enamel_radiographic_new',
      role: 'disease',
      anyOf: [{ item: 'lesion_enamel_radiographic_new', is: true }],
      source: { key: 'F2019form', status: 'read' },
    },
    {
      item: 'restoration_for_decay_recent',
      role: 'disease',
      anyOf: [{ item: 'restoration_for_decay_recent', is: true }],
      source: { key: 'F2019form', status: 'read', note: '36 months for a new patient, 12 months for a patient of record' },
    },
    {
      item: 'biofilm_bacteria_high',
      role: 'risk',
      anyOf: [{ item: 'biofilm_bacteria_high', is: true }],
      source: { key: 'F2019form', status: 'read', note: 'on the form, marked as not currently available' },
    },
    {
      item: 'plaque_heavy_visible',
      role: 'risk',
      anyOf: [{ item: 'plaque_heavy_visible', is: true }],
      source: { key: 'F2019form', status: 'read' },
    },
    {
      item: 'snacks_between_meals_per_day',
      role: 'risk',
      anyOf: [{ item: 'snacks_between_meals_per_day', from: 4, to: null }],
      source: { key: 'F2019form', status: 'read', note: 'counts above 3 a day' },
    },
    {
      item: 'medicine_saliva_reducing',
      role: 'risk',
      anyOf: [
        { item: 'medicine_saliva_reducing', is: true },
        { item: 'saliva_reducing_condition', is: true },
        { item: 'chemo_radiotherapy', is: true },
      ],
      source: {
        key: 'F2019form',
        status: 'read',
        note: 'one tick for a medicine, a condition or a treatment that lowers saliva; the grouping follows the 2007 wording, from memory',
      },
    },
    {
      item: 'saliva_flow_reduced_measured',
      role: 'risk',
      anyOf: [{ item: 'saliva_flow_reduced_measured', is: true }],
      source: { key: 'F2019form', status: 'read', note: 'also the switch to extreme' },
    },
    {
      item: 'pits_fissures_deep',
      role: 'risk',
      anyOf: [{ item: 'pits_fissures_deep', is: true }],
      source: { key: 'F2019form', status: 'read' },
    },
    {
      item: 'drug_recreational',
      role: 'risk',
      anyOf: [{ item: 'drug_recreational', is: true }],
      source: { key: 'F2019form', status: 'read' },
    },
    { item: 'roots_exposed', role: 'risk', anyOf: [{ item: 'roots_exposed', is: true }], source: { key: 'F2019form', status: 'read' } },
    {
      item: 'appliance_orthodontic_or_removable',
      role: 'risk',
      anyOf: [{ item: 'appliance_orthodontic_or_removable', is: true }],
      source: { key: 'F2019form', status: 'read', note: 'the form names orthodontic appliances' },
    },
    {
      item: 'water_fluoridated',
      role: 'protective',
      anyOf: [{ item: 'water_fluoridated', is: true }],
      source: { key: 'F2019form', status: 'read' },
    },
    {
      item: 'toothpaste_f_once_daily',
      role: 'protective',
      anyOf: [{ item: 'toothpaste_f_once_daily', is: true }],
      source: { key: 'F2019form', status: 'read' },
    },
    {
      item: 'toothpaste_f_twice_daily',
      role: 'protective',
      anyOf: [{ item: 'toothpaste_f_twice_daily', is: true }],
      source: { key: 'F2019form', status: 'read', note: 'a line of its own: who brushes twice is ticked on both, our reading' },
    },
    {
      item: 'toothpaste_f_5000',
      role: 'protective',
      anyOf: [{ item: 'toothpaste_f_5000', is: true }],
      source: { key: 'F2019form', status: 'read' },
    },
    { item: 'varnish_f_6m', role: 'protective', anyOf: [{ item: 'varnish_f_6m', is: true }], source: { key: 'F2019form', status: 'read' } },
    {
      item: 'rinse_naf_005_daily',
      role: 'protective',
      anyOf: [{ item: 'rinse_naf_005_daily', is: true }],
      source: { key: 'F2019form', status: 'read' },
    },
    {
      item: 'rinse_chx_monthly_week',
      role: 'protective',
      anyOf: [{ item: 'rinse_chx_monthly_week', is: true }],
      source: { key: 'F2019form', status: 'read' },
    },
    {
      item: 'saliva_normal',
      role: 'protective',
      anyOf: [{ item: 'saliva_normal', is: true }],
      source: { key: 'F2019form', status: 'read' },
    },
  ],
  decisive: null,
  lifts: {
    anyOf: [{ item: 'saliva_flow_reduced_measured', is: true }],
    alsoJudgedHigh: true,
    source: { key: 'F2019form', status: 'read', note: 'footnote, read as: already high, and saliva flow low' },
  },
  liftAloneSource: { key: 'UoP2019', status: 'read', note: 'practice of one teaching clinic, stricter than the form' },
  barsLow: [{ item: 'saliva_flow_reduced_measured', is: true }],
  suspicion: {
    anyOf: [
      { item: 'saliva_reducing_condition', is: true },
      { item: 'chemo_radiotherapy', is: true },
    ],
    settledBy: { item: 'saliva_normal', is: true },
    source: { key: 'project', status: 'proposal', note: 'dry mouth to be expected and normal saliva not shown: never low, measure' },
  },
  defaults: {
    lowMaxRisk: 1,
    lowMaxNet: -2,
    highMinRisk: 4,
    highMinNet: 1,
    source: { key: 'project', status: 'proposal', note: 'no numbers in the source, which leaves these steps to judgement' },
  },
  steps: [
    { text: 'Any disease item ticked: high or extreme.', source: { key: 'F2019form', status: 'read' } },
    { text: 'High and low saliva flow together: extreme.', source: { key: 'F2019form', status: 'read' } },
    {
      text: 'No disease item ticked: weigh the ticks for risk against the ticks for protection.',
      source: { key: 'F2019form', status: 'read' },
    },
    {
      text: 'Low when risk ticks are few or none and protection outweighs them; in doubt about low, moderate. Moderate is neither clearly low nor high.',
      source: { key: 'F2019form', status: 'memory' },
    },
    {
      text: 'High without a disease item when risk clearly outweighs protection, by judgement.',
      source: { key: 'F2019form', status: 'memory' },
    },
    { text: 'In one teaching clinic, low saliva alone is extreme. A setting of the practice.', source: { key: 'UoP2019', status: 'read' } },
    {
      text: 'Our numbers where judgement is asked for: low needs at most 1 risk tick and at least 2 more ticks for protection than for risk; high without disease needs at least 4 risk ticks and more of them than of protection.',
      source: { key: 'project', status: 'proposal' },
    },
  ],
  notes: [
    {
      text: 'A quick score of 2021 exists; its cut-offs were not read, so it is not computed here.',
      source: { key: 'F2021guide', status: 'memory' },
    },
    {
      text: 'Bacteria by culture stand on the form as not currently available. A swab reading never fills that line.',
      source: { key: 'F2019form', status: 'read' },
    },
  ],
  remarks: [],
  recall: [
    { level: 'low', recallMonths: [6, 12], radiographMonths: [24, 36], source: { key: 'F2019form', status: 'memory' } },
    { level: 'moderate', recallMonths: [4, 6], radiographMonths: [18, 24], source: { key: 'F2019form', status: 'memory' } },
    { level: 'high', recallMonths: [3, 4], radiographMonths: [6, 18], source: { key: 'F2019form', status: 'memory' } },
    { level: 'extreme', recallMonths: [3, 3], radiographMonths: [6, 6], source: { key: 'F2019form', status: 'memory' } },
  ],
};
