import type { FluidCriticalPh } from './fluidCriticalPh.ts';

/**
 * "5.3 for typical saliva (not measured here; 5.1 to 5.5 as people vary)". Nothing is called the person's own unless it was measured.
 * @param name  of the fluid, inside a sentence
 */
export function sayCriticalPh({ pH, range, basis }: FluidCriticalPh, name: string): string {
  if (pH === null) return `no critical pH for this ${name} between 2 and 12`;
  const spread = range === null ? '' : `${pH1(range.low)} to ${pH1(range.high)}`;
  if (basis === 'measured') return `${pH1(pH)} from the calcium and phosphate measured in ${name}`;
  if (basis === 'partly') return `${pH1(pH)} for ${name} (measured in part${spread && `; ${spread} with the rest as people vary`})`;
  return `${pH1(pH)} for typical ${name} (not measured here${spread && `; ${spread} as people vary`})`;
}

const pH1 = (pH: number): string => pH.toFixed(1);
