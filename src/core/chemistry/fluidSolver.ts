// biome-ignore-all lint/style/noNonNullAssertion: indexes of a numeric loop
import { type ChemistryConstants, MAX_IONIC_STRENGTH, type SpeciesName } from './types.ts';

const { LN10 } = Math;
/** Ionic strength is solved until it agrees with itself to this share. */
const SAME_STRENGTH = 1e-10;
/** One more step of Newton squares this. */
const SAME_CALCIUM = 1e-7;
const FAST_STEPS = 12;
/** Halvings after which a bracket of 0 to 0.5 mol/kg is narrower than the precision of a double. */
const HALVINGS = 60;

export interface SolverOptions {
  readonly withBackgroundPairs: boolean;
  /** For tests: go straight to the way that needs no luck. */
  readonly onlyBisection?: boolean;
}

/**
 * Equilibrium of one fluid after another; holds its working numbers, so that a batch allocates nothing.
 *
 * At a given ionic strength and activity of water every ligand follows in closed form from the free calcium (fluoride by a quadratic, and
 * phosphate by a scalar equation when magnesium, sodium and potassium bind it), so that one equation is left: calcium found = calcium
 * given. Its left side rises with free calcium and is concave, hence Newton from below climbs to the one root and never passes it; a
 * bracket is kept all the same. Around it the ionic strength is found by secants, and by halving the bracket where these have not settled
 * after a few steps, which ends always.
 * Amounts in mol/kg of water, activities on the same scale. Read the fields after `solve` has said that it was done.
 */
export class FluidSolver {
  // The fluid: totals, mol/kg
  calcium = 0.1;
  phosphate = 0.1;
  fluoride = 0.1;
  carbonate = 0.1;
  lactate = 0.1;
  acetate = 0.1;
  magnesium = 0.1;
  sodium = 0.1;
  potassium = 0.1;
  chloride = 0.1;
  proton = 0.1;
  // The answer: activities of the free ions, and what depends on all of them
  ca = 0.1;
  po4 = 0.1;
  f = 0.1;
  co3 = 0.1;
  lac = 0.1;
  ace = 0.1;
  mg = 0.1;
  na = 0.1;
  k = 0.1;
  ionicStrength = 0.1;
  waterActivity = 0.1;
  /** mol/kg of charge, cations less anions. */
  chargeImbalance = 0.1;
  /** How often the whole was solved at one ionic strength, and how many steps of Newton calcium took in all. */
  strengthSteps = 0;
  calciumSteps = 0;

  // At one ionic strength: 1 / activity coefficient by charge, and for each ligand what one unit of its activity holds (a), and holds more
  // for each unit of the activity of calcium (b)
  private inv1 = 0.1;
  private inv4 = 0.1;
  private inv9 = 0.1;
  private aCa = 0.1;
  private aP = 0.1;
  private bP = 0.1;
  private aF = 0.1;
  private bF = 0.1;
  private twoF = 0.1;
  private aC = 0.1;
  private bC = 0.1;
  private aL = 0.1;
  private bL = 0.1;
  private aA = 0.1;
  private bA = 0.1;
  private bMg = 0.1;
  private bNa = 0.1;
  private bK = 0.1;
  /** Change of the activity of phosphate with that of calcium. */
  private slopeP = 0.1;
  private nextStrength = 0.1;
  private nextWater = 0.1;

  private readonly davies: number;
  private readonly waterPerMolal: number;
  private readonly withPairs: boolean;
  private readonly onlyBisection: boolean;
  private readonly kw: number;
  private readonly hpo4: number;
  private readonly h2po4: number;
  private readonly h3po4: number;
  private readonly hco3: number;
  private readonly co2: number;
  private readonly hf: number;
  private readonly hf2: number;
  private readonly hlac: number;
  private readonly hace: number;
  private readonly caoh: number;
  private readonly capo4: number;
  private readonly cahpo4: number;
  private readonly cah2po4: number;
  private readonly caco3: number;
  private readonly cahco3: number;
  private readonly caf: number;
  private readonly calac: number;
  private readonly caace: number;
  private readonly mghpo4: number;
  private readonly nahpo4: number;
  private readonly khpo4: number;

