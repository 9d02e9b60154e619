import type { NeedKind, PlanLine, Regimen, Supply } from '../../../core/regimen/types.ts';
import type { VisitInput } from '../../../core/visit/types.ts';
import { formatDate, formatMoney, joinWords, plural } from '../../format.ts';

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
  const { lines, tasksPerDay, unmet, why } = regimen;
  const open = unmet.filter(({ need }) => !undecided.includes(need)).map(({ need }) => sayNeed(need));
  const waits = lines.some((l) => l.state === 'waiting-for-signature' && l.use.atVisit !== true);
  return [
    { says: `${plural(tasksPerDay, 'task')} a day at home${waits ? ', not counting what waits for a signature' : ''}.` },
    sayCost(regimen, place),
    ...sayRefill(regimen),
    { says: open.length === 0 ? 'Leaves no need open.' : `Leaves open: ${joinWords(open)}.` },
    ...why.map((says) => ({ says })),
  ];
}

function sayCost({ monthlyCostCents }: Regimen, place: SayPlace['place']): SaidPart {
  if (monthlyCostCents === null) return { says: 'Cost a month: price not known.', isUnknown: true };
  return { says: `About ${formatMoney(monthlyCostCents, place)} a month.` };
}

function sayRefill({ refillOn, supply, lines }: Regimen): readonly SaidPart[] {
  const first = supply.find((pack) => pack.refillOn === refillOn && refillOn !== null);
  const name = lines.find((l) => l.shelfItemId === first?.shelfItemId)?.name;
  const unknown = supply.filter(({ days }) => days === null).length;
  return [
    ...(refillOn === null ? [] : [{ says: `First refill ${formatDate(refillOn)}${name === undefined ? '' : `: ${name}`}.` }]),
    ...(unknown === 0 ? [] : [{ says: `How long ${plural(unknown, 'pack')} will last is not known.`, isUnknown: true }]),
  ];
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
