import { type Candidate, findConflict, serves } from '../candidates.ts';
import type { Bar } from '../checkItem.ts';
import { type Draft, type DraftView, isMetBy, isShelfNeed, mayComeByReading, openNeeds } from '../draftPlan.ts';
import { unliftedBars } from '../signatures.ts';
import type { Need, RegimenConflict } from '../types.ts';
import { fluorideLimits, taskLimit } from './buildProgramme.ts';
import { dayRows } from './dayRows.ts';
import { forbiddenPairs } from './forbiddenPairs.ts';
import type { Row } from './row.ts';
import { smallestConflict } from './smallestConflict.ts';

interface Group {
  readonly id: string;
  readonly says: string;
  readonly private?: boolean | undefined;
}

const taken = (i: number): string => `taken ${i}`;
const NEED = 'need ';
const NOTHING_ELSE = 'nothing else';

/**
 * Why the most important need that stays open cannot be met together with the more important ones, which are: the smallest set of needs,
 * rules, limits and gaps on the shelf that do not go together. Less important needs never keep it open.
 * @returns null where every need is met
 */
export function explainUnmet(draft: Draft, view: DraftView): RegimenConflict | null {
  const signed = draft.lines.filter((l) => l.state === 'signed');
  const inOrder = [...openNeeds(signed, view), ...view.needs.filter((n) => n.kind === 'antimicrobial' && n.state === 'needed')].filter(
    (n) => isShelfNeed(n.kind) && !isMetBy(signed, n.kind),
  );
  const wanted = inOrder.find((need) => !isMetBy(draft.lines, need.kind));
  if (!wanted) return null;
  const open = inOrder.slice(0, inOrder.indexOf(wanted) + 1);
  const packs = [...signed, ...view.candidates.filter((c) => c.state !== 'signed' && open.some((need) => serves(c, need)))];
  const groups = new Map<string, Group>();
  const rows: Row[] = [
    ...needRows(open, wanted, packs, groups),
    ...packs.flatMap((pack, i) => packRows(pack, i, { wanted, draft, view, groups })),
    ...togetherRows(packs, view, groups),
  ];
  const found = smallestConflict({ rows, groups: [...groups.keys()] });
  if (!found) return null;
  const needs = found.flatMap((id) => open.filter((need) => `${NEED}${need.kind}` === id).map((need) => need.kind));
  const constraints = found.flatMap((id) => (id.startsWith(NEED) ? [] : (groups.get(id) ?? [])));
  const [only] = constraints;
  const isNothing = only !== undefined && constraints.length === 1 && only.says.startsWith(NOTHING_ELSE);
  return {
    needs: [wanted.kind, ...needs],
    constraints: isNothing ? [{ ...only, says: only.says.replace(NOTHING_ELSE, 'nothing') }] : constraints,
  };
}

/** A need is met by a pack, or, once the shelf holds what it lacks, by something new. The wanted one must be met. */
function needRows(open: readonly Need[], wanted: Need, packs: readonly Candidate[], groups: Map<string, Group>): Row[] {
  return open.map((need): Row => {
    const lacking = `shelf ${need.kind}`;
    groups.set(lacking, { id: lacking, says: `${NOTHING_ELSE} on the shelf is for this need (${need.kind.replaceAll('-', ' ')})` });
    if (need !== wanted) groups.set(`${NEED}${need.kind}`, { id: `${NEED}${need.kind}`, says: need.because });
    const given = packs.flatMap((pack, i) =>
      serves(pack, need) || (pack.state === 'signed' && pack.meets.includes(need.kind)) ? [i] : [],
    );
    return {
      terms: [[lacking, 1], ...given.map((i) => [taken(i), 1] as const), ...(need === wanted ? [] : [[`${NEED}${need.kind}`, 1] as const])],
      atLeast: 1,
    };
  });
}

interface PackPlace {
  readonly wanted: Need;
  readonly draft: Draft;
  readonly view: DraftView;
  readonly groups: Map<string, Group>;
}

function packRows(pack: Candidate, i: number, place: PackPlace): Row[] {
  const bounds: Row = { terms: [[taken(i), 1]], atMost: 1 };
  if (pack.state === 'signed') {
    const id = `signed ${pack.item.id}`;
    place.groups.set(id, { id, says: `${pack.item.name} is signed` });
    return [
      bounds,
      {
        terms: [
          [taken(i), 1],
          [id, 1],
        ],
        atLeast: 1,
      },
    ];
  }
  const out = reasonsOut(pack, place);
  for (const group of out) if (!place.groups.has(group.id)) place.groups.set(group.id, group);
  return [
    bounds,
    ...out.map(
      (group): Row => ({
        terms: [
          [taken(i), 1],
          [group.id, -1],
        ],
        atMost: 0,
      }),
    ),
  ];
}

const BY_READING = 'a reading brings only what anyone may give, without fluoride and without interaction with the rest';

/** Everything that keeps one pack out by itself. */
function reasonsOut(pack: Candidate, { wanted, draft, view }: PackPlace): readonly Group[] {
  const { item, check } = pack;
  const bars: readonly Bar[] = [...unliftedBars(check, view.signatures), ...(check.agent?.byChoiceOnly ? check.cautions : [])];
  const refusal = view.refused.find((r) => r.shelfItemId === item.id);
  const isReading = wanted.kind === 'antimicrobial' && serves(pack, wanted);
  const isHeld = isReading && (!mayComeByReading(pack) || findConflict(pack, draft.lines, view, 'any') !== undefined);
  return [
    ...bars.map((bar) => ({ id: `${bar.ruleId} ${bar.because}`, says: bar.because, ...(bar.private ? { private: true } : {}) })),
    ...(item.inStock ? [] : [{ id: `stock ${item.id}`, says: `${item.name} is out of stock` }]),
    ...(refusal ? [{ id: `refused ${item.id}`, says: `${item.name} was not released by ${refusal.by}` }] : []),
    ...(isHeld ? [{ id: 'reading', says: BY_READING }] : []),
  ];
}

/** Pairs and limits of the day; what the signed packs pass alone is not held against the rest. */
function togetherRows(packs: readonly Candidate[], view: DraftView, groups: Map<string, Group>): Row[] {
  const pairs = forbiddenPairs(
    packs.map((p) => p.item),
    view.tables.interactions,
  ).map(({ places: [i, j], interaction: { id, because } }): Row => {
    groups.set(id, { id, says: because });
    return {
      terms: [
        [taken(i), 1],
        [taken(j), 1],
        [id, -1],
      ],
      atMost: 1,
    };
  });
  const days = [...fluorideLimits(view), ...taskLimit(view.settings.mostTasksPerDay)].flatMap((amount) =>
    dayRows(packs, [], amount).map(({ coefficients, atMost }): Row => {
      const most = Math.max(atMost, sumOf(coefficients.filter((_, i) => packs[i]?.state === 'signed')));
      groups.set(amount.id, { id: amount.id, says: amount.says });
      const enough = sumOf(coefficients.filter((c) => c > 0));
      return { terms: [...coefficients.map((c, i) => [taken(i), c] as const), [amount.id, -enough]], atMost: most };
    }),
  );
  return [...pairs, ...days];
}

const sumOf = (values: readonly number[]): number => values.reduce((sum, value) => sum + value, 0);