  constructor({ debyeHuckelA, waterPerMolal, species }: ChemistryConstants, { withBackgroundPairs, onlyBisection }: SolverOptions) {
    const constant = (name: SpeciesName) => 10 ** species[name].logK;
    this.davies = LN10 * debyeHuckelA;
    this.waterPerMolal = waterPerMolal;
    this.withPairs = withBackgroundPairs;
    this.onlyBisection = onlyBisection === true;
    this.kw = constant('OH-');
    this.hpo4 = constant('HPO4-2');
    this.h2po4 = constant('H2PO4-');
    this.h3po4 = constant('H3PO4');
    this.hco3 = constant('HCO3-');
    this.co2 = constant('CO2');
    this.hf = constant('HF');
    this.hf2 = constant('HF2-');
    this.hlac = constant('HLac');
    this.hace = constant('HAce');
    this.caoh = constant('CaOH+');
    this.capo4 = constant('CaPO4-');
    this.cahpo4 = constant('CaHPO4');
    this.cah2po4 = constant('CaH2PO4+');
    this.caco3 = constant('CaCO3');
    this.cahco3 = constant('CaHCO3+');
    this.caf = constant('CaF+');
    this.calac = constant('CaLac+');
    this.caace = constant('CaAce+');
    this.mghpo4 = constant('MgHPO4');
    this.nahpo4 = constant('NaHPO4-');
    this.khpo4 = constant('KHPO4-');
  }

  /** Takes totals in mmol/kg from ten places in the order of COMPONENTS. */
  load(totalsMmolPerKg: Float64Array, at: number): void {
    this.calcium = totalsMmolPerKg[at]! * 1e-3;
    this.phosphate = totalsMmolPerKg[at + 1]! * 1e-3;
    this.fluoride = totalsMmolPerKg[at + 2]! * 1e-3;
    this.carbonate = totalsMmolPerKg[at + 3]! * 1e-3;
    this.lactate = totalsMmolPerKg[at + 4]! * 1e-3;
    this.acetate = totalsMmolPerKg[at + 5]! * 1e-3;
    this.magnesium = totalsMmolPerKg[at + 6]! * 1e-3;
    this.sodium = totalsMmolPerKg[at + 7]! * 1e-3;
    this.potassium = totalsMmolPerKg[at + 8]! * 1e-3;
    this.chloride = totalsMmolPerKg[at + 9]! * 1e-3;
  }

  /**
   * @param pH        the fluid loaded before is solved at this pH
   * @param strength  mol/kg, where to begin: the ionic strength of a fluid much like this one, or 0 to begin from the totals
   * @param ca        activity of calcium to begin with, or 0
   * @returns false where the ionic strength would be above 0.5 mol/kg, beyond which the activities do not hold
   */
  solve(pH: number, strength = 0, ca = 0): boolean {
    this.proton = Math.exp(-LN10 * pH);
    this.strengthSteps = 0;
    this.calciumSteps = 0;
    this.ca = ca;
    this.waterActivity = 1 - this.waterPerMolal * this.sumOfTotals();
    const isSettled = !this.onlyBisection && this.bySecants(strength > 0 ? strength : this.guessStrength());
    if (!isSettled && !this.byHalving()) return false;
    this.chargeImbalance = this.cations() - this.anions();
    return true;
  }

  private sumOfTotals(): number {
    const acids = this.phosphate + this.fluoride + this.carbonate + this.lactate + this.acetate;
    return this.calcium + acids + this.magnesium + this.sodium + this.potassium + this.chloride + this.proton;
  }

  private guessStrength(): number {
    const acids = this.phosphate + this.fluoride + this.carbonate + this.lactate + this.acetate;
    const twice = 4 * (this.calcium + this.magnesium) + acids + this.sodium + this.potassium + this.chloride + this.proton;
    return Math.min(0.8 * MAX_IONIC_STRENGTH, twice / 2 + this.kw / this.proton);
  }

  /** The activity of water follows one step behind: it hardly depends on the strength. */
  private bySecants(start: number): boolean {
    let [low, high] = [0, MAX_IONIC_STRENGTH];
    let strength = start;
    let [before, excessBefore] = [0, 0];
    for (let step = 0; step < FAST_STEPS; step += 1) {
      this.at(strength);
      const excess = this.nextStrength - strength;
      const isWaterSame = Math.abs(this.nextWater - this.waterActivity) <= SAME_STRENGTH;
      // What was solved stays as it was solved, with its own activity of water: so the amounts add up to the last digits.
      if (isWaterSame && Math.abs(excess) <= SAME_STRENGTH * strength) return true;
      this.waterActivity = this.nextWater;
      if (excess > 0) low = strength;
      else high = strength;
      const slope = step === 0 ? -1 : (excess - excessBefore) / (strength - before);
      before = strength;
      excessBefore = excess;
      const next = strength - excess / (slope < 0 ? slope : -1);
      strength = next >= low && next <= high ? next : (low + high) / 2;
    }
    return false;
  }

  /** @returns false where the strength found at 0.5 mol/kg is above it */
  private byHalving(): boolean {
    let [low, high] = [0, MAX_IONIC_STRENGTH];
    if (this.excessAt(high) > 0) return false;
    for (let step = 0; step < HALVINGS; step += 1) {
      const middle = (low + high) / 2;
      if (this.excessAt(middle) > 0) low = middle;
      else high = middle;
    }
    this.excessAt((low + high) / 2);
    return true;
  }

