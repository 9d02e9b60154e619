import type { RegimenTables } from '../tables.ts';
import type { PersonFacts, ShelfItem } from '../types.ts';
import { chlorhexidineCourse } from './chlorhexidineCourse.ts';
import { silverDrops } from './silverDrops.ts';
import { withoutDoubtfulWeight } from './weightDoubt.ts';
import { xylitolDay } from './xylitolDay.ts';

/** What is worked out of one line's dose, for the professional: silver fluoride at a visit, the course of chlorhexidine, a day of xylitol. */
export function sayDose(
  item: Pick<ShelfItem, 'agentId'>,
  use: ShelfItem['use'],
  told: PersonFacts,
  tables: RegimenTables,
): readonly string[] {
  const facts = withoutDoubtfulWeight(told, tables.fluoride.weights);
  if (item.agentId === 'SDF38') return [silverDrops(facts.weightKg).says];
  if (item.agentId === 'CHX_RINSE' && use.atVisit !== true) return [chlorhexidineCourse(use).says];
  if (item.agentId === 'XYLITOL' && use.atVisit !== true) return sayXylitol(use, facts, tables);
  return [];
}

const TOLERANCE = {
  within: 'within what is borne',
  above: 'more than is borne: fewer at a time',
  ask: 'ask for the weight to compare it with what is borne',
} as const;

function sayXylitol(use: ShelfItem['use'], { ageYears, weightKg }: PersonFacts, { xylitolLimit }: RegimenTables): readonly string[] {
  const day = xylitolDay({ ageYears, weightKg, gramsPerUse: use.amountG, timesPerDay: use.timesPerDay }, xylitolLimit);
  const { gramsPerDay, exposures, gPerKgPerUse, gPerKgPerDay, tolerance, dogWarning } = day;
  if (gramsPerDay === null) return [`Xylitol ${exposures} times a day, amount not noted: read it on the pack.`, dogWarning];
  const perKg =
    gPerKgPerUse === null || gPerKgPerDay === null
      ? ''
      : `, ${twoFigures(gPerKgPerUse)} g/kg at once and ${twoFigures(gPerKgPerDay)} g/kg a day`;
  return [`Xylitol ${twoFigures(gramsPerDay)} g a day in ${exposures} uses${perKg}: ${TOLERANCE[tolerance]}.`, dogWarning];
}

const twoFigures = (value: number): string => String(Number(value.toPrecision(2)));
