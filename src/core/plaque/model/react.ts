// biome-ignore-all lint/style/noNonNullAssertion: indexes of a numeric loop
import type { PlaqueModel } from './buildModel.ts';
import { ACETATE, AMMONIA, CARBONATE, LACTATE, PH, STORE, SUGAR, UREA } from './layout.ts';
import type { Workspace } from './workspace.ts';

/** How active the plaque is in each layer at the pH of a state, 0 to 1. */
export function fillActivity(model: PlaqueModel, state: Float64Array, activity: Float64Array): void {
  const { cells, constants, mouth } = model;
  const steep = Math.LN10 * constants.phSlope;
  const share = mouth.plaque.aciduricShare;
  for (let i = 0; i < cells; i += 1) {
    const ph = state[PH * (cells + 1) + i]!;
    const sensitive = (1 - share) / (1 + Math.exp(steep * (constants.sensitiveHalfPh - ph)));
    activity[i] = sensitive + share / (1 + Math.exp(steep * (constants.aciduricHalfPh - ph)));
  }
}

/** How fast sugar and urea are used up, linear in what there is, so that a step cannot use more than that. */
export function fillSinks(model: PlaqueModel, work: Workspace, from: Float64Array, activity: Float64Array): void {
  const { cells, constants, mouth } = model;
  const m = cells + 1;
  for (let i = 0; i < cells; i += 1) {
    work.sink[SUGAR * m + i] = (mouth.plaque.uptakeMmolPerLPerS * activity[i]!) / (constants.uptakeHalfMmolPerL + from[SUGAR * m + i]!);
    work.sink[UREA * m + i] = constants.ureaseMmolPerLPerS / (constants.ureaseHalfMmolPerL + from[UREA * m + i]!);
  }
}

/**
 * What is made from the sugar and urea at the end of the step, and the store of sugar after it. Protons come with the acids and with
 * carbon dioxide; a urea gives two ammonia, which take one proton each, and one carbon dioxide.
 */
export function fillSources(model: PlaqueModel, work: Workspace, from: Float64Array, to: Float64Array, activity: Float64Array): void {
  const { cells, constants, basalShare } = model;
  const { source, sink, seconds } = work;
  const m = cells + 1;
  for (let i = 0; i < cells; i += 1) {
    const sugar = to[SUGAR * m + i]!;
    const taken = sink[SUGAR * m + i]! * sugar;
    const filling = (constants.storedShare * taken) / constants.storeMostMmolPerL;
    const use = (constants.storeUsePerS * activity[i]! * constants.uptakeHalfMmolPerL) / (constants.uptakeHalfMmolPerL + sugar);
    const stored = (from[STORE * m + i]! + seconds * constants.storedShare * taken) / (1 + seconds * (filling + use));
    to[STORE * m + i] = stored;
    const fermented = taken - constants.storedShare * taken + (filling + use) * stored;
    const plenty = sugar / (sugar + 2 * constants.uptakeHalfMmolPerL);
    const lactate = fermented * (2 * constants.lactateYield * plenty + constants.scarceLactateYield * (1 - plenty));
    const basal = constants.basalAcidMmolPerLPerS * basalShare[i]! * activity[i]!;
    const acetate = fermented * (2 * constants.acetateYield * plenty + constants.scarceAcetateYield * (1 - plenty)) + basal;
    const split = sink[UREA * m + i]! * to[UREA * m + i]!;
    source[LACTATE * m + i] = lactate;
    source[ACETATE * m + i] = acetate;
    source[CARBONATE * m + i] = split + constants.carbonateYield * fermented;
    source[AMMONIA * m + i] = 2 * split;
    work.protonSource[i] = lactate + acetate + constants.carbonateYield * fermented - split;
  }
}
