/** One delivery of the invented practice. Lots and days are made up. */
export interface DemoDelivery {
  readonly shelfItemId: string;
  readonly lot: string | null;
  /** Days from today on which it came, negative. */
  readonly cameOn: number;
  /** Days from today to its last day; null = not noted. */
  readonly lastDay: number | null;
  readonly packs: number;
}

/**
 * Some items are counted, most are not. One lot is past its last day, one is near it, one item is below its minimum, and the last day of
 * one lot is not known.
 */
export const demoDeliveries: readonly DemoDelivery[] = [
  { shelfItemId: 'rinse-chlorhexidine-plain', lot: 'Heron 4', cameOn: -300, lastDay: -20, packs: 3 },
  { shelfItemId: 'paste-naf-1450', lot: 'Plover 11', cameOn: -75, lastDay: 40, packs: 9 },
  { shelfItemId: 'paste-naf-1450', lot: 'Plover 12', cameOn: -74, lastDay: 500, packs: 80 },
  { shelfItemId: 'rinse-naf-005', lot: 'Dunlin 2', cameOn: -73, lastDay: 390, packs: 60 },
  { shelfItemId: 'rinse-chlorhexidine-plain', lot: 'Heron 5', cameOn: -40, lastDay: 320, packs: 8 },
  { shelfItemId: 'gum-xylitol', lot: 'Knot 7', cameOn: -35, lastDay: 210, packs: 3 },
  { shelfItemId: 'lozenge-xylitol', lot: null, cameOn: -30, lastDay: null, packs: 6 },
];

/** What is handed out at visits from the day it came, as long as there is some. */
export const DEMO_HANDED_OUT: readonly string[] = ['paste-naf-1450', 'rinse-naf-005'];

/** Packs at which the invented practice orders. */
export const DEMO_MINIMUM: Readonly<Record<string, number>> = {
  'paste-naf-1450': 12,
  'rinse-naf-005': 6,
  'gum-xylitol': 4,
  'rinse-chlorhexidine-plain': 2,
};
export const DEMO_LEAD_DAYS = 5;
