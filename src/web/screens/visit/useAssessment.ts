import { useCallback, useEffect, useMemo, useState } from 'react';
import { flushSync } from 'react-dom';
import type { VisitSteps } from '../../../core/visit/assessVisit.ts';
import type { VisitAssessment, VisitInput } from '../../../core/visit/types.ts';
import { assessStepwise } from '../../content.ts';
import { afterPaint } from './afterPaint.ts';
import { mayPlanFollow } from './mayPlanFollow.ts';

export interface VisitAssessed {
  /** With the plan of the answers before while `isPlanDue`; everything else is of the present ones. */
  readonly assessment: VisitAssessment;
  readonly isPlanDue: boolean;
  /** The plan is due, and the last one took so long that its absence is noticed. */
  readonly isPlanSlow: boolean;
  /** All of it, of the present answers: what a key that acts on the plan goes by. */
  readonly whole: () => VisitAssessment;
  /** Draws the plan that is due, before anything is chosen from it. */
  readonly settlePlan: () => void;
}

interface Settled {
  readonly input: VisitInput;
  readonly steps: VisitSteps;
  readonly tookMs: number;
}

const NOTICED_MS = 150;

/**
 * The assessment of a visit, made anew after every change. Where an answer changes a plan that stands, the answer, the reading and the
 * level are drawn first, and the plan right after.
 * @param stored  what was stored when the visit was closed: then nothing is assessed
 * @param words   another number whenever the words of a language have come
 */
export function useAssessment(input: VisitInput, stored: VisitAssessment | null | undefined, words: number): VisitAssessed {
  // biome-ignore lint/correctness/useExhaustiveDependencies: with the words of another language the leaflet says other words
  const steps = useMemo((): VisitSteps => {
    return stored ? { beforePlan: () => stored, whole: () => stored } : assessStepwise(input);
  }, [stored, input, words]);
  const [settled, setSettled] = useState<Settled>({ input, steps, tookMs: 0 });
  const isPlanDue = settled.steps !== steps && mayPlanFollow(settled.input, input) && settled.steps.whole().plan.lines.length > 0;
  if (!isPlanDue && settled.steps !== steps) setSettled({ ...settled, input, steps });

  const settle = useCallback(() => {
    const began = performance.now();
    try {
      steps.whole();
    } finally {
      // What fails, fails again while the page is drawn, and is said there.
      setSettled({ input, steps, tookMs: performance.now() - began });
    }
  }, [input, steps]);
  useEffect(() => (isPlanDue ? afterPaint(settle) : undefined), [isPlanDue, settle]);

  const assessment = useMemo(
    () => (isPlanDue ? { ...settled.steps.whole(), ...steps.beforePlan() } : steps.whole()),
    [isPlanDue, settled.steps, steps],
  );
  return {
    assessment,
    isPlanDue,
    isPlanSlow: isPlanDue && settled.tookMs > NOTICED_MS,
    whole: steps.whole,
    settlePlan: () => isPlanDue && flushSync(settle),
  };
}
