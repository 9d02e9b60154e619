import { z } from 'zod';
import { stripTimes } from '../../content/dayRhythms.ts';
import { regimenSources } from '../../content/sources-regimen.ts';
import { leafletUses } from '../../content/texts/leafletUses.ts';
import { dayClock } from '../../core/regimen/dayStrip/dayClock.ts';
import type { DayRhythm, DayStrip } from '../../core/regimen/dayStrip/types.ts';
import { sayAmount } from '../../core/regimen/sayDirections.ts';
import type { PlanSettings, RegimenTables } from '../../core/regimen/tables.ts';
import type { Need, Plan, PlanLine, Regimen, ShelfItem } from '../../core/regimen/types.ts';
import type { SourceRef } from '../../core/visit/answer.ts';
import { nullableNumber } from '../fields.ts';
import { source } from './regimenFields.ts';

const minute = z.int().describe('minutes after midnight');
const day = z.strictObject({
  uses: z.array(
    z.strictObject({
      shelfItemId: z.string(),
      minute,
      nothingUntil: minute.nullable().describe('nothing by mouth until then; null where there is no wait, or sleep covers it'),
      after: z.string().nullable().describe('the meal that it follows'),
    }),
  ),
  notPlaced: z.array(z.strictObject({ shelfItemId: z.string(), times: z.int(), because: z.string() })),
});
const unmet = z.array(z.strictObject({ need: z.string(), because: z.string() }));
const regimen = z.strictObject({
  id: z.string().describe('ids of its packs, sorted, joined by +'),
  why: z.array(z.string()),
  lines: z.array(
    z.strictObject({
      shelfItemId: z.string(),
      name: z.string(),
      meets: z.array(z.string()),
      state: z.enum(['proposed', 'waiting-for-signature', 'signed']),
      timesPerDay: z.number(),
      atVisit: z.boolean(),
      amount: z.string(),
      because: z.array(z.string()),
      warnings: z.array(z.string()),
    }),
  ),
  tasksPerDay: z.number(),
  monthlyCostCents: nullableNumber.describe('null while a price, a pack size or an amount is missing; never 0 for that'),
  supply: z.array(z.strictObject({ shelfItemId: z.string(), days: nullableNumber, refillOn: z.string().nullable() })),
  refillOn: z.string().nullable(),
  unmet,
  fluoride: z.strictObject({
    complete: z.boolean(),
    unknownSources: z.array(z.string()),
    mgPerDay: z.number(),
    mgPerKgPerDay: nullableNumber,
    sentence: z.string(),
  }),
  dayClock: z.strictObject({
    basis: z
      .enum(['told', 'named', 'usual'])
      .describe('named: usual times of a rhythm that was named; usual: a day of this age that nobody was asked about, or not of late'),
    day: z.string().nullable().describe('which of several described days; null where one was told, or none'),
    now: day.describe('what may be used today'),
    onceSigned: day.nullable().describe('once all that waits is signed; null where nothing waits'),
    notTimed: z.array(z.strictObject({ shelfItemId: z.string(), because: z.string() })),
  }),
});

export const proposalOutput = z.strictObject({
  needs: z.array(z.strictObject({ kind: z.string(), state: z.enum(['needed', 'undecided']), because: z.string() })),
  regimens: z.array(regimen).describe('best first, five at most, each with another set of agents'),
  chosen: z.string().nullable().describe('id of the one taken at the chair, or of the best'),
  excluded: z.array(
    z.strictObject({
      shelfItemId: z.string(),
      name: z.string(),
      level: z.enum(['stop', 'caution', 'ask-first', 'out-of-stock']),
      ruleId: z.string().nullable(),
      because: z.string(),
      ask: z.array(z.string()).describe('questions to ask first'),
      source: source.nullable(),
    }),
  ),
  conflict: z
    .strictObject({ needs: z.array(z.string()), constraints: z.array(z.strictObject({ id: z.string(), says: z.string() })) })
    .nullable()
    .describe('the smallest set of things that cannot hold together; null where no need stays open because of one'),
});
export type Proposal = z.infer<typeof proposalOutput>;

