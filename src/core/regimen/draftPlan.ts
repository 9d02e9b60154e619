import { type Candidate, type CandidateView, findConflict, mayBeTaken, serves, toCandidate } from './candidates.ts';
import { type Bar, checkItem, type ItemCheck } from './checkItem.ts';
import { buildProgramme } from './choice/buildProgramme.ts';
import { findOptions, MOST_OPTIONS } from './choice/findOptions.ts';
import { lighterLimit } from './choice/lighterLimit.ts';
import { fitsDay, rankCandidates } from './choice/rankCandidates.ts';
import { itemTraits, tasteOf } from './itemTraits.ts';
import type { ProposePlanInput } from './proposePlan.ts';
import { holdsOn } from './signatureCover.ts';
import { unliftedBars } from './signatures.ts';
import type { DroppedCare, Need, NeedKind, ShelfItem } from './types.ts';

/** What a plan is made from: the input, with every pack of the shelf checked once. */
export interface DraftView extends CandidateView {
  readonly needs: readonly Need[];
  readonly checks: readonly ItemCheck[];
  /** One for each check, in the order of their ids: the order of the shelf decides nothing. */
  readonly candidates: readonly Candidate[];
}

/** Chosen packs, what could stand in their place, and what was kept out while choosing. */
export interface Draft {
  readonly lines: readonly Candidate[];
  readonly alternatives: readonly { readonly insteadOf: string; readonly candidate: Candidate }[];
  readonly barred: readonly Bar[];
  /** It was looked for among those with at most so many tasks a day, and leaves these needs open that the best one meets. */
  readonly lighter?: { readonly mostTasksPerDay: number; readonly leavesOpen: readonly NeedKind[] };
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
  history = [],
  onDate,
}: ProposePlanInput): DraftView {
  const held = onDate === undefined ? signed : signed.filter((s) => holdsOn(s, onDate));
  const { jurisdiction, legal, localProtocols } = settings;
  const hasNoTeeth = mouth?.kind === 'level-does-not-apply';
  const byId = [...shelf].sort((a, b) => (a.id < b.id ? -1 : Number(a.id > b.id)));
  const checks = byId.map((item) =>
    checkItem({ item, facts, level: confirmed?.level, jurisdiction, legal, localProtocols, hasNoTeeth, tables }),
  );
  const signatures = new Map(shelf.map(({ id }) => [id, held.filter((s) => s.shelfItemId === id)]));
  const dropped = findDropped(history, shelf);
  const swaps = Object.entries(instead ?? {}).filter(([from, to]) => from !== to);
  const view = { facts, settings, signed: held, refused, signatures, tables, instead: Object.fromEntries(swaps), dropped };
  return { ...view, needs, checks, candidates: checks.map((check) => toCandidate(check, view)) };
}

/** Dropped before, and every pack of the same form with a flavour that was dropped for its taste. */
function findDropped(history: readonly DroppedCare[], shelf: readonly ShelfItem[]): ReadonlySet<string> {
  const forTaste = history.filter(({ why }) => why === 'taste').flatMap((d) => shelf.filter(({ id }) => id === d.shelfItemId));
  const disliked = forTaste.filter((item) => itemTraits(item).has('flavour') && tasteOf(item) !== undefined);
  const tastesAlike = (item: ShelfItem) => disliked.some((other) => other.form === item.form && tasteOf(other) === tasteOf(item));
  return new Set([...history.map((d) => d.shelfItemId), ...shelf.filter(tastesAlike).map(({ id }) => id)]);
}

