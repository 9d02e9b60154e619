/** What drives the flow of saliva at one moment. */
export interface FlowDrive {
  /** Without taste: resting, sleeping, or what chewing gives. mL/min. */
  readonly baseMlPerMin: number;
  /** Resting or sleeping flow that the taste adds to, mL/min. */
  readonly untastedMlPerMin: number;
  /** What one mmol/L of sugar (the unit of the concentration handed in) adds, mL/min. */
  readonly perMmolPerL: number;
  readonly highestMlPerMin: number;
}

/**
 * Flow of whole saliva. It rises in proportion to the sugar tasted, up to a limit; chewing counts where it gives more than the taste.
 * That the taste wears off, and the delay of some seconds, are left out: both change clearance little.
 * @param concentrationMmolPerL  sugar in saliva, 0 or more
 * @returns mL/min
 * @source watanabeDawes1988; lagerlofDawes1984
 */
export function salivaFlow(drive: FlowDrive, concentrationMmolPerL: number): number {
  const tasted = Math.min(drive.highestMlPerMin, drive.untastedMlPerMin + drive.perMmolPerL * concentrationMmolPerL);
  return Math.max(drive.baseMlPerMin, tasted);
}
