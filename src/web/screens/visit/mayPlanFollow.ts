import type { VisitInput } from '../../../core/visit/types.ts';

/** What is asked, seen and measured. */
const ANSWERED: ReadonlySet<string> = new Set(['answers', 'findings', 'allExamined', 'reading', 'meterId']);

/**
 * Whether the plan of one may stand for a moment beside the other: nothing but answers, findings or the reading differs. A level, a
 * signature or a choice in the plan is about the plan itself, which is then drawn with it.
 */
export function mayPlanFollow(planned: VisitInput, present: VisitInput): boolean {
  if (planned.practice !== present.practice || planned.person !== present.person) return false;
  const [before, now] = [planned.visit, present.visit].map((visit) => new Map(Object.entries(visit).filter(([key]) => !ANSWERED.has(key))));
  return before !== undefined && before.size === now?.size && [...before].every(([key, value]) => now.get(key) === value);
}
