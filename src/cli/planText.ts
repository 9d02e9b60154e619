import type { Proposal } from '../calculators/regimen/proposalOutput.ts';
import type { VisitWords } from './visitText.ts';

type Regimen = Proposal['regimens'][number];
type Day = Regimen['dayClock']['now'];

/** Regimens as a page to read: each with its day, then what is left out and what cannot hold together. */
export function planText({ needs, regimens, chosen, excluded, conflict }: Proposal, { needLabel }: VisitWords): string {
  const blocks = [
    ['NEEDS', ...needs.map((n) => `- ${needLabel(n.kind)}${n.state === 'undecided' ? ' (undecided)' : ''}: ${n.because}`)],
    ...regimens.map((one, i) => sayRegimen(one, i + 1, regimens.length > 1 && one.id === chosen, needLabel)),
    ...(regimens.some(({ lines }) => lines.length > 0) ? [] : [['Nothing is proposed.']]),
    ...(excluded.length === 0 ? [] : [['NOT OFFERED', ...excluded.map(sayExcluded)]]),
    ...(conflict === null
      ? []
      : [
          [
            'WHAT CANNOT HOLD TOGETHER',
            `Needs in it: ${conflict.needs.map((kind) => needLabel(kind).toLowerCase()).join(', ')}.`,
            ...conflict.constraints.map(({ says }) => `- ${says}`),
          ],
        ]),
    ['A professional decides. Nothing is released by being here.'],
  ];
  return blocks.map((lines) => lines.join('\n')).join('\n\n');
}

function sayRegimen(one: Regimen, place: number, isTaken: boolean, needLabel: (kind: string) => string): readonly string[] {
  const nameOf = (id: string) => one.lines.find(({ shelfItemId }) => shelfItemId === id)?.name ?? id;
  const { basis, day, now, onceSigned, notTimed } = one.dayClock;
  const whose = basis === 'told' && day !== null ? `${day}, of the days that were told` : WHOSE[basis];
  return [
    `REGIMEN ${place}${isTaken ? ', the one in the plan' : ''}: ${one.tasksPerDay} ${one.tasksPerDay === 1 ? 'task' : 'tasks'} a day, ${sayCost(one)}`,
    ...one.why,
    ...one.lines.flatMap(sayLine),
    ...one.unmet.map(({ need, because }) => `- nothing for ${needLabel(need).toLowerCase()}: ${because}`),
    one.fluoride.sentence,
    ...(one.refillOn === null ? [] : [`First refill: ${one.refillOn}.`]),
    ...sayDay(`Today (${whose})`, now, nameOf),
    ...(onceSigned === null ? [] : sayDay('Once all that waits is signed', onceSigned, nameOf)),
    ...notTimed.map(({ shelfItemId, because }) => `  at no fixed time: ${nameOf(shelfItemId)}, ${because}`),
  ];
}

const WHOSE = {
  told: 'the day that was told',
  named: 'usual times of the rhythm that was named',
  usual: 'a usual day of this age; how the days run is not known',
} as const;

const sayCost = ({ monthlyCostCents }: Regimen): string =>
  monthlyCostCents === null ? 'cost a month not known' : `${(monthlyCostCents / 100).toFixed(2)} a month`;

function sayLine({ name, amount, atVisit, timesPerDay, state, because, warnings }: Regimen['lines'][number]): readonly string[] {
  const often = atVisit ? 'at the visit' : `${Number(timesPerDay.toFixed(2))} times a day`;
  const waits = state === 'waiting-for-signature' ? '; WAITS FOR A SIGNATURE' : state === 'signed' ? '; signed' : '';
  return [
    `- ${name}: ${amount.replace(/\.$/, '')}, ${often}${waits}`,
    ...because.map((why) => `    ${why}`),
    ...warnings.map((text) => `    Note: ${text}`),
  ];
}

function sayDay(title: string, { uses, notPlaced }: Day, nameOf: (id: string) => string): readonly string[] {
  if (uses.length + notPlaced.length === 0) return [`${title}: nothing at home.`];
  return [
    `${title}:`,
    ...uses.map(({ shelfItemId, minute, nothingUntil, after }) => {
      const wait = nothingUntil === null ? '' : `; nothing by mouth until ${clock(nothingUntil)}`;
      return `  ${clock(minute)}  ${nameOf(shelfItemId)}${after === null ? '' : `, after ${after}`}${wait}`;
    }),
    ...notPlaced.map(({ shelfItemId, times, because }) => `  no time for ${nameOf(shelfItemId)} (${times}): ${because}`),
  ];
}

function sayExcluded({ name, level, because }: Proposal['excluded'][number]): string {
  return `- ${name}: ${level === 'ask-first' ? 'ask first' : 'not offered'}, because ${because}`;
}

function clock(minute: number): string {
  return `${String(Math.floor(minute / 60)).padStart(2, '0')}:${String(minute % 60).padStart(2, '0')}`;
}
