import { regimenTables } from '../../src/content/regimenTables.ts';
import { amountAtAge } from '../../src/core/regimen/amountAtAge.ts';
import { checkItem } from '../../src/core/regimen/checkItem.ts';
import { checkTogether } from '../../src/core/regimen/checkTogether.ts';
import { weightDoubt } from '../../src/core/regimen/dose/weightDoubt.ts';
import { plannerWeightKg } from '../../src/core/regimen/plannerWeightKg.ts';
import type {
  Jurisdiction,
  Need,
  NeedKind,
  OtherFluoride,
  PersonFacts,
  RegimenCriterion,
  ShelfItem,
} from '../../src/core/regimen/types.ts';
import type { Level } from '../../src/core/risk/types.ts';
import { ppmOf } from './oracle.ts';

/** What a regimen is chosen for, without signatures. */
export interface Choice {
  readonly facts: PersonFacts;
  readonly needs: readonly Need[];
  readonly shelf: readonly ShelfItem[];
  readonly jurisdiction: Jurisdiction;
  readonly level: Level | undefined;
  readonly order: readonly RegimenCriterion[];
  readonly mostTasksPerDay: number | undefined;
  readonly dropped: readonly string[];
}

const IMPORTANCE: readonly NeedKind[] = [
  'fluoride-base',
  'fluoride-extra',
  'professional-fluoride',
  'sealing',
  'acid-control',
  'saliva',
  'sweetener',
  'calcium-phosphate',
];
/** Most often a year, and what stays of a tray of gel. */
const VISITS_PER_YEAR: Readonly<Record<string, number>> = { F_VARNISH: 4, F_GEL_APF: 4, SDF38: 2 };
const MOST_OF_GEL_MG = 7.5;
const isStrong = ({ agentId, meets }: ShelfItem) => /^F_PASTE_(2800|5000)$/.test(agentId) && meets.includes('fluoride-base');
const isOrdinary = (item: ShelfItem) => item.meets.includes('fluoride-base') && !isStrong(item);

