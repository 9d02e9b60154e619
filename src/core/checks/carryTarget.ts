import type { PairComparison } from '../meter/comparePairs.ts';
import type { ControlTarget } from './control.ts';

/**
 * What the controls of a new lot are held against until it has enough of its own: the old lot's target, moved by the ratio of the
 * comparison between the two, with the old lot's spread.
 * @returns undefined where the pairs were too few to say: the ratio may then lie anywhere, and the new lot's own first controls make it
 */
export function carryTarget(
  old: ControlTarget,
  newLotId: string,
  { ratio, pairs, verdict }: Pick<PairComparison, 'ratio' | 'pairs' | 'verdict'>,
): ControlTarget | undefined {
  if (verdict === 'too-few') return undefined;
  return { lotId: newLotId, meanLn: old.meanLn + Math.log(ratio.estimate), sdLn: old.sdLn, count: pairs, from: 'comparison' };
}