  /** With the activity of water that belongs to this strength: each round brings it about a hundred times nearer. */
  private excessAt(strength: number): number {
    for (let round = 0; round < 12; round += 1) {
      this.at(strength);
      if (Math.abs(this.nextWater - this.waterActivity) <= SAME_STRENGTH) break;
      this.waterActivity = this.nextWater;
    }
    return this.nextStrength - strength;
  }

  /** Solves the whole at one ionic strength, with the activity of water at hand, and finds the strength that comes out. */
  private at(strength: number): void {
    this.strengthSteps += 1;
    this.setConditions(strength);
    this.solveCalcium();
    this.sumUp();
  }

  private setConditions(strength: number): void {
    const root = Math.sqrt(strength);
    const inv1 = Math.exp(this.davies * (root / (1 + root) - 0.3 * strength));
    const inv2 = inv1 * inv1;
    const inv4 = inv2 * inv2;
    const h = this.proton;
    const hh = h * h;
    this.ionicStrength = strength;
    this.inv1 = inv1;
    this.inv4 = inv4;
    this.inv9 = inv4 * inv4 * inv1;
    this.aCa = inv4 + (this.caoh * this.waterActivity * inv1) / h;
    this.aP = this.inv9 + this.hpo4 * h * inv4 + this.h2po4 * hh * inv1 + this.h3po4 * hh * h;
    this.bP = this.capo4 * inv1 + this.cahpo4 * h + this.cah2po4 * hh * inv1;
    this.aF = inv1 + this.hf * h;
    this.bF = this.caf * inv1;
    this.twoF = 2 * this.hf2 * h * inv1;
    this.aC = inv4 + this.hco3 * h * inv1 + (this.co2 * hh) / this.waterActivity;
    this.bC = this.caco3 + this.cahco3 * h * inv1;
    this.aL = inv1 + this.hlac * h;
    this.bL = this.calac * inv1;
    this.aA = inv1 + this.hace * h;
    this.bA = this.caace * inv1;
    this.bMg = this.mghpo4 * h;
    this.bNa = this.nahpo4 * h * inv1;
    this.bK = this.khpo4 * h * inv1;
  }

  private solveCalcium(): void {
    const total = this.calcium;
    if (total === 0) {
      this.ca = 0;
      this.setLigands(0);
      return;
    }
    let high = total / this.aCa;
    let ca = this.ca;
    let low = 0;
    if (!(ca > 0 && ca <= high)) {
      // No ligand binds more than it would if calcium left all of it free.
      this.setLigands(0);
      ca = total / (this.aCa + this.bP * this.po4 + this.bF * this.f + this.bC * this.co3 + this.bL * this.lac + this.bA * this.ace);
      low = ca;
    }
    for (let step = 0; step < 200; step += 1) {
      this.calciumSteps += 1;
      const next = ca - this.calciumExcess(ca) / this.calciumSlope(ca);
      if (next >= ca) low = ca;
      else high = ca;
      const inside = next >= low && next <= high ? next : (low + high) / 2;
      const change = Math.abs(inside - ca);
      ca = inside;
      if (change <= SAME_CALCIUM * ca) break;
    }
    this.ca = ca;
    this.setLigands(ca);
  }

  /** Calcium found less calcium given. */
  private calciumExcess(ca: number): number {
    this.setLigands(ca);
    const bound = this.bP * this.po4 + this.bF * this.f + this.bC * this.co3 + this.bL * this.lac + this.bA * this.ace;
    return ca * (this.aCa + bound) - this.calcium;
  }

  /** For the ligands set last. */
  private calciumSlope(ca: number): number {
    const root = this.fluorideRoot(ca);
    return (
      this.aCa +
      this.bP * (this.po4 + ca * this.slopeP) +
      this.bF * this.f * (1 - (this.bF * ca) / root) +
      (this.bC * this.co3 * this.aC) / (this.aC + this.bC * ca) +
      (this.bL * this.lac * this.aL) / (this.aL + this.bL * ca) +
      (this.bA * this.ace * this.aA) / (this.aA + this.bA * ca)
    );
  }

  private fluorideRoot(ca: number): number {
    const linear = this.aF + this.bF * ca;
    return Math.sqrt(linear * linear + 4 * this.twoF * this.fluoride);
  }

  private setLigands(ca: number): void {
    this.setPhosphate(ca);
    this.f = (2 * this.fluoride) / (this.aF + this.bF * ca + this.fluorideRoot(ca));
    this.co3 = this.carbonate / (this.aC + this.bC * ca);
    this.lac = this.lactate / (this.aL + this.bL * ca);
    this.ace = this.acetate / (this.aA + this.bA * ca);
  }

