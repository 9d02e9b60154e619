import type { ScoreTable } from '../../core/risk/protocol.ts';
import { riskItems } from './items.ts';

/** Lines of 0, 1 or 10 points, age 0 to 6. An empty list scores 0, so low on it is withheld while a disease line is unknown. */
export const scoredList0to6: ScoreTable = {
  kind: 'score',
  id: 'scored_list_0_6',
  edition: '2011',
  screenName: 'Scored list, 0 to 6',
  owner: 'American Dental Association',
  citation: 'American Dental Association, caries risk assessment form, age 0 to 6, 2009 and 2011.',
  levels: ['low', 'moderate', 'high'],
  applies: {
    fromAgeYears: 0,
    belowAgeYears: 7,
    source: { key: 'ADA06', status: 'proposal', note: 'the titles read 0 to 6 and over 6: a child of 6 is on this one, our reading' },
  },
  items: riskItems,
  lines: [
    {
      item: 'fluoride_any_exposure',
      cases: [{ when: { item: 'fluoride_any_exposure', is: false }, points: 1 }],
      source: { key: 'ADA06', status: 'memory' },
    },
    {
      item: 'sugars_mainly_at_meals',
      cases: [
        { when: { item: 'bottle_bedtime_not_water', is: true }, points: 10 },
        { when: { item: 'sugars_mainly_at_meals', is: false }, points: 1 },
      ],
      source: { key: 'ADA06', status: 'read', note: 'one line, scored once; milk and formula are not water' },
    },
    {
      item: 'low_income_or_literacy',
      cases: [{ when: { item: 'low_income_or_literacy', is: true }, points: 1 }],
      source: { key: 'ADA06', status: 'memory', note: 'the form asks about programmes for low income' },
    },
    {
      item: 'caregiver_decay_months_since',
      cases: [
        { when: { item: 'caregiver_decay_months_since', from: 0, to: 6 }, points: 10 },
        { when: { item: 'caregiver_decay_months_since', from: 7, to: 23 }, points: 1 },
      ],
      source: { key: 'ADA06', status: 'read' },
    },
    { item: 'dental_home', cases: [{ when: { item: 'dental_home', is: false }, points: 1 }], source: { key: 'ADA06', status: 'memory' } },
    {
      item: 'special_care_needs',
      cases: [{ when: { item: 'special_care_needs', is: true }, points: 10 }],
      source: { key: 'ADA06', status: 'memory' },
    },
    {
      item: 'cavitated_or_restored_24m',
      cases: [{ when: { item: 'cavitated_or_restored_24m', is: true }, points: 10 }],
      source: { key: 'ADA06', status: 'memory' },
    },
    {
      item: 'lesion_noncavitated_new_24m',
      cases: [{ when: { item: 'lesion_noncavitated_new_24m', is: true }, points: 1 }],
      source: { key: 'ADA06', status: 'memory' },
    },
    {
      item: 'teeth_missing_due_to_decay',
      cases: [{ when: { item: 'teeth_missing_due_to_decay', is: true }, points: 10 }],
      source: { key: 'ADA06', status: 'memory' },
    },
    {
      item: 'plaque_heavy_visible',
      cases: [{ when: { item: 'plaque_heavy_visible', is: true }, points: 1 }],
      source: { key: 'ADA06', status: 'memory' },
    },
    {
      item: 'appliance_orthodontic_or_removable',
      cases: [{ when: { item: 'appliance_orthodontic_or_removable', is: true }, points: 1 }],
      source: { key: 'ADA06', status: 'memory' },
    },
    {
      item: 'saliva_visually_inadequate',
      cases: [{ when: { item: 'saliva_visually_inadequate', is: true }, points: 10 }],
      source: { key: 'ADA06', status: 'memory' },
    },
  ],
  moderateFrom: 1,
  highFrom: 10,
  steps: [
    {
      text: 'Each line scores 0, 1 or 10. What is unknown or does not apply scores 0. Add up.',
      source: { key: 'ADArule', status: 'read' },
    },
    {
      text: 'A total of 0 is low; one line of 10, or a total of 10, is high; in between is moderate.',
      source: { key: 'ADArule', status: 'read' },
    },
    { text: 'The dentist may move the level after looking the form over.', source: { key: 'ADArule', status: 'read' } },
    {
      text: 'Edition without points: only low lines, low; moderate lines too, moderate; one high line, high.',
      source: { key: 'ADArule', status: 'memory' },
    },
  ],
  notes: [
    {
      text: 'Ten moderate lines without a high line add up to 10. Read literally that is high; the edition without points would say moderate. Both are shown.',
      source: { key: 'project', status: 'proposal' },
    },
  ],
  remarks: [],
  recall: [],
};
