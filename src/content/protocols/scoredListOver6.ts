import type { ScoreTable } from '../../core/risk/protocol.ts';
import { riskItems } from './items.ts';

/** Lines of 0, 1 or 10 points, over 6, edition with a look back of 36 months. */
export const scoredListOver6: ScoreTable = {
  kind: 'score',
  id: 'scored_list_over_6',
  edition: '36-month',
  screenName: 'Scored list, over 6',
  owner: 'American Dental Association',
  citation: 'American Dental Association, caries risk assessment form, age over 6, scored version with a look back of 36 months.',
  levels: ['low', 'moderate', 'high'],
  applies: {
    fromAgeYears: 7,
    belowAgeYears: null,
    source: { key: 'ADA6p', status: 'proposal', note: 'the titles read 0 to 6 and over 6, our reading' },
  },
  items: riskItems,
  lines: [
    {
      item: 'fluoride_any_exposure',
      cases: [{ when: { item: 'fluoride_any_exposure', is: false }, points: 1 }],
      source: { key: 'ADAcards', status: 'read' },
    },
    {
      item: 'sugars_mainly_at_meals',
      cases: [{ when: { item: 'sugars_mainly_at_meals', is: false }, points: 10 }],
      source: { key: 'ADAcards', status: 'read', note: 'high column supported by a second source' },
    },
    {
      item: 'caregiver_decay_months_since',
      belowAgeYears: 15,
      cases: [
        { when: { item: 'caregiver_decay_months_since', from: 0, to: 6 }, points: 10 },
        { when: { item: 'caregiver_decay_months_since', from: 7, to: 23 }, points: 1 },
      ],
      source: { key: 'ADA6p', status: 'read', note: 'ages 6 to 14' },
    },
    { item: 'dental_home', cases: [{ when: { item: 'dental_home', is: false }, points: 1 }], source: { key: 'ADAcards', status: 'read' } },
    {
      item: 'special_care_needs',
      cases: [
        { belowAgeYears: 15, when: { item: 'special_care_needs', is: true }, points: 10 },
        { fromAgeYears: 15, when: { item: 'special_care_needs', is: true }, points: 1 },
      ],
      source: { key: 'ADA6p', status: 'read', note: '10 points from 6 to 14, 1 point over 14' },
    },
    {
      item: 'chemo_radiotherapy',
      cases: [{ when: { item: 'chemo_radiotherapy', is: true }, points: 10 }],
      source: { key: 'ADA6p', status: 'memory' },
    },
    {
      item: 'eating_disorder',
      cases: [{ when: { item: 'eating_disorder', is: true }, points: 1 }],
      source: { key: 'ADAcards', status: 'read' },
    },
    {
      item: 'tobacco_smokeless',
      cases: [{ when: { item: 'tobacco_smokeless', is: true }, points: 1 }],
      source: { key: 'ADAcards', status: 'read' },
    },
    {
      item: 'medicine_saliva_reducing',
      cases: [{ when: { item: 'medicine_saliva_reducing', is: true }, points: 1 }],
      source: { key: 'ADAcards', status: 'read' },
    },
    {
      item: 'alcohol_or_drug_misuse',
      cases: [{ when: { item: 'alcohol_or_drug_misuse', is: true }, points: 1 }],
      source: { key: 'ADAcards', status: 'read' },
    },
    {
      item: 'lesions_or_restorations_count_36m',
      cases: [
        { when: { item: 'lesions_or_restorations_count_36m', from: 3, to: null }, points: 10 },
        { when: { item: 'lesions_or_restorations_count_36m', from: 1, to: 2 }, points: 1 },
      ],
      source: { key: 'ADA6p', status: 'read' },
    },
    {
      item: 'teeth_missing_due_to_decay',
      cases: [{ when: { item: 'teeth_missing_due_to_decay', is: true }, points: 10 }],
      source: { key: 'ADAcards', status: 'read', note: '36 months; high column supported by a second source' },
    },
    {
      item: 'plaque_heavy_visible',
      cases: [{ when: { item: 'plaque_heavy_visible', is: true }, points: 1 }],
      source: { key: 'ADAcards', status: 'read' },
    },
    {
      item: 'pits_fissures_deep',
      cases: [{ when: { item: 'pits_fissures_deep', is: true }, points: 1 }],
      source: { key: 'ADAcards', status: 'read', note: 'the form asks for unusual tooth form that hinders cleaning' },
    },
    {
      item: 'restoration_interproximal',
      cases: [{ when: { item: 'restoration_interproximal', is: true }, points: 1 }],
      source: { key: 'ADAcards', status: 'read' },
    },
    {
      item: 'roots_exposed',
      cases: [{ when: { item: 'roots_exposed', is: true }, points: 1 }],
      source: { key: 'ADAcards', status: 'read' },
    },
    {
      item: 'restoration_defective',
      cases: [{ when: { item: 'restoration_defective', is: true }, points: 1 }],
      source: { key: 'ADAcards', status: 'read' },
    },
    {
      item: 'appliance_orthodontic_or_removable',
      cases: [{ when: { item: 'appliance_orthodontic_or_removable', is: true }, points: 1 }],
      source: { key: 'ADAcards', status: 'read' },
    },
    {
      item: 'dry_mouth_severe',
      cases: [{ when: { item: 'dry_mouth_severe', is: true }, points: 10 }],
      source: { key: 'ADAcards', status: 'read', note: 'high column supported by a second source' },
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
      text: 'An earlier edition looks back 24 months and gives 10 points to one cavity, so the same patient can be moderate on this edition and high on that one.',
      source: { key: 'ADAstud', status: 'read' },
    },
    {
      text: 'Ten moderate lines without a high line add up to 10. Read literally that is high; the edition without points would say moderate. Both are shown.',
      source: { key: 'project', status: 'proposal' },
    },
  ],
  remarks: [
    {
      flag: 'cavity-present',
      levels: ['moderate'],
      anyOf: [{ item: 'lesion_cavity_or_dentin_new', is: true }],
    },
  ],
  recall: [],
};
