import type { Exposure } from '../types.ts';
import type { PlaqueModel } from './buildModel.ts';
import { MOUTH_ACETATE, MOUTH_CARBONATE, MOUTH_PHOSPHATE, MOUTH_PROTONS, MOUTH_SUGAR, MOUTH_UREA } from './layout.ts';

/** What the fluid around the teeth becomes, mmol/L; NaN where it is as in saliva. In the order of the places of the mouth. */
export type Food = Float64Array;

const BICARBONATE_PH = 8.4;

/**
 * A food, drink or rinse as the model carries it. Acid of a food with a pH below that of acetic acid's pK goes as acetic acid, above it
 * as phosphate: titratable acid has no sort of its own here.
 * @param exposure  checked before
 */
export function buildFood(model: PlaqueModel, exposure: Exposure): Food {
  const food = new Float64Array(MOUTH_PROTONS + 1).fill(Number.NaN);
  food[MOUTH_SUGAR] = exposure.hexoseMmolPerL;
  if (exposure.ureaMmolPerL !== undefined) food[MOUTH_UREA] = exposure.ureaMmolPerL;
  const { pH, titratableMmolPerL, bicarbonateMmolPerL } = exposure;
  if (exposure.kind !== 'brushing' && pH === undefined && titratableMmolPerL === undefined && bicarbonateMmolPerL === undefined)
    return food;
  food.fill(0, MOUTH_ACETATE, MOUTH_CARBONATE + 1);
  if (titratableMmolPerL !== undefined) fillAcid(model, food, titratableMmolPerL, pH);
  else if (bicarbonateMmolPerL !== undefined) fillBicarbonate(model, food, bicarbonateMmolPerL, pH ?? BICARBONATE_PH);
  else food[MOUTH_PROTONS] = pH === undefined ? 0 : freeProtons(model, pH);
  return food;
}

/** Free hydrogen ions less hydroxide, mmol/L. */
export function freeProtons({ acidity }: Pick<PlaqueModel, 'acidity'>, pH: number): number {
  return acidity.free * 10 ** -pH - acidity.water * 10 ** pH;
}

function fillAcid(model: PlaqueModel, food: Food, titratable: number, pH: number | undefined): void {
  const { acidity, constants } = model;
  food[MOUTH_PROTONS] = titratable;
  if (pH === undefined) {
    food[MOUTH_ACETATE] = titratable;
    return;
  }
  const bound = titratable - freeProtons(model, pH);
  const h = 10 ** -pH;
  if (pH < constants.aceticPk) food[MOUTH_ACETATE] = (bound * (h + acidity.acetic)) / h;
  else food[MOUTH_PHOSPHATE] = (bound * (h + acidity.phosphate)) / h;
}

function fillBicarbonate(model: PlaqueModel, food: Food, bicarbonate: number, pH: number): void {
  const h = 10 ** -pH;
  const dioxide = (bicarbonate * h) / model.acidity.carbonic;
  const carbonate = (bicarbonate * model.acidity.bicarbonate) / h;
  food[MOUTH_CARBONATE] = bicarbonate + dioxide + carbonate;
  food[MOUTH_PROTONS] = dioxide - carbonate + freeProtons(model, pH);
}