  private setPhosphate(ca: number): void {
    const linear = this.aP + this.bP * ca;
    let po4 = this.phosphate / linear;
    let slope = linear;
    if (this.withPairs && po4 > 0) {
      // Rises and is concave as calcium's own equation is: from below, Newton climbs to the root.
      po4 =
        this.phosphate /
        (linear + (this.magnesium * this.bMg) / this.inv4 + (this.sodium * this.bNa + this.potassium * this.bK) / this.inv1);
      for (let step = 0; step < 60; step += 1) {
        const mg = this.inv4 + this.bMg * po4;
        const na = this.inv1 + this.bNa * po4;
        const k = this.inv1 + this.bK * po4;
        const [mgBound, naBound, kBound] = [
          (this.magnesium * this.bMg) / mg,
          (this.sodium * this.bNa) / na,
          (this.potassium * this.bK) / k,
        ];
        slope = linear + (mgBound * this.inv4) / mg + (naBound * this.inv1) / na + (kBound * this.inv1) / k;
        const change = (this.phosphate - po4 * (linear + mgBound + naBound + kBound)) / slope;
        po4 += change;
        if (Math.abs(change) <= SAME_CALCIUM * po4) break;
      }
    }
    this.po4 = po4;
    this.slopeP = (-this.bP * po4) / slope;
  }

  /** Strength and activity of water that the solved fluid has. */
  private sumUp(): void {
    const { inv1, inv4, inv9, proton: h, ca, po4, f, co3, lac, ace } = this;
    const hh = h * h;
    const hpo4 = this.hpo4 * h * po4;
    let [mg, na, k, pairs] = [this.magnesium, this.sodium, this.potassium, 0];
    if (this.withPairs) {
      this.mg = mg / (inv4 + this.bMg * po4);
      this.na = na / (inv1 + this.bNa * po4);
      this.k = k / (inv1 + this.bK * po4);
      pairs = (this.bNa * this.na + this.bK * this.k) * po4;
      mg = this.mg * inv4;
      na = this.na * inv1;
      k = this.k * inv1;
    } else {
      this.mg = mg / inv4;
      this.na = na / inv1;
      this.k = k / inv1;
    }
    const hydroxide = (this.kw * this.waterActivity) / h;
    const singly =
      inv1 *
        (h +
          hydroxide +
          (this.caoh * this.waterActivity * ca) / h +
          po4 * (this.h2po4 * hh + ca * (this.capo4 + this.cah2po4 * hh)) +
          f * (1 + this.caf * ca + this.hf2 * h * f) +
          co3 * h * (this.hco3 + this.cahco3 * ca) +
          lac * (1 + this.calac * ca) +
          ace * (1 + this.caace * ca)) +
      na +
      k +
      pairs +
      this.chloride;
    const doubly = inv4 * (ca + hpo4 + co3) + mg;
    const triply = inv9 * po4;
    const neutral =
      po4 * h * (this.h3po4 * hh + this.cahpo4 * ca) +
      this.hf * h * f +
      co3 * ((this.co2 * hh) / this.waterActivity + this.caco3 * ca) +
      h * (this.hlac * lac + this.hace * ace) +
      (this.magnesium - mg);
    this.nextStrength = (singly + 4 * doubly + 9 * triply) / 2;
    this.nextWater = 1 - this.waterPerMolal * (singly + doubly + triply + neutral);
  }

  private cations(): number {
    const { inv1, inv4, proton: h, ca, po4 } = this;
    const pairsOfCalcium =
      (this.caoh * this.waterActivity) / h +
      this.cah2po4 * h * h * po4 +
      this.cahco3 * h * this.co3 +
      this.caf * this.f +
      this.calac * this.lac +
      this.caace * this.ace;
    return inv1 * (h + ca * pairsOfCalcium + this.na + this.k) + 2 * inv4 * (ca + this.mg);
  }

  private anions(): number {
    const { inv1, inv4, inv9, proton: h, po4, f, co3 } = this;
    const phosphates = po4 * (this.h2po4 * h * h + this.capo4 * this.ca);
    const singly = (this.kw * this.waterActivity) / h + phosphates + f * (1 + this.hf2 * h * f) + this.hco3 * h * co3 + this.lac + this.ace;
    const pairs = this.withPairs ? (this.bNa * this.na + this.bK * this.k) * po4 : 0;
    return inv1 * singly + pairs + this.chloride + 2 * inv4 * (this.hpo4 * h * po4 + co3) + 3 * inv9 * po4;
  }
}
