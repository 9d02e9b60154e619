// biome-ignore-all lint/style/noNonNullAssertion: indexes of a numeric array
import type { PlaqueModel } from './buildModel.ts';
import { BROUGHT, MADE, PH, PROTONS, TURNOVER, tailAt } from './layout.ts';

/** The pH at the tooth itself, half a layer in from the middle of the first: a parabola with no slope at the tooth. */
export function toothPh(state: Float64Array, cells: number): number {
  const first = PH * (cells + 1);
  return state[first]! + (state[first]! - state[first + 1]!) / 8;
}

/** What protons gained between two states, against what was made and brought, as a share of all that was. */
export function protonBalanceError(model: PlaqueModel, start: Float64Array, end: Float64Array): number {
  const tail = tailAt(model.cells);
  const between = (place: number) => end[tail + place]! - start[tail + place]!;
  const turnover = between(TURNOVER);
  if (turnover === 0) return 0;
  return Math.abs(totalProtons(model, end) - totalProtons(model, start) - between(MADE) - between(BROUGHT)) / turnover;
}

/** In plaque and film, mmol/L x m. */
function totalProtons({ cells, layerM, filmM }: PlaqueModel, state: Float64Array): number {
  const base = PROTONS * (cells + 1);
  let sum = filmM * state[base + cells]!;
  for (let i = 0; i < cells; i += 1) sum += layerM * state[base + i]!;
  return sum;
}
