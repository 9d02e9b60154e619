import type { NeedKind, PlanLine, Regimen, Supply } from '../../../core/regimen/types.ts';
import type { VisitInput } from '../../../core/visit/types.ts';
import { capitalise, formatDate, formatMoney, joinWords, plural, uncapitalise } from '../../format.ts';

type Agreed = VisitInput['visit']['agreed'];

export interface SaidPart {
  readonly says: string;
  /** Something in it is not known. */
  readonly isUnknown?: boolean;
}

interface SayPlace {
  readonly place: Parameters<typeof formatMoney>[1];
  /** Needs that are undecided are said elsewhere, and are not what a regimen leaves open. */
  readonly undecided: readonly NeedKind[];
}

/** Tasks, cost, refill, what stays open, and why it is there: each a sentence. */
export function sayRegimen(regimen: Regimen, { place, undecided }: SayPlace): readonly SaidPart[] {
  const { supply, refillOn, unmet, why } = regimen;
  const open = unmet.filter(({ need }) => !undecided.includes(need)).map(({ need }) => sayNeed(need));
  const unknown = supply.filter(({ days }) => days === null).length;
  return [
    ...sayEffort(regimen, place),
    ...(refillOn === null ? [] : [{ says: `First refill ${formatDate(refillOn)}.` }]),
    ...(unknown === 0 ? [] : [{ says: `How long ${plural(unknown, 'pack')} will last is not known.`, isUnknown: true }]),
    { says: open.length === 0 ? 'Leaves no need open.' : `Leaves open: ${joinWords(open)}.` },
    ...why.map((says) => ({ says })),
  ];
}

/** Tasks and cost are of what may be used now; what waits is said to be left out of them. */
function sayEffort({ lines, tasksPerDay, monthlyCostCents }: Regimen, place: SayPlace['place']): readonly SaidPart[] {
  const waits = lines.some((l) => l.state === 'waiting-for-signature' && l.use.atVisit !== true);
  const without = waits ? ', without what waits for a signature' : '';
  const tasks = `${plural(tasksPerDay, 'task')} a day at home`;
  if (monthlyCostCents === null) return [{ says: `${tasks}${without}.` }, { says: 'Cost a month: price not known.', isUnknown: true }];
  return [{ says: `${tasks}, about ${formatMoney(monthlyCostCents, place)} a month${without}.` }];
}

/** What one regimen uses that the plan does not, and the other way round. */
export function sayDifference(regimen: Regimen, plan: Regimen): string {
  const namesOf = (a: Regimen, b: Regimen) =>
    a.lines.filter((line) => !b.lines.some(({ shelfItemId }) => shelfItemId === line.shelfItemId)).map(({ name }) => uncapitalise(name));
  const added = namesOf(regimen, plan);
  const left = namesOf(plan, regimen);
  if (added.length === 0) return `The plan without ${joinWords(left)}.`;
  if (left.length === 0) return `The plan, and ${joinWords(added)}.`;
  return `${capitalise(joinWords(added))} in the place of ${joinWords(left)}; the rest as in the plan.`;
}

/** "one pack lasts 50 days, until 14 January 2027" */
export function saySupply({ days, refillOn }: Supply): string {
  if (days === null) return 'how long a pack lasts is not known';
  return `one pack lasts ${plural(days, 'day')}${refillOn === null ? '' : `, until ${formatDate(refillOn)}`}`;
}

/** What is signed or agreed and would leave the plan. A signature stays on the record, but is then for nothing in the plan. */
export function sayLeftOut(from: readonly PlanLine[], to: readonly PlanLine[], agreed: Agreed): string | undefined {
  const left = from.filter((line) => !to.some(({ shelfItemId }) => shelfItemId === line.shelfItemId));
  const said = left.flatMap((line) => {
    if (line.state === 'signed') return [`${line.name}, which is signed`];
    return agreed?.items?.[line.shelfItemId] === 'agreed' ? [`${line.name}, which was agreed today`] : [];
  });
  return said.length === 0 ? undefined : `Taking this leaves out ${joinWords(said)}.`;
}

export const sayNeed = (need: string): string => need.replaceAll('-', ' ');
