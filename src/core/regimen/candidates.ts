import { keepByTable } from '../keep/keepByTable.ts';
import { type AgedUse, amountAtAge, findPasteAmount } from './amountAtAge.ts';
import type { Bar, ItemCheck } from './checkItem.ts';
import { checkTogether } from './checkTogether.ts';
import { findPassedLimit, type PassedLimit } from './fluorideIntake.ts';
import { itemPpm } from './itemTraits.ts';
import { planFluoride } from './planFluoride.ts';
import { planRuleBar } from './planRuleHits.ts';
import { findOverride, findSignature, type Signatures, unliftedBars } from './signatures.ts';
import type { PlanSettings, RegimenTables } from './tables.ts';
import type { Need, NeedKind, PersonFacts, PlanLine, RefusedItem, ShelfItem, SignedItem } from './types.ts';

/** A pack that could stand in a plan. */
export interface Candidate extends AgedUse {
  readonly item: ShelfItem;
  readonly check: ItemCheck;
  readonly state: PlanLine['state'];
  readonly meets: readonly NeedKind[];
  readonly holdsFluoride: boolean;
  readonly chosenFor?: NeedKind | undefined;
}

export interface CandidateView {
  readonly facts: PersonFacts;
  readonly settings: PlanSettings;
  readonly signed: readonly SignedItem[];
  /** What nobody proposes again at this visit. */
  readonly refused: readonly RefusedItem[];
  readonly signatures: Signatures;
  readonly tables: RegimenTables;
  /** Stopped or turned down before. */
  readonly dropped: ReadonlySet<string>;
  /** Packs chosen in the place of others, and those others: the first are taken where nothing keeps them out, the second come last. */
  readonly instead?: Readonly<Record<string, string>> | undefined;
}

/** The pack with its use at this age, and whether it is signed, waits, or needs no signature. */
export function toCandidate(check: ItemCheck, { facts, settings, signatures, tables }: CandidateView): Candidate {
  const { item, agent, release, cautions, stops } = check;
  const needsSignature = release !== 'anyone' || cautions.length > 0 || stops.length > 0;
  const isSigned = needsSignature && findSignature(signatures, item.id) !== undefined;
  return {
    ...amountAtAge(item, facts, settings.jurisdiction, tables),
    item,
    check,
    state: isSigned ? 'signed' : needsSignature ? 'waiting-for-signature' : 'proposed',
    meets: item.meets.filter((kind) => agent?.meets.includes(kind)),
    holdsFluoride: agent?.ppmRange !== undefined || (itemPpm(item) ?? 0) > 0,
  };
}

/** In stock, in sight of every rule, not refused and not signed: what a plan may take by itself. */
export function mayBeTaken({ item, check, state }: Candidate, { refused, signatures }: CandidateView): boolean {
  if (state === 'signed' || !item.inStock || check.agent?.byChoiceOnly) return false;
  return !refused.some((r) => r.shelfItemId === item.id) && unliftedBars(check, signatures).length === 0;
}

/** Place of the pack's agent among those that the list of care names for a need, first choice 0; below 0 where it is not named. */
export const tierOf = ({ item }: Candidate, { agentIds }: Need): number => agentIds?.findIndex((tier) => tier.includes(item.agentId)) ?? 0;

export const serves = (candidate: Candidate, need: Need): boolean => candidate.meets.includes(need.kind) && tierOf(candidate, need) >= 0;

/** 1 where the strength is not the one for the age. */
export function strengthMiss({ item, meets }: Candidate, { facts, tables }: CandidateView): number {
  const ppm = itemPpm(item);
  const preferred = meets.includes('fluoride-extra') ? undefined : findPasteAmount(item, facts.ageYears, tables)?.preferredPpm;
  return preferred === undefined || ppm === undefined || (ppm >= preferred[0] && ppm <= preferred[1]) ? 0 : 1;
}

/**
 * Why a candidate cannot stand beside these lines: a pair that must never be in one plan, or fluoride above an upper level.
 * @param strictness  'any': every interaction that is more than a remark counts
 */
export function findConflict(
  candidate: Candidate,
  lines: readonly Candidate[],
  view: Pick<CandidateView, 'facts' | 'signed' | 'tables'>,
  strictness: 'never-both' | 'any' = 'never-both',
): Bar | undefined {
  const { signed, tables } = view;
  for (const line of lines) {
    const meeting = checkTogether(candidate.item, line.item, tables.interactions).find(
      (m) => strictness === 'any' || m.verdict === 'never-both',
    );
    if (!meeting) continue;
    const { id, because, action, source } = meeting.interaction;
    const clause = `${because} (${line.item.name})`;
    return {
      shelfItemId: candidate.item.id,
      ruleId: id,
      level: 'stop',
      because: clause,
      action,
      private: false,
      source,
      overridable: false,
    };
  }
  if (!candidate.holdsFluoride) return undefined;
  const passed = findPassed([...lines, candidate], view);
  if (!passed) return undefined;
  const bar = planRuleBar({ item: candidate.item, tables }, 'P10', 'stop');
  const mine = new Map([[candidate.item.id, signed.filter((s) => s.shelfItemId === candidate.item.id)]]);
  if (findOverride(mine, bar)) return undefined;
  const unit = passed.unit === 'mg/day' ? 'mg' : 'mg/kg';
  const sum = `at least ${Number(passed.mg.toPrecision(2))} ${unit} a day with it, above ${passed.value} ${unit} (${passed.name})`;
  return { ...bar, because: `${bar.because}: ${sum}`, source: passed.source };
}

type FluorideView = Pick<CandidateView, 'facts' | 'tables'>;

/** The same packs meet again and again while one plan is made; in one view a pack has one use and one state. */
const passedIn = keepByTable((_: FluorideView) => new Map<string, { readonly limit: PassedLimit | undefined }>());

function findPassed(uses: readonly Candidate[], view: FluorideView): PassedLimit | undefined {
  const kept = passedIn(view);
  const counted = uses.filter(({ item, holdsFluoride }) => holdsFluoride || item.agentId.startsWith('F_'));
  const key = JSON.stringify(counted.map(({ item }) => item.id).sort());
  const known = kept.get(key) ?? { limit: findPassedLimit(planFluoride(counted, view.facts, view.tables).intake) };
  kept.set(key, known);
  return known.limit;
}
