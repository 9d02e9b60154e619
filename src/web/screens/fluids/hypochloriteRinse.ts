import { regimenTables } from '../../../content/regimenTables.ts';
import {
  diluteHypochlorite,
  type HypochloriteConvention,
  type HypochloriteRecipe,
} from '../../../core/chemistry/products/diluteHypochlorite.ts';
import { isDateOrMonth } from '../../../core/visit/dateOrMonth.ts';
import type { FieldsOf, Numbers, Problems } from './readNumbers.ts';

export const HIGHEST_PERCENT = regimenTables.highestHypochloritePercent;

/** The practice's own protocol, as it is typed. Without it nothing is worked out. */
export interface ProtocolDraft {
  readonly name: string;
  readonly by: string;
  readonly date: string;
}

export const rinseFields: FieldsOf<'targetPercent' | 'stockPercent' | 'volumeMl'> = {
  targetPercent: {
    label: 'Strength that the protocol says',
    unit: '% sodium hypochlorite, weight by volume',
    low: 0,
    high: HIGHEST_PERCENT,
    isAbove: true,
    hint: `At most ${HIGHEST_PERCENT} %: no study that was read goes above it.`,
  },
  stockPercent: { label: 'Strength on the bottle', unit: '%', low: 0, high: 20, isAbove: true },
  volumeMl: { label: 'Rinse to be made', unit: 'mL', low: 0, high: 5000, isAbove: true },
};

export const densityField: FieldsOf<'stockDensityGPerMl'> = {
  stockDensityGPerMl: {
    label: 'Density, where the label is by weight',
    unit: 'g/mL',
    low: 1,
    high: 1.3,
    hint: 'Empty: the label is by volume. 1.08 to 1.10 at 6 to 8.25 %.',
  },
};

/** @param today  ISO local date */
export function protocolProblems({ name, by, date }: ProtocolDraft, today: string): Problems {
  const problems: Record<string, string> = {};
  if (name.trim() === '') problems.name = 'Name of the protocol is missing: without it the rinse is off.';
  if (by.trim() === '') problems.by = 'Who wrote it is missing: without it the rinse is off.';
  const day = date.trim();
  if (!(day.length === 'YYYY-MM-DD'.length && isDateOrMonth(day))) problems.date = 'Date of the protocol must be a day like 2026-06-14.';
  else if (day > today) problems.date = 'Date of the protocol must be today or before.';
  return problems;
}

/** @throws RangeError naming the field */
export function workOutRinse(
  {
    targetPercent,
    stockPercent,
    volumeMl,
    stockDensityGPerMl,
  }: Numbers<'targetPercent' | 'stockPercent' | 'volumeMl', 'stockDensityGPerMl'>,
  stockIs: HypochloriteConvention,
): HypochloriteRecipe {
  return diluteHypochlorite({ targetPercent, stockPercent, volumeMl, stockDensityGPerMl, stockIs, highestPercent: HIGHEST_PERCENT });
}
