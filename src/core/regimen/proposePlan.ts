import type { MouthDecision } from '../visit/types.ts';
import { buildLine } from './buildLine.ts';
import type { Candidate } from './candidates.ts';
import { explainUnmet } from './choice/explainUnmet.ts';
import { indexOfChosen, regimenOf } from './choice/regimenOf.ts';
import { sayWhys } from './choice/sayWhy.ts';
import { swapsOf } from './choice/swapsOf.ts';
import { supplementAdvice } from './dose/supplementAdvice.ts';
import { type Draft, type DraftView, draftPlans, viewOf } from './draftPlan.ts';
import { findRecall } from './intervals.ts';
import { listAdvice } from './listAdvice.ts';
import { listCautions } from './listCautions.ts';
import { listNotOffered } from './listNotOffered.ts';
import { listByProtocol } from './local/listByProtocol.ts';
import { mayLimitFood } from './mayLimitFood.ts';
import { type LastBitewings, planBitewings } from './planBitewings.ts';
import { findSignature } from './signatures.ts';
import type { PlanSettings, RegimenTables } from './tables.ts';
import type { ConfirmedLevel, DroppedCare, Need, PersonFacts, Plan, RefusedItem, ShelfItem, SignedItem } from './types.ts';

export interface ProposePlanInput {
  readonly facts: PersonFacts;
  readonly needs: readonly Need[];
  readonly shelf: readonly ShelfItem[];
  /** Signatures of this visit, each given by a member with that right. */
  readonly signed: readonly SignedItem[];
  /** What a member with that right did not release at this visit. */
  readonly refused?: readonly RefusedItem[] | undefined;
  readonly confirmed?: ConfirmedLevel | undefined;
  readonly mouth?: Pick<MouthDecision, 'kind' | 'reasons'> | undefined;
  /** Appliances noted today; with the conditions they choose the advice. */
  readonly appliances?: readonly string[] | undefined;
  readonly lastBitewings?: LastBitewings | undefined;
  /** ISO local date of the visit. */
  readonly onDate?: string | undefined;
  readonly settings: PlanSettings;
  readonly tables: RegimenTables;
  /** Which pack was taken in the place of which, by id. A pack that a rule keeps out is not taken. */
  readonly instead?: Readonly<Record<string, string>> | undefined;
  /** Id of the regimen that was taken at the chair; the best one where it is absent or not among those found. */
  readonly chosenRegimen?: string | undefined;
  /** What was stopped or turned down before, and why: it comes after what was not. */
  readonly history?: readonly DroppedCare[] | undefined;
}

/**
 * A plan from the practice's own shelf: the best regimens of packs in stock that no rule keeps out, by needs met, then fit, then tasks, cost
 * and count in the practice's order; the first is the plan unless another was taken. What a rule keeps out, or must ask about first, is named with the reason. Whatever needs a signature
 * waits for it. The reading reaches this plan only through the antimicrobial need, which is met last, by a pack that anyone may give and
 * that has no interaction with the rest: so it can start, stop or change nothing that needs a signature.
 * @param input.signed  relied on as given by members with the right; a blank name, or a lifted rule without a reason, counts for nothing
 * @returns the same plan for the same input; nothing in it is released by being in it
 */
export function proposePlan(input: ProposePlanInput): Plan {
  const { facts, confirmed, tables } = input;
  const view = viewOf(input);
  const drafts = draftPlans(view);
  const chosen = indexOfChosen(drafts, input.chosenRegimen);
  const draft = drafts[chosen] ?? drafts[0];
  const { lines } = draft;
  const whys = sayWhys(drafts);
  const regimens = drafts.map((d, i) => regimenOf(d, view, input.onDate, whys[i] ?? []));
  const regimen = regimens[chosen] ?? regimenOf(draft, view, input.onDate, []);
  const diet = mayLimitFood(facts, tables);
  const supplements = supplementAdvice({ facts, level: confirmed?.level, settings: input.settings, tables });
  return {
    lines: regimen.lines,
    alternatives: alternativesOf(draft, view),
    notOffered: listNotOffered(draft, view),
    refused: nameRefused(
      view.refused.filter((r) => !findSignature(view.signatures, r.shelfItemId)),
      input.shelf,
    ),
    unmet: regimen.unmet,
    fluoride: regimen.fluoride,
    fluorideSentence: regimen.fluorideSentence,
    recall: confirmed ? findRecall(confirmed, facts.ageYears, tables.recall) : null,
    ...planBitewings(input),
    tasksPerDay: regimen.tasksPerDay,
    monthlyCostCents: regimen.monthlyCostCents,
    cautions: listCautions(
      lines.map((l) => l.item),
      facts.ageYears,
      tables.cautions,
    ),
    diet,
    advice: listAdvice({
      reasons: input.mouth?.reasons ?? [],
      ageYears: facts.ageYears,
      noted: [...(input.appliances ?? []), ...(facts.conditions ?? [])],
      diet,
      table: tables.advice,
    }),
    regimens,
    chosenRegimen: regimen.id,
    conflict: explainUnmet(drafts[0], view),
    ...(supplements && { supplements }),
    swaps: swapsOf(lines, view, input.history ?? []),
    byProtocol: listByProtocol(view),
    droppedBefore: nameDropped(input.history ?? [], input.shelf),
  };
}

function alternativesOf({ lines, alternatives }: Draft, view: DraftView): Plan['alternatives'] {
  const without = (id: string): readonly Candidate[] => lines.filter((l) => l.item.id !== id);
  return alternatives.map(({ insteadOf, candidate }) => ({ insteadOf, line: buildLine(candidate, without(insteadOf), view) }));
}

export function nameRefused(refused: readonly RefusedItem[], shelf: readonly ShelfItem[]): NonNullable<Plan['refused']> {
  return refused.map((r) => ({ ...r, name: shelf.find((item) => item.id === r.shelfItemId)?.name ?? r.shelfItemId }));
}

function nameDropped(history: readonly DroppedCare[], shelf: readonly ShelfItem[]): NonNullable<Plan['droppedBefore']> {
  return history.flatMap((dropped) => {
    const item = shelf.find(({ id }) => id === dropped.shelfItemId);
    return item ? [{ ...dropped, name: item.name }] : [];
  });
}