export interface ProposalInput {
  readonly plan: Plan;
  readonly needs: readonly Need[];
  readonly shelf: readonly ShelfItem[];
  readonly settings: Pick<PlanSettings, 'jurisdiction'>;
  /** As the plan was made with them. */
  readonly tables: Pick<RegimenTables, 'agents' | 'interactions'>;
  readonly rhythm: DayRhythm;
  /** Which day the rhythm is of, where several were described. */
  readonly day?: string | null | undefined;
}

/** A plan as the calculator and `ebbline plan` give it. */
export function toProposal(input: ProposalInput): Proposal {
  const { plan, needs } = input;
  return {
    needs: needs.flatMap(({ kind, state, because }) => (state === 'not-needed' ? [] : [{ kind, state, because }])),
    regimens: (plan.regimens ?? []).map((one) => toRegimen(one, input)),
    chosen: plan.chosenRegimen ?? null,
    excluded: [...ruledOut(input), ...outOfStock(input)],
    conflict: plan.conflict
      ? { needs: [...plan.conflict.needs], constraints: plan.conflict.constraints.map(({ id, says }) => ({ id, says })) }
      : null,
  };
}

function toRegimen(one: Regimen, { shelf, settings, tables, rhythm, day: whichDay = null }: ProposalInput): z.infer<typeof regimen> {
  const planned = one.lines.flatMap(({ shelfItemId, use, state }) => {
    const item = shelf.find(({ id }) => id === shelfItemId);
    return item ? [{ item, use, state }] : [];
  });
  const clock = dayClock({ planned, place: settings.jurisdiction, rhythm, uses: leafletUses, times: stripTimes, tables });
  const { complete, unknownSources, mgPerDay, mgPerKgPerDay } = one.fluoride;
  return {
    id: one.id,
    why: [...one.why],
    lines: one.lines.map(toLine),
    tasksPerDay: one.tasksPerDay,
    monthlyCostCents: one.monthlyCostCents,
    supply: one.supply.map((s) => ({ ...s })),
    refillOn: one.refillOn,
    unmet: one.unmet.map((u) => ({ ...u })),
    fluoride: { complete, unknownSources: [...unknownSources], mgPerDay, mgPerKgPerDay, sentence: one.fluorideSentence },
    dayClock: {
      basis: rhythm.basis,
      day: whichDay,
      now: toDay(clock.now),
      onceSigned: clock.onceSigned && toDay(clock.onceSigned),
      notTimed: clock.notTimed.map((n) => ({ ...n })),
    },
  };
}

const toLine = (line: PlanLine) => {
  const { shelfItemId, name, meets, state, use, because, warnings } = line;
  return {
    shelfItemId,
    name,
    meets: [...meets],
    state,
    timesPerDay: use.timesPerDay,
    atVisit: use.atVisit === true,
    amount: sayAmount(line),
    because: [...because],
    warnings: warnings.map(({ text }) => text),
  };
};

const toDay = ({ placed, notPlaced }: DayStrip): z.infer<typeof day> => ({
  uses: placed.map(({ after, ...use }) => ({ ...use, after: after ?? null })),
  notPlaced: notPlaced.map((n) => ({ ...n })),
});

function ruledOut({ plan, shelf }: ProposalInput): Proposal['excluded'] {
  return plan.notOffered.map(({ shelfItemId, level, ruleId, because, ask, source: from }) => ({
    shelfItemId,
    name: shelf.find(({ id }) => id === shelfItemId)?.name ?? shelfItemId,
    level,
    ruleId,
    because,
    ask: [...(ask ?? [])],
    source: cited(from),
  }));
}

/** What would meet a need if it were there. */
function outOfStock({ shelf, needs, plan }: ProposalInput): Proposal['excluded'] {
  const named = new Set(plan.notOffered.map(({ shelfItemId }) => shelfItemId));
  const isWanted = ({ meets }: ShelfItem) => needs.some(({ kind, state }) => state === 'needed' && meets.includes(kind));
  return shelf
    .filter((item) => !item.inStock && isWanted(item) && !named.has(item.id))
    .map(({ id, name }) => ({
      shelfItemId: id,
      name,
      level: 'out-of-stock',
      ruleId: null,
      because: 'not in stock',
      ask: [],
      source: null,
    }));
}

const cited = ({ key, status, note }: SourceRef): z.infer<typeof source> => ({
  key,
  status,
  ...(note === undefined ? {} : { note }),
  cite: regimenSources[key]?.cite ?? key,
});
