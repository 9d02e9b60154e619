import { extent } from 'd3-array';
import { type ScaleLinear, type ScaleLogarithmic, scaleLinear, scaleLog } from 'd3-scale';
import { area, line } from 'd3-shape';
import type { FluidMap, MapRow } from '../../core/chemistry/fluidMap.ts';
import type { Plot } from './ChartFrame.tsx';

/** What both pictures of a page share, so that they can be held against each other. */
export interface MapDomain {
  readonly products: readonly [low: number, high: number];
  readonly pHs: readonly [low: number, high: number];
}

/** (mmol/L)²: from thin saliva to plaque fluid that is rich in both. */
export const USUAL_PRODUCTS: readonly [number, number] = [0.5, 500];
const POINTS = 41;
/** The common practice of 5.5 is always in the picture. */
const ALWAYS_PH = 5.5;

export type MapMineral = 'hydroxyapatite' | 'fluorapatite' | 'enamel';
const LINES: readonly MapMineral[] = ['hydroxyapatite', 'fluorapatite', 'enamel'];

/** Evenly on the log, wide enough for what was measured. */
export function listProducts(measured: readonly number[]): readonly number[] {
  const low = Math.min(USUAL_PRODUCTS[0], ...measured.map((product) => product / 2));
  const high = Math.max(USUAL_PRODUCTS[1], ...measured.map((product) => product * 2));
  return Array.from({ length: POINTS }, (_, i) => low * (high / low) ** (i / (POINTS - 1)));
}

export function mapDomain(maps: readonly FluidMap[]): MapDomain {
  const rows = maps.flatMap((map) => map.rows);
  const [low = 1, high = 1] = extent(rows, ({ product }) => product);
  const ranges = maps.flatMap(({ critical: { range } }) => (range ? [range.low, range.high] : []));
  const pHs = [ALWAYS_PH, ...ranges, ...rows.flatMap((row) => LINES.map((mineral) => row[mineral])).filter((pH) => pH !== null)];
  return { products: [low, high], pHs: [Math.floor(2 * Math.min(...pHs)) / 2, Math.ceil(2 * Math.max(...pHs) + 0.2) / 2] };
}

export interface MapScales {
  readonly x: ScaleLogarithmic<number, number>;
  readonly y: ScaleLinear<number, number>;
}

export const mapScales = ({ products, pHs }: MapDomain, plot: Plot): MapScales => ({
  x: scaleLog().domain(products).range([plot.left, plot.right]),
  y: scaleLinear().domain(pHs).range([plot.bottom, plot.top]),
});

/** Where the mineral is just saturated; broken where there is no such pH. */
export const mineralPath = (rows: readonly MapRow[], mineral: MapMineral, { x, y }: MapScales): string =>
  line<MapRow>()
    .defined((row) => row[mineral] !== null)
    .x(({ product }) => x(product))
    .y((row) => y(row[mineral] ?? 0))(rows) ?? '';

/** Hydroxyapatite dissolves while fluorapatite forms: between the two lines, where that of fluorapatite is the lower one. */
export const windowPath = (rows: readonly MapRow[], { x, y }: MapScales): string =>
  area<MapRow>()
    .defined(({ hydroxyapatite, fluorapatite }) => hydroxyapatite !== null && fluorapatite !== null && fluorapatite < hydroxyapatite)
    .x(({ product }) => x(product))
    .y0(({ fluorapatite }) => y(fluorapatite ?? 0))
    .y1(({ hydroxyapatite }) => y(hydroxyapatite ?? 0))(rows) ?? '';

export interface MapMark {
  readonly x: number;
  readonly y: number;
  /** Ends of the spread of people, in the units of the drawing; undefined where it was measured. */
  readonly across?: readonly [number, number] | undefined;
  readonly upright?: readonly [number, number] | undefined;
}

/** Where the fluid is just saturated with enamel, with how people spread; undefined where it has no critical pH. */
export function mapMark({ critical: { pH, range, basis }, here, productRange }: FluidMap, { x, y }: MapScales): MapMark | undefined {
  if (pH === null) return undefined;
  return {
    x: x(here.product),
    y: y(pH),
    across: productRange ? [x(productRange.low), x(productRange.high)] : undefined,
    upright: range && basis !== 'measured' ? [y(range.high), y(range.low)] : undefined,
  };
}
