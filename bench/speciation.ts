// Fluids solved a second, in one thread: ion pairs, activities and eight saturation indices of 100,000 random fluids, begun from nothing, and
// begun where the same fluid ended before it changed by up to 1 %. No program to compare with runs here: PHREEQC's figure was noted earlier
// on the same kind of machine.
import { newBatchResult, saturationBatch } from '../src/core/chemistry/saturationBatch.ts';
import { speciate } from '../src/core/chemistry/speciate.ts';
import { COMPONENTS, type Component } from '../src/core/chemistry/types.ts';
import { seededUniform } from '../src/core/stats/seededUniform.ts';
import { addUp } from '../test/reference/chemistry/balances.ts';
import { digits, median } from './measure.ts';

const FLUIDS = 100_000;
const ROUNDS = 15;
const CHECKED = 20_000;
/** Noted once, not run here: PHREEQC 3.8.8. It is no package of Debian, and does much that is not done here. */
const PHREEQC_NOTED_PER_SECOND = 12_500;

/** mmol/kg, drawn evenly on the log scale: the ranges of the reference, and background. */
const RANGES: Readonly<Record<Component, readonly [low: number, high: number]>> = {
  calcium: [0.1, 20],
  phosphate: [0.5, 30],
  fluoride: [0.0005, 50],
  carbonate: [0.1, 25],
  lactate: [0.1, 60],
  acetate: [0.1, 40],
  magnesium: [0.1, 4],
  sodium: [5, 60],
  potassium: [5, 80],
  chloride: [10, 100],
};
const PH: readonly [number, number] = [3.5, 11];

const random = seededUniform(1);
const pH = Float64Array.from({ length: FLUIDS }, () => PH[0] + (PH[1] - PH[0]) * random());
const totalsMmolPerKg = new Float64Array(FLUIDS * COMPONENTS.length);
for (let at = 0; at < totalsMmolPerKg.length; at += 1) {
  const [low, high] = RANGES[COMPONENTS[at % COMPONENTS.length] ?? 'calcium'];
  totalsMmolPerKg[at] = low * (high / low) ** random();
}
const batch = { pH, totalsMmolPerKg };
const result = newBatchResult(FLUIDS);

for (const warm of [false, true]) {
  const clock: number[] = [];
  const processor: number[] = [];
  saturationBatch(batch, result);
  for (let round = 0; round < ROUNDS; round += 1) {
    if (warm)
      for (let at = 0; at < totalsMmolPerKg.length; at += 1) totalsMmolPerKg[at] = (totalsMmolPerKg[at] ?? 0) * (0.99 + 0.02 * random());
    const began = performance.now();
    const used = process.cpuUsage();
    saturationBatch(batch, result, { warm });
    processor.push(process.cpuUsage(used).user / 1000);
    clock.push(performance.now() - began);
  }
  report(warm ? 'from a fluid that was up to 1 % different' : 'from nothing', clock, processor);
}
reportResiduals();

function report(name: string, clockMs: readonly number[], processorMs: readonly number[]): void {
  const perSecond = (ms: number) => (FLUIDS / ms) * 1000;
  const [own, best] = [perSecond(median(processorMs)), perSecond(Math.min(...processorMs))];
  console.log(
    `${name}: ${digits(own)} fluids a second of processor time (best round ${digits(best)}), ${digits(perSecond(median(clockMs)))} by the clock`,
  );
  console.log(
    `  PHREEQC, noted and not run: ${digits(PHREEQC_NOTED_PER_SECOND)} a second; ours / this: ${digits(own / PHREEQC_NOTED_PER_SECOND)}`,
  );
  const refused = result.state.filter((state) => state === 2).length;
  console.log(
    `  a fluid: ${digits(result.strengthSteps / FLUIDS)} ionic strengths tried, ${digits(result.calciumSteps / FLUIDS)} steps of Newton in all; refused: ${refused}`,
  );
}

/** Added up from the table of species, apart from the solver's own sums. */
function reportResiduals(): void {
  let [amount, strength] = [0, 0];
  for (let fluid = 0; fluid < CHECKED; fluid += 1) {
    const row = totalsMmolPerKg.subarray(fluid * COMPONENTS.length, (fluid + 1) * COMPONENTS.length);
    const totals = Object.fromEntries(COMPONENTS.map((name, i) => [name, row[i]]));
    const solved = speciate(totals, pH[fluid] ?? 7);
    const sums = addUp(totals, solved);
    amount = Math.max(amount, ...Object.values(sums.amounts).map(Math.abs));
    strength = Math.max(strength, Math.abs(sums.ionicStrength / solved.ionicStrength - 1));
  }
  console.log(
    `worst of ${digits(CHECKED)} fluids: an amount is off by ${amount.toExponential(1)}, the ionic strength by ${strength.toExponential(1)} of itself`,
  );
}
