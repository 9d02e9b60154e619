import type { VisitAssessment } from './types.ts';

type Stored = Pick<VisitAssessment, 'mouth' | 'plan' | 'leaflet'> & Partial<Pick<VisitAssessment, 'leaflets'>>;

/**
 * A stored assessment with the parts that an earlier edition did not have yet: a list that was not made then is empty, a date that was
 * not computed is null. Nothing is computed anew, so what was told then stays what it was.
 */
export function completeStored<T extends Stored>(stored: T): T {
  const { mouth, plan, leaflet } = stored;
  const completed = completeLeaflet(leaflet);
  return {
    ...stored,
    mouth: { ...ABSENT_MOUTH, ...mouth },
    plan: { ...ABSENT_PLAN, ...plan },
    leaflet: completed,
    leaflets: stored.leaflets?.map(completeLeaflet) ?? [completed],
  };
}

const completeLeaflet = <T extends VisitAssessment['leaflet']>(leaflet: T): T => ({
  ...ABSENT_LEAFLET,
  ...leaflet,
  labels: { ...ABSENT_LABELS, ...leaflet.labels },
});

const ABSENT_MOUTH = { swab: null, notAsked: [] } as const satisfies Partial<VisitAssessment['mouth']>;
const ABSENT_PLAN = {
  refused: [],
  advice: [],
  bitewingsDue: null,
  bitewingsSentence: '',
  regimens: [],
  chosenRegimen: undefined,
  conflict: null,
  swaps: [],
  byProtocol: [],
  droppedBefore: [],
} as const satisfies Partial<VisitAssessment['plan']>;
const ABSENT_LEAFLET = {
  advice: [],
  who: null,
  call: [],
  footPages: '',
  review: null,
  notInLanguage: [],
  dayStrip: undefined,
} as const satisfies Partial<VisitAssessment['leaflet']>;
/** Never shown: the list below it is empty. */
const ABSENT_LABELS = { advice: '', released: '', who: '', call: '' } as const;
