import { type AgedUse, amountAtAge, findPasteAmount } from './amountAtAge.ts';
import type { Bar, ItemCheck } from './checkItem.ts';
import { checkTogether } from './checkTogether.ts';
import { findPassedLimit } from './fluorideIntake.ts';
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
  /** Packs chosen in the place of others, and those others: the first go before the rest of their rank, the second after it. */
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

/**
 * Packs in stock that no rule keeps out and that meet a need, best first: chosen in the place of another, without a check to record, in the tier that the list of care
 * names, with the strength for the age, fewest daily tasks, lowest price, then by id.
 */
export function rankCandidates(need: Need, candidates: readonly Candidate[], view: CandidateView): readonly Candidate[] {
  const tierOf = (c: Candidate) => need.agentIds?.findIndex((tier) => tier.includes(c.item.agentId)) ?? 0;
  return candidates
    .filter((c) => c.meets.includes(need.kind) && tierOf(c) >= 0 && c.state !== 'signed')
    .filter(({ item }) => !view.refused.some((r) => r.shelfItemId === item.id))
    .filter(({ item, check }) => item.inStock && !check.agent?.byChoiceOnly && unliftedBars(check, view.signatures).length === 0)
    .map((c) => ({
      c,
      rank: [
        choiceRank(c, view),
        Number(c.check.cautions.length > 0),
        tierOf(c),
        strengthMiss(c, view),
        tasks(c),
        c.item.priceCents ?? Number.MAX_SAFE_INTEGER,
      ],
    }))
    .sort((a, b) => compareRanks(a.rank, b.rank) || a.c.item.id.localeCompare(b.c.item.id, 'en'))
    .map(({ c }) => c);
}

/** What was chosen at the chair goes first and what it replaces last; every rule still holds for both. */
function choiceRank({ item }: Candidate, { instead = {} }: CandidateView): number {
  if (Object.values(instead).includes(item.id) && !Object.hasOwn(instead, item.id)) return -1;
  return Object.hasOwn(instead, item.id) ? 1 : 0;
}

/** A paste that takes the place of the ordinary one adds no task. */
const tasks = ({ use, meets }: Candidate): number =>
  use.atVisit === true || (meets.includes('fluoride-base') && meets.includes('fluoride-extra')) ? 0 : use.timesPerDay;

function strengthMiss({ item, meets }: Candidate, { facts, tables }: CandidateView): number {
  const ppm = itemPpm(item);
  const preferred = meets.includes('fluoride-extra') ? undefined : findPasteAmount(item, facts.ageYears, tables)?.preferredPpm;
  return preferred === undefined || ppm === undefined || (ppm >= preferred[0] && ppm <= preferred[1]) ? 0 : 1;
}

function compareRanks(a: readonly number[], b: readonly number[]): number {
  const i = a.findIndex((value, k) => value !== b[k]);
  return i < 0 ? 0 : (a[i] ?? 0) - (b[i] ?? 0);
}

/**
 * Why a candidate cannot stand beside these lines: a pair that must never be in one plan, or fluoride above an upper level.
 * @param strictness  'any': every interaction that is more than a remark counts
 */
export function findConflict(
  candidate: Candidate,
  lines: readonly Candidate[],
  { facts, signed, tables }: Pick<CandidateView, 'facts' | 'signed' | 'tables'>,
  strictness: 'never-both' | 'any' = 'never-both',
): Bar | undefined {
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
  const passed = findPassedLimit(planFluoride([...lines, candidate], facts, tables).intake);
  if (!passed || !candidate.holdsFluoride) return undefined;
  const bar = planRuleBar({ item: candidate.item, tables }, 'P10', 'stop');
  const mine = new Map([[candidate.item.id, signed.filter((s) => s.shelfItemId === candidate.item.id)]]);
  if (findOverride(mine, bar)) return undefined;
  const unit = passed.unit === 'mg/day' ? 'mg' : 'mg/kg';
  const sum = `at least ${Number(passed.mg.toPrecision(2))} ${unit} a day with it, above ${passed.value} ${unit} (${passed.name})`;
  return { ...bar, because: `${bar.because}: ${sum}`, source: passed.source };
}
