// biome-ignore-all lint/style/noNonNullAssertion: indexes of a numeric loop
import { saturation } from '../../chemistry/saturation.ts';
import type { Totals } from '../../chemistry/types.ts';
import { keepByTable } from '../../keep/keepByTable.ts';
import type { DayCurve } from '../types.ts';
import { buildDayModel, type DayTables, type PlaqueFluid } from './dayModel.ts';
import { runDay } from './runDay.ts';

const PH_FROM = 3;
const PH_TO = 9;
const PH_STEP = 0.02;
const LOSS_ORDER = 2;
const GAIN_ORDER = 1.25;
/** Growth does not go on rising with ever more saturation. */
const MOST_DEGREE = 3;

/** Degree of saturation of plaque fluid at rising pH. */
export interface DegreeTable {
  readonly phFrom: number;
  readonly phStep: number;
  readonly degree: Float64Array;
}

/** Both without unit; 1 is the reference day. They compare days, and are no amount of mineral. */
export interface MineralIndex {
  readonly loss: number;
  readonly gain: number;
}

/** What plaque fluid holds at a pH. */
export function plaqueFluidAt({ totals, calciumPerPh }: PlaqueFluid, ph: number): Totals {
  return { ...totals, calcium: (totals.calcium ?? 0) + calciumPerPh * Math.max(0, 7 - ph) };
}

export const saturationByPh = keepByTable((fluid: PlaqueFluid): { readonly enamel: DegreeTable; readonly fluorapatite: DegreeTable } => {
  const count = Math.round((PH_TO - PH_FROM) / PH_STEP) + 1;
  const enamel = new Float64Array(count);
  const fluorapatite = new Float64Array(count);
  for (let i = 0; i < count; i += 1) {
    const ph = PH_FROM + i * PH_STEP;
    const { degreeOfSaturation } = saturation(plaqueFluidAt(fluid, ph), ph);
    enamel[i] = degreeOfSaturation.enamel ?? 0;
    fluorapatite[i] = degreeOfSaturation.fluorapatite ?? 0;
  }
  const at = { phFrom: PH_FROM, phStep: PH_STEP };
  return { enamel: { ...at, degree: enamel }, fluorapatite: { ...at, degree: fluorapatite } };
});

/** Linear between the two nearest values; outside the table, its end. */
function degreeAt({ phFrom, phStep, degree }: DegreeTable, ph: number): number {
  const last = degree.length - 1;
  const place = Math.min(Math.max((ph - phFrom) / phStep, 0), last);
  const i = Math.min(Math.floor(place), last - 1);
  return degree[i]! + (degree[i + 1]! - degree[i]!) * (place - i);
}

/** Minutes weighted by how far plaque fluid at the tooth is below and above saturation with enamel. */
function rawIndex({ ph }: Pick<DayCurve, 'ph'>, fluid: PlaqueFluid, countsFluoride: boolean): MineralIndex {
  const { enamel, fluorapatite } = saturationByPh(fluid);
  let [loss, gain] = [0, 0];
  // The middle of each minute, from its two ends: a day has no end that counts half.
  for (let minute = 0; minute < ph.length - 1; minute += 1) {
    const middle = (ph[minute]! + ph[minute + 1]!) / 2;
    const degree = degreeAt(enamel, middle);
    const isHeld = countsFluoride && degreeAt(fluorapatite, middle) >= 1;
    if (degree < 1 && !isHeld) loss += (1 - degree) ** LOSS_ORDER;
    if (degree > 1) gain += (Math.min(degree, MOST_DEGREE) - 1) ** GAIN_ORDER;
  }
  return { loss, gain };
}

const referenceIndex = keepByTable((tables: DayTables): MineralIndex => {
  const { day, mouth } = tables.reference;
  return rawIndex(runDay(day, buildDayModel(mouth, tables), tables.foods), tables.plaqueFluid, false);
});

/**
 * How far a day is on the losing and on the gaining side, as multiples of the reference day: the integral of (1 - DS)^2 where plaque fluid at
 * the tooth is below saturation with enamel, and of (DS - 1)^1.25 above it, DS up to 3. Both are 1 for the reference day, so its loss and
 * gain balance by definition. Not an amount of mineral.
 * @param countsFluoride  leaves out of the loss what stands above saturation with fluorapatite, as with fluoride in solution
 * @source project
 */
export function mineralIndex(curve: Pick<DayCurve, 'ph'>, tables: DayTables, countsFluoride = false): MineralIndex {
  const reference = referenceIndex(tables);
  const { loss, gain } = rawIndex(curve, tables.plaqueFluid, countsFluoride);
  if (!(reference.loss > 0 && reference.gain > 0)) throw new RangeError('reference day must have time on both sides of saturation');
  return { loss: loss / reference.loss, gain: gain / reference.gain };
}
