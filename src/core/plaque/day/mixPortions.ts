import type { Exposure } from '../types.ts';
import type { EatingNumbers } from './dayModel.ts';
import type { AcidOfFood, Food, Portion, Retention } from './types.ts';

const SUGAR_G_PER_ML = 1.6;

/** A portion with what it holds in all. */
interface Part {
  readonly amount: number;
  readonly isDrink: boolean;
  /** Counted as plaque ferments it. */
  readonly sugarsG: number;
  readonly waterMl: number;
  readonly retention: Retention;
  readonly acid?: Pick<AcidOfFood, 'pH' | 'titratableMmolPerL'> | undefined;
}

export interface MixContext {
  readonly foods: ReadonlyMap<string, Food>;
  readonly eating: EatingNumbers;
}

export type Mix = Pick<Exposure, 'kind' | 'hexoseMmolPerL' | 'pH' | 'titratableMmolPerL' | 'retained' | 'flowMlPerMin'>;

/**
 * What the mouth meets when these are taken together. A drink is met as it is; what is chewed is met in its own water, what is drunk with
 * it, and the saliva of chewing; more sugar than dissolves is not met.
 * @param minutes  how long it takes
 */
export function mixPortions(portions: readonly Portion[], minutes: number, { foods, eating }: MixContext): Mix {
  const parts = portions.map((portion) => partOf(portion, foods, eating));
  const isDrink = parts.every((part) => part.isDrink);
  const sugarsG = sum(parts.map((part) => part.sugarsG));
  const fluidMl = isDrink
    ? sum(parts.map(({ amount }) => amount))
    : sum(parts.map(({ waterMl }) => waterMl)) + eating.chewingFlowMlPerMin * minutes + sugarsG / SUGAR_G_PER_ML;
  return {
    kind: isDrink ? 'drinking' : 'eating',
    hexoseMmolPerL: Math.min((1000 * eating.hexoseMmolPerG * sugarsG) / fluidMl, eating.dissolvedMostMmolPerL),
    ...acidOf(parts, fluidMl),
    ...(isDrink ? {} : { flowMlPerMin: eating.chewingFlowMlPerMin }),
    ...retainedOf(parts, eating),
  };
}

function partOf(portion: Portion, foods: ReadonlyMap<string, Food>, eating: EatingNumbers): Part {
  const { amount } = portion;
  if ('typed' in portion) {
    const { unit, sugarsGPer100, retention, pH } = portion.typed;
    const isDrink = unit === 'mL';
    const waterMl = (amount * (isDrink ? 100 - sugarsGPer100 : Math.min(typedWater(retention, eating), 100 - sugarsGPer100))) / 100;
    return { amount, isDrink, sugarsG: (amount * sugarsGPer100) / 100, waterMl, retention, acid: pH === undefined ? undefined : { pH } };
  }
  const food = foods.get(portion.food);
  if (!food) throw new RangeError(`food is not in the table of foods: ${portion.food}`);
  const share = food.isMilkSugar ? eating.milkSugarShare : 1;
  return {
    amount,
    isDrink: food.unit === 'mL',
    sugarsG: (share * amount * food.sugarsGPer100) / 100,
    waterMl: (amount * food.waterGPer100) / 100,
    retention: food.retention,
    acid: food.acid,
  };
}

function typedWater(retention: Retention, eating: EatingNumbers): number {
  if (retention === 'clears') return eating.typedWaterPercentClears;
  return retention === 'lingers' ? eating.typedWaterPercentLingers : eating.typedWaterPercentSticks;
}

/** The pH is that of a drink taken alone; of a mixture only the alkali that it takes up is known. */
function acidOf(parts: readonly Part[], fluidMl: number): Pick<Exposure, 'pH' | 'titratableMmolPerL'> {
  const known = parts.filter(({ acid }) => acid?.titratableMmolPerL !== undefined);
  const mmol = sum(known.map(({ acid, amount }) => ((acid?.titratableMmolPerL ?? 0) * amount) / 1000));
  const alone = parts.length === 1 ? parts[0]?.acid : undefined;
  return {
    ...(known.length > 0 && { titratableMmolPerL: (1000 * mmol) / fluidMl }),
    ...(alone && parts[0]?.isDrink && { pH: alone.pH }),
  };
}

/** What stays between the teeth: each part by its sugar. */
function retainedOf(parts: readonly Part[], eating: EatingNumbers): Pick<Exposure, 'retained'> {
  const whole = sum(parts.map(({ sugarsG }) => sugarsG));
  const lingering = sum(parts.filter((p) => p.retention === 'lingers').map((p) => p.sugarsG)) * eating.lingeringShare;
  const sticking = sum(parts.filter((p) => p.retention === 'sticks').map((p) => p.sugarsG)) * eating.stickingShare;
  const stays = lingering + sticking;
  if (!(stays > 0)) return {};
  const halfTimeMinutes = (lingering * eating.lingeringHalfMinutes + sticking * eating.stickingHalfMinutes) / stays;
  return { retained: { share: stays / whole, halfTimeMinutes } };
}

function sum(values: readonly number[]): number {
  return values.reduce((total, value) => total + value, 0);
}
