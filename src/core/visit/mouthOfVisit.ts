import type { MeasuredFluids } from '../plaque/day/acidLines.ts';
import type { Mouth, MouthPreset } from '../plaque/types.ts';
import { unknownKindOf } from '../risk/knownAnswers.ts';
import type { Question } from './question.ts';
import type { VisitInput } from './types.ts';

export const USUAL_MOUTH: MouthPreset = 'average';
const FLOW_QUESTION = 'resting_flow';

/** For which mouth the days of a visit are worked out: the named one, with what was measured in this person in place of what is typical. */
export interface MouthOfVisit {
  readonly mouth: Mouth;
  readonly measured: MeasuredFluids;
  /** mL/min; absent = not measured, that of the named mouth is used. */
  readonly restingFlowMlPerMin?: number | undefined;
}

/** @param visit  the flow counts as measured while its answer is known: asked today, or carried and not out of date */
export function mouthOfVisit(
  { acidDay, answers, onDate }: Pick<VisitInput['visit'], 'acidDay' | 'answers' | 'onDate'>,
  presets: Readonly<Record<MouthPreset, Mouth>>,
  questions: readonly Question[],
): MouthOfVisit {
  const { saliva, plaque } = presets[acidDay?.mouth ?? USUAL_MOUTH];
  const measured: MeasuredFluids = acidDay?.saliva ? { saliva: acidDay.saliva } : {};
  const question = questions.find(({ id }) => id === FLOW_QUESTION);
  const answer = answers[FLOW_QUESTION];
  const isKnown = question !== undefined && unknownKindOf(answer, question, onDate) === undefined;
  if (!isKnown || typeof answer?.value !== 'number') return { mouth: { saliva, plaque }, measured };
  const restingFlowMlPerMin = answer.value;
  return { mouth: { saliva: { ...saliva, restingFlowMlPerMin }, plaque }, measured, restingFlowMlPerMin };
}
