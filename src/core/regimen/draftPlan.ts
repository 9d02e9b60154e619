import { type Candidate, type CandidateView, findConflict, rankCandidates, toCandidate } from './candidates.ts';
import { type Bar, checkItem, type ItemCheck } from './checkItem.ts';
import type { ProposePlanInput } from './proposePlan.ts';
import { unliftedBars } from './signatures.ts';
import type { Need, NeedKind } from './types.ts';

/** What a plan is made from: the input, with every pack of the shelf checked once. */
export interface DraftView extends CandidateView {
  readonly needs: readonly Need[];
  readonly checks: readonly ItemCheck[];
  /** One for each check, in the order of the shelf. */
  readonly candidates: readonly Candidate[];
}

/** Chosen packs, what could stand in their place, and what was kept out while choosing. */
export interface Draft {
  readonly lines: readonly Candidate[];
  readonly alternatives: readonly { readonly insteadOf: string; readonly candidate: Candidate }[];
  readonly barred: readonly Bar[];
}

/** Needs that something on a shelf can meet, in the order in which they are met. The antimicrobial one comes last, apart. */
const SHELF_NEEDS: readonly NeedKind[] = [
  'fluoride-base',
  'fluoride-extra',
  'professional-fluoride',
  'sealing',
  'acid-control',
  'saliva',
  'sweetener',
  'calcium-phosphate',
];
const MOST_ALTERNATIVES = 2;

export const isShelfNeed = (kind: NeedKind): boolean => kind === 'antimicrobial' || SHELF_NEEDS.includes(kind);
export const isMetBy = (lines: readonly Candidate[], kind: NeedKind): boolean => lines.some((l) => l.meets.includes(kind));

export function viewOf({
  facts,
  needs,
  shelf,
  signed,
  refused = [],
  confirmed,
  mouth,
  settings,
  tables,
  instead,
}: ProposePlanInput): DraftView {
  const { jurisdiction, hypochloriteProtocol } = settings;
  const hasNoTeeth = mouth?.kind === 'level-does-not-apply';
  const checks = shelf.map((item) =>
    checkItem({ item, facts, level: confirmed?.level, jurisdiction, hypochloriteProtocol, hasNoTeeth, tables }),
  );
  const signatures = new Map(shelf.map(({ id }) => [id, signed.filter((s) => s.shelfItemId === id)]));
  const swaps = Object.entries(instead ?? {}).filter(([from, to]) => from !== to);
  const view = { facts, settings, signed, refused, signatures, tables, instead: Object.fromEntries(swaps) };
  return { ...view, needs, checks, candidates: checks.map((check) => toCandidate(check, view)) };
}

/** Signed packs, then one pack for each need, then alternatives, and last of all what the antimicrobial need may bring. */
export function draftPlan(view: DraftView): Draft {
  const signed = takeSigned(view);
  const met = SHELF_NEEDS.reduce((draft, kind) => meetNeed(draft, kind, view), signed);
  return meetAntimicrobial(addAlternatives(met, view), view);
}

/** Signed packs stand first, whatever the needs: the dentist decided. Rules that the signature does not lift still keep them out. */
function takeSigned(view: DraftView): Draft {
  let draft: Draft = { lines: [], alternatives: [], barred: [] };
  for (const candidate of view.candidates) {
    if (candidate.state !== 'signed') continue;
    const bars = unliftedBars(candidate.check, view.signatures);
    draft = bars.length > 0 ? { ...draft, barred: [...draft.barred, ...bars] } : take(draft, candidate, view);
  }
  return draft;
}

function meetNeed(draft: Draft, kind: NeedKind, view: DraftView): Draft {
  const need = view.needs.find((n) => n.kind === kind);
  if (need?.state !== 'needed' || isMetBy(draft.lines, kind)) return draft;
  let tried = draft;
  for (const candidate of rankCandidates(need, view.candidates, view)) {
    if (isIn(tried, candidate.item.id)) continue;
    tried = take(tried, { ...candidate, chosenFor: kind }, view);
    if (isIn(tried, candidate.item.id)) return tried;
  }
  return tried;
}

/** For each line that nobody has signed, up to two other packs that could stand in its place. */
function addAlternatives(draft: Draft, view: DraftView): Draft {
  let grown = draft;
  for (const line of draft.lines) {
    const need = view.needs.find((n) => n.kind === line.chosenFor);
    if (line.state === 'signed' || !need) continue;
    const others = draft.lines.filter((l) => l !== line);
    const fitting = rankCandidates(need, view.candidates, view).filter((c) => !isIn(grown, c.item.id) && !findConflict(c, others, view));
    grown = { ...grown, alternatives: [...grown.alternatives, ...inPlaceOf(line, fitting, need.kind)] };
  }
  return grown;
}

/** Only a pack that anyone may give, without fluoride and without any interaction with the rest of the plan. */
function meetAntimicrobial(draft: Draft, view: DraftView): Draft {
  const need = view.needs.find((n) => n.kind === 'antimicrobial');
  if (need?.state !== 'needed' || isMetBy(draft.lines, 'antimicrobial')) return draft;
  const others = [...draft.lines, ...draft.alternatives.map((a) => a.candidate)];
  const fitting = rankCandidates(need, view.candidates, view).filter(
    (c) => c.state === 'proposed' && !c.holdsFluoride && !isIn(draft, c.item.id) && !findConflict(c, others, view, 'any'),
  );
  const [first, ...rest] = fitting;
  if (!first) return draft;
  return {
    ...draft,
    lines: [...draft.lines, { ...first, chosenFor: 'antimicrobial' }],
    alternatives: [...draft.alternatives, ...inPlaceOf(first, rest, 'antimicrobial')],
  };
}

const inPlaceOf = ({ item }: Candidate, others: readonly Candidate[], chosenFor: NeedKind): Draft['alternatives'] =>
  others.slice(0, MOST_ALTERNATIVES).map((candidate) => ({ insteadOf: item.id, candidate: { ...candidate, chosenFor } }));

const isIn = ({ lines, alternatives }: Draft, id: string): boolean =>
  lines.some((l) => l.item.id === id) || alternatives.some((a) => a.candidate.item.id === id);

/** Adds a candidate, unless it meets a line that it must not meet or brings the fluoride above an upper level. */
function take(draft: Draft, candidate: Candidate, view: DraftView): Draft {
  const conflict = findConflict(candidate, draft.lines, view);
  return conflict ? { ...draft, barred: [...draft.barred, conflict] } : { ...draft, lines: [...draft.lines, candidate] };
}
