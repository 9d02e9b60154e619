// biome-ignore-all lint/style/noNonNullAssertion: indexes of a numeric loop
import type { PlaqueModel } from './buildModel.ts';
import type { Workspace } from './workspace.ts';

/**
 * One step of backward Euler for one solute: no flux at the tooth, film exchanged with saliva. Positive by construction.
 * @param solute  its block in the state and its place among the conductances
 */
export function solveDiffusion(model: PlaqueModel, work: Workspace, solute: number, from: Float64Array, to: Float64Array): void {
  const { cells, layerM, filmM } = model;
  const { seconds, sink, source, factors } = work;
  const base = solute * (cells + 1);
  const within = seconds * model.inner[solute]!;
  const outward = seconds * model.surface[solute]!;
  let before = 0;
  let carried = 0;
  let factor = 0;
  for (let i = 0; i < cells; i += 1) {
    const after = i === cells - 1 ? outward : within;
    const pivot = 1 / (layerM * (1 + seconds * sink[base + i]!) + after + before - before * factor);
    carried = (layerM * (from[base + i]! + seconds * source[base + i]!) + before * carried) * pivot;
    factor = after * pivot;
    to[base + i] = carried;
    factors[i] = factor;
    before = after;
  }
  const exchange = seconds * work.exchangePerS;
  const film = filmM * (from[base + cells]! + exchange * work.saliva[solute]!) + before * carried;
  let value = film / (filmM * (1 + exchange) + before - before * factor);
  to[base + cells] = value;
  for (let i = cells - 1; i >= 0; i -= 1) {
    value = to[base + i]! + factors[i]! * value;
    to[base + i] = value;
  }
}
