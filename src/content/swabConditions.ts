import type { SwabCondition } from '../core/reading/types.ts';

/**
 * What must hold for a chairside swab to count. Ids have their checks in `core/reading/readingConditions.ts`.
 * The four times in minutes are our proposal: published work shows that food carries ATP, that rinses quench the light and that the
 * light changes with time, not for how long.
 */
export const swabConditions: readonly SwabCondition[] = [
  {
    id: 'once-in-24-h',
    label: 'At least 24 hours since the last swab of this person',
    failing: 'not-counted',
    unknown: 'flag',
    limit: 24,
    limitUnit: 'h',
    source: { key: 'common-practice', status: 'common-practice' },
  },
  {
    id: 'before-cleaning',
    label: 'Before any cleaning, polishing or probing',
    failing: 'not-counted',
    unknown: 'flag',
    source: { key: 'common-practice', status: 'common-practice' },
  },
  {
    id: 'lot-in-date',
    label: 'Swab lot in date',
    failing: 'not-counted',
    unknown: 'flag',
    source: { key: 'common-practice', status: 'common-practice', note: "the date is on the lot's own pack" },
  },
  {
    id: 'lot-compared',
    label: 'Swab lot compared with the one before it',
    failing: 'flag',
    unknown: 'list',
    source: { key: 'common-practice', status: 'common-practice', note: 'a lot that was not compared may read higher or lower' },
  },
  {
    id: 'meter-range',
    label: "Within the meter's range; a number at its limit is a bound",
    failing: 'not-counted',
    unknown: 'flag',
    source: { key: 'whiteley2012', status: 'read', note: 'meters do not warn outside their range' },
  },
  {
    id: 'control-in-line',
    label: 'Last control of this meter and lot within its limits',
    failing: 'not-counted',
    unknown: 'list',
    source: {
      key: 'common-practice',
      status: 'common-practice',
      note: 'a control out of limits stops results until it is resolved; a hygienist or dentist may override it with a reason',
    },
  },
  {
    id: 'site',
    label: 'Lower front teeth, tongue side',
    failing: 'not-counted',
    unknown: 'flag',
    source: { key: 'common-practice', status: 'common-practice' },
  },
  {
    id: 'trained-operator',
    label: 'Taken by a trained operator',
    failing: 'flag',
    unknown: 'say',
    source: { key: 'common-practice', status: 'common-practice', note: 'the same few people take the swabs in a practice' },
  },
  {
    id: 'since-eating',
    label: 'At least 60 minutes since eating or drinking',
    failing: 'flag',
    unknown: 'say',
    limit: 60,
    limitUnit: 'min',
    source: { key: 'colquhoun1998', status: 'proposal', note: 'food carries ATP of its own; the number of minutes is our proposal' },
  },
  {
    id: 'since-brushing',
    label: 'At least 60 minutes since brushing',
    failing: 'flag',
    unknown: 'say',
    limit: 60,
    limitUnit: 'min',
    source: { key: 'bentley1988', status: 'proposal', note: 'counts are lower after brushing; the number of minutes is our proposal' },
  },
  {
    id: 'since-rinsing',
    label: 'At least 60 minutes since a mouth rinse',
    failing: 'flag',
    unknown: 'say',
    limit: 60,
    limitUnit: 'min',
    source: { key: 'omidbakhsh2014', status: 'proposal', note: 'disinfectants quench the light; the number of minutes is our proposal' },
  },
  {
    id: 'time-to-reading',
    label: "Read within 3 minutes after the meter's count-down",
    failing: 'flag',
    unknown: 'list',
    limit: 3,
    limitUnit: 'min',
    source: { key: 'ford1998', status: 'proposal', note: 'the light changes with time; the number of minutes is our proposal' },
  },
];
