import type { AcidDay } from '../plaque/day/types.ts';
import type { MouthPreset } from '../plaque/types.ts';

/** The longest diary that is worked out together, days. */
export const MOST_DESCRIBED_DAYS = 7;

/** What was measured in the saliva of this person, mmol/L in all its forms. The flow is an answer of its own. */
export interface MeasuredSaliva {
  readonly calciumMmolPerL: number;
  readonly phosphateMmolPerL: number;
}

/** How a person eats, drinks and cares for the teeth, as told or written down; what was tried on it; and which mouth it is worked out for. */
export interface DescribedDays {
  /** One usual day, or a diary of up to seven. */
  readonly days: readonly AcidDay[];
  /** One of the days with what might be changed, beside the day as it was told. */
  readonly changed?: { readonly of: number; readonly day: AcidDay } | undefined;
  /** Plaque and site that the model looks at. Absent = average plaque at an easily reached site. Never a diagnosis. */
  readonly mouth?: MouthPreset | undefined;
  /** Absent = not measured: typical saliva is used, and said so. */
  readonly saliva?: MeasuredSaliva | undefined;
  /** Which of the days stands on the leaflet, as a strip without numbers. Absent = none. */
  readonly onLeaflet?: number | undefined;
}