/** Written from the definition and not from the programme: which packs may be taken, which sets may stand, and how good a set is. */
export function chooser({ facts, needs, shelf, jurisdiction, level, order, mostTasksPerDay, dropped }: Choice) {
  const open = IMPORTANCE.flatMap((kind) => needs.filter((n) => n.kind === kind && n.state === 'needed'));
  const named = (item: ShelfItem, need: Need) => need.agentIds?.findIndex((tier) => tier.includes(item.agentId)) ?? 0;
  const packs = new Map(
    shelf.map((item) => {
      const check = checkItem({ item, facts, level, jurisdiction, tables: regimenTables });
      const agent = regimenTables.agents.find((a) => a.id === item.agentId);
      const served = open.filter((n) => item.meets.includes(n.kind) && agent?.meets.includes(n.kind) && named(item, n) >= 0);
      const { use } = amountAtAge(item, facts, jurisdiction, regimenTables);
      const isOut = !item.inStock || agent === undefined || agent.byChoiceOnly !== undefined || check.stops.length + check.asks.length > 0;
      return [item.id, { item, use, served, waits: check.release !== 'anyone' || check.cautions.length > 0, check, isOut }] as const;
    }),
  );
  const get = (id: string) => {
    const pack = packs.get(id);
    if (!pack) throw new Error(`${id} is not on the shelf`);
    return pack;
  };
  const share = facts.ageYears < 6 ? 1 : facts.ageYears < 9 ? 0.35 : facts.ageYears < 13 ? 0.2 : 0.1;
  const mg = (id: string) => {
    const { item, use } = get(id);
    const ofOne = ((ppmOf(item) ?? 0) / 1000) * (use.amountG ?? use.amountMl ?? 0);
    if (use.atVisit) return (VISITS_PER_YEAR[item.agentId] ?? 0) * (item.agentId === 'F_GEL_APF' ? MOST_OF_GEL_MG : ofOne) * (1 / 365);
    return ofOne * use.timesPerDay * (item.agentId === 'F_SUPP' ? 1 : share);
  };
  const tasks = (id: string) => (get(id).use.atVisit ? 0 : get(id).use.timesPerDay);
  const takes = (kind: OtherFluoride) => facts.otherFluoride?.includes(kind) === true;
  const water = (facts.waterFluorideMgPerL ?? 0) * (facts.waterLitresPerDay ?? 0);
  const salt = takes('fluoridated-salt') ? ((facts.saltFluorideMgPerKg ?? 0) * (facts.saltGPerDay ?? 0)) / 1000 : 0;
  const tablets = takes('fluoride-tablets-or-drops') ? (facts.supplementFluorideMgPerDay ?? 0) : 0;
  const varnishMl = facts.ageYears < 6 ? 0.25 : facts.ageYears < 12 ? 0.4 : 0.75;
  const before: Readonly<Record<string, number>> = {
    F_RINSE_005: takes('naf-rinse-daily') ? 2.26 * share : 0,
    F_VARNISH: ((facts.varnishDaysPerYear ?? 0) * varnishMl * 22.6) / 365,
  };
  /** Of the rinse and the varnish the larger counts, what there was or what the plan has. */
  const beyond = (day: readonly string[]) =>
    Object.entries(before).reduce(
      (total, [agentId, mgBefore]) =>
        total +
        Math.max(
          0,
          mgBefore -
            sum(
              day.filter((id) => get(id).item.agentId === agentId),
              mg,
            ),
        ),
      water + salt + tablets,
    );
  const limits = regimenTables.fluoride.limits
    .filter((l) => facts.ageMonths >= l.fromAgeMonths && facts.ageMonths < l.belowAgeMonths)
    .filter((l) => l.kind === 'upper-intake-level' || l.kind === 'safe-level');
  const { weights } = regimenTables.fluoride;
  const isDoubtful = facts.weightKg !== undefined && weightDoubt(facts.weightKg, facts.ageMonths, weights) !== undefined;
  // A weight that cannot be right is as good as none.
  const known = (isDoubtful ? undefined : facts.weightKg) ?? plannerWeightKg(facts.ageMonths, weights);
  const kg = known ?? Number.POSITIVE_INFINITY;
  const sum = (ids: readonly string[], of: (id: string) => number) => ids.reduce((total, id) => total + of(id), 0);

  const meetings = new Map<string, boolean>();
  const mayNotMeet = (id: string, other: string): boolean => {
    const key = `${id} ${other}`;
    const known = meetings.get(key);
    if (known !== undefined) return known;
    const never = checkTogether(get(id).item, get(other).item, regimenTables.interactions).some((m) => m.verdict === 'never-both');
    meetings.set(key, never);
    return never;
  };

  /** What may be used now, and what is used once all that waits is signed. */
  const daysOf = (ids: readonly string[]): readonly (readonly string[])[] => [
    ids.filter((id) => !get(id).waits),
    ids.some((id) => isStrong(get(id).item)) ? ids.filter((id) => !isOrdinary(get(id).item)) : ids,
  ];
  const tasksAtMost = (ids: readonly string[]): number => Math.max(...daysOf(ids).map((day) => sum(day, tasks)));

  const mayStand = (ids: readonly string[]): boolean => {
    if (ids.some((id) => get(id).isOut || get(id).served.length === 0)) return false;
    if (ids.some((id, i) => ids.some((other, j) => j > i && mayNotMeet(id, other)))) return false;
    return daysOf(ids).every((day) => {
      if (mostTasksPerDay !== undefined && sum(day, tasks) > mostTasksPerDay + 1e-6) return false;
      const swallowed = sum(day, mg);
      return swallowed === 0 || limits.every((l) => swallowed + beyond(day) <= l.value * (l.unit === 'mg/day' ? 1 : kg) * (1 + 1e-9));
    });
  };

  const cost = ({ item, use }: ReturnType<typeof get>): number | undefined => {
    const amount = use.atVisit
      ? (use.amountG ?? use.amountMl)
      : { g: use.amountG, mL: use.amountMl, piece: 1 }[item.packAmount?.unit ?? 'g'];
    if (item.priceCents === undefined) return undefined;
    if (use.atVisit && (!item.packAmount || amount === undefined)) return item.priceCents;
    if (!item.packAmount || amount === undefined) return undefined;
    const uses = use.atVisit ? 1 : use.timesPerDay * Math.min(30, use.courseDays ?? 30);
    return Math.ceil(
      (item.priceCents * Math.min(use.atVisit ? item.packAmount.value : Number.POSITIVE_INFINITY, amount) * uses) / item.packAmount.value,
    );
  };
  const missesStrength = ({ item, use }: ReturnType<typeof get>): boolean => {
    const isPaste = (item.form === 'paste' || item.agentId === 'F_PASTE_5000') && use.atVisit !== true;
    const agent = regimenTables.agents.find((a) => a.id === item.agentId);
    if (!isPaste || !agent?.ppmRange || (item.meets.includes('fluoride-extra') && agent.meets.includes('fluoride-extra'))) return false;
    const row = regimenTables.pasteAmounts.find((r) => facts.ageYears >= r.fromAgeYears && facts.ageYears < r.belowAgeYears);
    const ppm = ppmOf(item);
    return row !== undefined && ppm !== undefined && (ppm < row.preferredPpm[0] || ppm > row.preferredPpm[1]);
  };

  /** Dropped by itself, or with the flavour and form of one that was: all here were dropped for their taste. */
  const tastesDropped = ({ id, form, flavour }: ShelfItem): boolean => {
    const alike = ({ item }: ReturnType<typeof get>) => item.form === form && item.flavour === flavour && flavour !== 'none';
    return dropped.includes(id) || (flavour !== undefined && [...packs.values()].some((p) => dropped.includes(p.item.id) && alike(p)));
  };

  /** Most important first, each the smaller the better. */
  const worth = (ids: readonly string[]): readonly number[] => {
    const taken = ids.map(get);
    const left = open.map((n) => !taken.some((p) => p.served.includes(n)));
    const count = (is: (p: ReturnType<typeof get>) => boolean) => taken.filter(is).length;
    const byCriterion: Readonly<Record<RegimenCriterion, readonly number[]>> = {
      tasks: [
        taken.reduce(
          (n, p) => n + Math.round((p.use.atVisit ? 0 : isStrong(p.item) ? Math.max(0, p.use.timesPerDay - 2) : p.use.timesPerDay) * 840),
          0,
        ),
      ],
      cost: [count((p) => cost(p) === undefined), taken.reduce((n, p) => n + (cost(p) ?? 0), 0)],
      items: [taken.length],
    };
    return [
      ...left.map(Number),
      count((p) => p.check.cautions.length > 0),
      taken.reduce((n, p) => n + p.served.reduce((tiers, need) => tiers + named(p.item, need), 0), 0),
      count(missesStrength),
      count((p) => tastesDropped(p.item)),
      ...order.flatMap((criterion) => byCriterion[criterion]),
    ];
  };

  /** Every set of packs that may stand, by trying all of them. */
  const listSets = (): readonly (readonly string[])[] => {
    const ids = [...packs.values()].filter((p) => !p.isOut && p.served.length > 0).map((p) => p.item.id);
    return Array.from({ length: 2 ** ids.length }, (_, bits) => ids.filter((_id, i) => (bits >> i) % 2 === 1)).filter(mayStand);
  };
  const agentsOf = (ids: readonly string[]) => new Set(ids.map((id) => get(id).item.agentId));
  const needCount = open.length;
  const servesAlone = (ids: readonly string[], id: string): boolean =>
    get(id).served.some((need) => !ids.some((other) => other !== id && get(other).served.includes(need)));
  return { mayStand, worth, listSets, agentsOf, needCount, servesAlone, tasksAtMost };
}

export function compareValues(a: readonly number[], b: readonly number[]): number {
  const i = a.findIndex((value, k) => value !== b[k]);
  return i < 0 ? 0 : (a[i] ?? 0) - (b[i] ?? 0);
}