/** Signed packs with the best packs for the open needs, then other ways, each with alternatives and what the antimicrobial need may bring. */
export function draftPlans(view: DraftView): readonly [Draft, ...Draft[]] {
  const signed = takeSigned(view);
  const open = openNeeds(signed.lines, view);
  const ranked = keepRanking(view);
  const draftsIn = (within: DraftView, most?: number): Draft[] =>
    findOptions(buildProgramme(open, signed.lines, within), most).map((packs) => {
      const lines = [...signed.lines, ...inOrderOfNeeds(packs, open)];
      return meetAntimicrobial(addAlternatives({ ...signed, lines }, within, ranked), within, ranked);
    });
  const [best = meetAntimicrobial(signed, view, ranked), ...others] = draftsIn(view);
  const lighter = findLighter(best, view, draftsIn);
  return [best, ...lighter, ...others.filter((draft) => !lighter.some((l) => isSame(l, draft)))].slice(0, MOST_OPTIONS) as [
    Draft,
    ...Draft[],
  ];
}

/** Where the best asks for much and the person has set no limit of tasks a day: the best of those that ask for half at most. */
function findLighter(best: Draft, view: DraftView, draftsIn: (within: DraftView, most: number) => readonly Draft[]): readonly Draft[] {
  const mostTasksPerDay = view.settings.mostTasksPerDay === undefined ? lighterLimit(best.lines) : undefined;
  if (mostTasksPerDay === undefined) return [];
  const [lighter] = draftsIn({ ...view, settings: { ...view.settings, mostTasksPerDay } }, 1);
  if (!lighter || lighter.lines.length === 0 || isSame(lighter, best)) return [];
  const leavesOpen = view.needs.map(({ kind }) => kind).filter((kind) => isMetBy(best.lines, kind) && !isMetBy(lighter.lines, kind));
  return [{ ...lighter, lighter: { mostTasksPerDay, leavesOpen } }];
}

const isSame = (a: Draft, b: Draft): boolean =>
  a.lines.length === b.lines.length && a.lines.every(({ item }) => b.lines.some((l) => l.item.id === item.id));

/** Needed, met by something on a shelf, and by nothing that is signed; the most important first. The antimicrobial one is apart. */
export function openNeeds(signed: readonly Candidate[], { needs }: Pick<DraftView, 'needs'>): readonly Need[] {
  return SHELF_NEEDS.flatMap((kind) => {
    const need = needs.find((n) => n.kind === kind && n.state === 'needed');
    return need && !isMetBy(signed, kind) ? [need] : [];
  });
}

/**
 * Signed packs stand first, whatever the needs: the dentist decided. Rules that the signature does not lift still keep them out. Where two
 * must not meet, the first by id stays, and hypochlorite gives way to anything.
 */
function takeSigned(view: DraftView): Draft {
  let draft: Draft = { lines: [], alternatives: [], barred: [] };
  const givesWay = ({ item }: Candidate) => Number(item.agentId === 'NAOCL');
  const signed = view.candidates.filter((c) => c.state === 'signed').sort((a, b) => givesWay(a) - givesWay(b));
  for (const candidate of signed) {
    const bars = unliftedBars(candidate.check, view.signatures);
    draft = bars.length > 0 ? { ...draft, barred: [...draft.barred, ...bars] } : take(draft, candidate, view);
  }
  return draft;
}

/** Each pack with the first need that nothing else among them serves, in the order of the needs. */
function inOrderOfNeeds(packs: readonly Candidate[], open: readonly Need[]): readonly Candidate[] {
  const places = packs.map((pack) => {
    const alone = open.findIndex((need) => serves(pack, need) && !packs.some((o) => o !== pack && serves(o, need)));
    return { pack, place: alone >= 0 ? alone : open.findIndex((need) => serves(pack, need)) };
  });
  return places.sort((a, b) => a.place - b.place).map(({ pack, place }) => ({ ...pack, chosenFor: open[place]?.kind }));
}

type Ranking = (need: Need) => readonly Candidate[];

/** The same ranking serves every draft. */
function keepRanking(view: DraftView): Ranking {
  const kept = new Map<NeedKind, readonly Candidate[]>();
  return (need) => {
    const ranked = kept.get(need.kind) ?? rankCandidates(need, view.candidates, view);
    kept.set(need.kind, ranked);
    return ranked;
  };
}

