import type { AnswerValue } from '../visit/answer.ts';
import type { Items, Level } from './types.ts';

/** What a measured flow would fill, by what it turns out to be. */
export const FLOW_MEASURED = {
  low: { saliva_flow_reduced_measured: true, saliva_visually_inadequate: true, saliva_normal: false },
  normal: { saliva_flow_reduced_measured: false, saliva_visually_inadequate: false, saliva_normal: true },
} as const satisfies Readonly<Record<string, Items>>;

const FLOW_QUESTIONS = ['resting_flow', 'stimulated_flow'];

/** The level of the practice's list for either outcome of measuring; undefined where no list speaks, or a disease item is open. */
export type LevelByFlow = Readonly<Record<keyof typeof FLOW_MEASURED, Level>>;

/**
 * What is settled and what is not where the salivary glands do not work, or may not: nothing about the level rests on a guess at the flow.
 * @param known  answers that count today, for the measured flows
 */
export function sayGlands({
  known,
  items,
  levelByFlow,
}: {
  readonly known: Readonly<Record<string, AnswerValue>>;
  readonly items: Items;
  readonly levelByFlow: LevelByFlow | undefined;
}): string {
  const isMeasured = FLOW_QUESTIONS.some((id) => known[id] !== undefined);
  const isLow = items['saliva_flow_reduced_measured'] === true || items['saliva_visually_inadequate'] === true;
  if (isMeasured) return `Gland function lost or at risk: saliva was measured, and is ${isLow ? 'low' : 'not low today'}.`;
  if (isLow) {
    return 'Gland function lost or at risk: saliva is clearly too little on looking. Measure it for comparison; the level does not wait for it.';
  }
  return `Gland function lost or at risk: measure saliva first. Settled without it: care for a dry mouth. ${sayOpen(levelByFlow)}`;
}

function sayOpen(levels: LevelByFlow | undefined): string {
  if (!levels) return 'Not settled: the level.';
  if (levels.low === levels.normal) return `Settled too, on what else is known: level ${levels.low}, whatever is measured.`;
  return `Not settled: the level, on what else is known ${levels.low} if saliva is measured low, ${levels.normal} if normal.`;
}
