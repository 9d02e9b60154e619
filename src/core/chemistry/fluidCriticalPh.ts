import type { SourceRef } from '../visit/answer.ts';
import { constants37 } from './constants37.ts';
import { criticalPh } from './criticalPh.ts';
import type { MeasuredIons, OralFluid, TypicalIon } from './oralFluid.ts';
import { requireTotal } from './speciate.ts';
import { type ChemistryOptions, COMPONENTS, type Component, type Mineral, type Totals } from './types.ts';

/** `measured`: calcium and phosphate both; `partly`: one of them; `typical`: neither. */
export type CriticalPhBasis = 'measured' | 'partly' | 'typical';

export interface FluidCriticalPh {
  /** null: this fluid is nowhere just saturated between pH 2 and 12. */
  readonly pH: number | null;
  /** With every ion that was not measured at the ends of its usual range; null where one of these has no critical pH. */
  readonly range: { readonly low: number; readonly high: number } | null;
  readonly basis: CriticalPhBasis;
  readonly measured: readonly Component[];
  readonly assumed: readonly Component[];
  /** Of the mineral, then of what was assumed. */
  readonly sources: readonly SourceRef[];
}

export interface FluidCriticalPhOptions extends ChemistryOptions {
  /** Default enamel. */
  readonly mineral?: Mineral | undefined;
}

/**
 * Critical pH of saliva or plaque fluid: from what was measured of it, and from typical amounts for the rest.
 * The range takes each ion that was not measured at both ends of its usual range, all combinations, so it is wider than what nine in ten
 * people would show; how exactly something was measured is not in it.
 * @param fluid     typical amounts, mmol/L
 * @param measured  mmol/L, 0..1000, absent = not measured
 * @throws RangeError naming `measured.<component>`, or as `criticalPh`
 * @source dawes2003
 */
export function fluidCriticalPh(fluid: OralFluid, measured: MeasuredIons = {}, options: FluidCriticalPhOptions = {}): FluidCriticalPh {
  const { mineral = 'enamel' } = options;
  const given = COMPONENTS.filter((ion) => measured[ion] !== undefined);
  const assumed = COMPONENTS.filter((ion) => measured[ion] === undefined && fluid.ions[ion] !== undefined);
  const known: Totals = Object.fromEntries(given.map((ion) => [ion, requireTotal(measured[ion] ?? 0, `measured.${ion}`)]));
  const at = (choose: (ion: TypicalIon, i: number) => number) =>
    criticalPh({ ...known, ...Object.fromEntries(assumed.map((ion, i) => [ion, choose(ionOf(fluid, ion), i)])) }, mineral, options);
  const ends = corners(assumed.filter((ion) => ionOf(fluid, ion).low < ionOf(fluid, ion).high)).map((highs) =>
    at((ion, i) => (highs.has(assumed[i] ?? 'calcium') ? ion.high : ion.low)),
  );
  const numbers = ends.filter((pH) => pH !== null);
  return {
    pH: at((ion) => ion.typical),
    range: numbers.length === ends.length ? { low: Math.min(...numbers), high: Math.max(...numbers) } : null,
    basis: basisOf(given),
    measured: given,
    assumed,
    sources: distinct([(options.constants ?? constants37).solids[mineral].source, ...assumed.map((ion) => ionOf(fluid, ion).source)]),
  };
}

function basisOf(given: readonly Component[]): CriticalPhBasis {
  const count = (['calcium', 'phosphate'] as const).filter((ion) => given.includes(ion)).length;
  return count === 2 ? 'measured' : count === 1 ? 'partly' : 'typical';
}

function ionOf(fluid: OralFluid, ion: Component): TypicalIon {
  const found = fluid.ions[ion];
  if (found === undefined) throw new RangeError(`fluid.ions.${ion} is not in the table`);
  return found;
}

/** Each way of putting some ions at the high end and the rest at the low one. */
function corners(ions: readonly Component[]): readonly ReadonlySet<Component>[] {
  return Array.from({ length: 2 ** ions.length }, (_, bits) => new Set(ions.filter((_ion, i) => (bits >> i) % 2 === 1)));
}

const distinct = (sources: readonly SourceRef[]): SourceRef[] => [
  ...new Map(sources.map((source) => [`${source.key} ${source.status} ${source.note ?? ''}`, source])).values(),
];