/** For each line that nobody has signed, up to two other packs that could stand in its place. */
function addAlternatives(draft: Draft, view: DraftView, ranked: Ranking): Draft {
  let grown = draft;
  for (const line of draft.lines) {
    const need = view.needs.find((n) => n.kind === line.chosenFor);
    if (line.state === 'signed' || !need) continue;
    const others = draft.lines.filter((l) => l !== line);
    const fitting: Candidate[] = [];
    for (const candidate of ranked(need)) {
      if (fitting.length === MOST_ALTERNATIVES) break;
      if (!isIn(grown, candidate.item.id) && fitsBeside(candidate, others, view)) fitting.push(candidate);
    }
    grown = { ...grown, alternatives: [...grown.alternatives, ...inPlaceOf(line, fitting, need.kind)] };
  }
  return grown;
}

/** Only a pack that anyone may give, without fluoride and without any interaction with the rest of the plan. */
function meetAntimicrobial(draft: Draft, view: DraftView, ranked: Ranking): Draft {
  const need = view.needs.find((n) => n.kind === 'antimicrobial');
  if (need?.state !== 'needed' || isMetBy(draft.lines, 'antimicrobial')) return draft;
  const others = [...draft.lines, ...draft.alternatives.map((a) => a.candidate)];
  const fitting = ranked(need).filter(
    (c) =>
      mayComeByReading(c) && !isIn(draft, c.item.id) && !findConflict(c, others, view, 'any') && fitsDay(c, draft.lines, view.settings),
  );
  const [first, ...rest] = fitting;
  if (!first) return draft;
  return {
    ...draft,
    lines: [...draft.lines, { ...first, chosenFor: 'antimicrobial' }],
    alternatives: [...draft.alternatives, ...inPlaceOf(first, rest, 'antimicrobial')],
  };
}

/** The reading never brings what needs a signature or moves the sum of fluoride. */
export const mayComeByReading = ({ state, holdsFluoride }: Candidate): boolean => state === 'proposed' && !holdsFluoride;

const fitsBeside = (candidate: Candidate, others: readonly Candidate[], view: DraftView): boolean =>
  !findConflict(candidate, others, view) && fitsDay(candidate, others, view.settings);

const inPlaceOf = ({ item }: Candidate, others: readonly Candidate[], chosenFor: NeedKind): Draft['alternatives'] =>
  others.slice(0, MOST_ALTERNATIVES).map((candidate) => ({ insteadOf: item.id, candidate: { ...candidate, chosenFor } }));

const isIn = ({ lines, alternatives }: Draft, id: string): boolean =>
  lines.some((l) => l.item.id === id) || alternatives.some((a) => a.candidate.item.id === id);

/** Adds a candidate, unless it meets a line that it must not meet or brings the fluoride above an upper level. */
function take(draft: Draft, candidate: Candidate, view: DraftView): Draft {
  const conflict = findConflict(candidate, draft.lines, view);
  return conflict ? { ...draft, barred: [...draft.barred, conflict] } : { ...draft, lines: [...draft.lines, candidate] };
}

/**
 * Packs that a plan might have taken, each with what keeps it from standing beside lines that it would not replace. What merely came
 * second is not among them.
 */
export function keptOutBy(draft: Draft, view: DraftView): readonly Bar[] {
  const open = openNeeds(
    draft.lines.filter((l) => l.state === 'signed'),
    view,
  );
  return view.candidates.flatMap((candidate) => {
    if (!mayBeTaken(candidate, view) || isIn(draft, candidate.item.id) || !open.some((need) => serves(candidate, need))) return [];
    const isReplaced = (line: Candidate) =>
      line.state !== 'signed' && open.filter((need) => serves(line, need)).every((need) => serves(candidate, need));
    return (
      findConflict(
        candidate,
        draft.lines.filter((line) => !isReplaced(line)),
        view,
      ) ?? []
    );
  });
}
