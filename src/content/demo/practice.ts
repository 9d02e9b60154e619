import type { SwabLot } from '../../core/reading/types.ts';
import type { PracticeFile } from '../../core/visit/types.ts';
import { addDays } from './days.ts';
import { demoShelf } from './shelf.ts';
import { DEMO_LEAD_DAYS, DEMO_MINIMUM } from './stock.ts';

/** Name of the invented practice. It does not exist, and neither do its people, meter and lots. */
export const DEMO_PRACTICE_NAME = 'Tern Quay Dental';
/** The day of the example visits. */
export const EXAMPLES_ON = '2026-11-25';

/** Ids that the examples and the invented people use. */
export const DEMO_METER = 'demo-meter-a';
export const DEMO_LOTS = { inUse: 'lot-birch', next: 'lot-cedar', expired: 'lot-alder' } as const;
/** How long the lot in the back of the drawer has been out of date. */
export const DAYS_SINCE_LOT_EXPIRED = 56;

/** Its own invented scale, in the manner of a meter's instructions. */
export const DEMO_METER_SCALE = {
  lowestRlu: 40,
  highestRlu: 60_000,
  cutoffRlu: 4_200,
  countdownS: 25,
  cvAnalytical: 0.25,
  cvWithinPerson: 0.35,
} as const;

/**
 * Tern Quay Dental as it stands on a day: the meter on its own invented scale, two swab lots in date and one that was forgotten at the
 * back of the drawer. British rules are chosen on purpose, since they show ages and signatures at work.
 * @param today ISO local date, from which the lots' dates are counted
 */
export function buildDemoPractice(today: string): PracticeFile {
  return {
    name: DEMO_PRACTICE_NAME,
    invented: true,
    timeZone: 'Europe/London',
    settings: {
      jurisdiction: 'UK',
      // No source read tells how these two may be given in the United Kingdom, so the practice says it.
      legal: { F_RINSE_02: 'prescription', F_GEL_SNF2: 'over-the-counter' },
      methodByAge: [
        { fromAgeYears: 0, belowAgeYears: 6, protocol: 'four_level_0_5_2010' },
        { fromAgeYears: 6, belowAgeYears: null, protocol: 'four_level_6plus_2019' },
      ],
      // The practice's own, as any practice must set its own; invented with the rest of it.
      bitewingMonths: { low: [24, 24], moderate: [12, 18], high: [6, 12], extreme: [6, 6] },
      lowSalivaMeansExtreme: false,
      stimulatedFlowLowAtMostMlPerMin: 0.7,
      reorderLeadDays: DEMO_LEAD_DAYS,
    },
    meters: [
      {
        id: DEMO_METER,
        name: 'Demo meter A',
        ...DEMO_METER_SCALE,
        cvAnalyticalAssumed: true,
        cvWithinPersonAssumed: true,
      },
    ],
    lots: buildLots(today),
    shelf: demoShelf.map((item) => ({ ...item, ...(DEMO_MINIMUM[item.id] !== undefined && { minimumLevel: DEMO_MINIMUM[item.id] }) })),
  };
}

function buildLots(today: string): readonly SwabLot[] {
  const onDate = addDays(today, -DAYS_SINCE_LOT_EXPIRED - 2);
  const compared = { lotId: DEMO_LOTS.expired, studyId: 'invented', onDate, verdict: 'same-within' } as const;
  return [
    { id: DEMO_LOTS.inUse, name: 'Birch', expiresOn: addDays(today, 190), compared },
    { id: DEMO_LOTS.next, name: 'Cedar', expiresOn: addDays(today, 370) },
    { id: DEMO_LOTS.expired, name: 'Alder', expiresOn: addDays(today, -DAYS_SINCE_LOT_EXPIRED) },
  ];
}

/** The practice of the examples, and of any visit file that says `"practice": "demo"`. */
export const demoPractice: PracticeFile = buildDemoPractice(EXAMPLES_ON);
