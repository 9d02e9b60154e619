import { SOLUTE_COUNT } from './buildModel.ts';
import { PROTONS } from './layout.ts';

/** Room for one step, made once: the loops allocate nothing. */
export interface Workspace {
  /** Length of the step, s, and its end since the start of the day, s. */
  seconds: number;
  endS: number;
  /** Film against saliva at the end of the step, 1/s. */
  exchangePerS: number;
  /** Saliva beside the film at the end of the step, mmol/L, by solute; the last is its protons. */
  readonly saliva: Float64Array;
  /** By solute and layer: used up, 1/s, and made, mmol/L/s. */
  readonly sink: Float64Array;
  readonly source: Float64Array;
  /** Protons made, mmol/L/s, by layer. */
  readonly protonSource: Float64Array;
  readonly factors: Float64Array;
  readonly cell: ProtonCell;
  /** Of the layers and the film, in the search for the pH. */
  readonly protons: Float64Array;
  readonly protonSlope: Float64Array;
  readonly flow: Float64Array;
  readonly flowSlope: Float64Array;
  readonly change: Float64Array;
  readonly outerFlow: Float64Array;
}

/** One layer's protons and how they would flow, with slopes by ln of the activity of hydrogen ions. */
export interface ProtonCell {
  protons: number;
  protonSlope: number;
  /** mmol/L x m/s towards a neighbouring layer, and through the surface. */
  inner: number;
  innerSlope: number;
  surface: number;
  surfaceSlope: number;
}

export function buildWorkspace(cells: number): Workspace {
  const row = () => new Float64Array(cells + 1);
  return {
    seconds: 0.5,
    endS: 0.5,
    exchangePerS: 0.5,
    saliva: new Float64Array(PROTONS + 1),
    sink: new Float64Array(SOLUTE_COUNT * (cells + 1)),
    source: new Float64Array(SOLUTE_COUNT * (cells + 1)),
    protonSource: row(),
    factors: row(),
    cell: { protons: 0.5, protonSlope: 0.5, inner: 0.5, innerSlope: 0.5, surface: 0.5, surfaceSlope: 0.5 },
    protons: row(),
    protonSlope: row(),
    flow: row(),
    flowSlope: row(),
    change: row(),
    outerFlow: new Float64Array(4),
  };
}
