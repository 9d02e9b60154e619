import { keepByKey } from '../keep/keepByKey.ts';
import { keepByTable } from '../keep/keepByTable.ts';
import type { Finding } from '../visit/types.ts';
import type { FindingFill } from './findingFill.ts';

export interface FoundCount {
  readonly found: number;
  /** The number stands as it is: everything was examined and looking tells, or more of it would change nothing. */
  readonly settled: boolean;
}

export interface FindingVotes {
  /** Every item that findings can fill. */
  readonly items: readonly string[];
  /** Yes/no items; a vote of undefined means that looking should have told and has not. */
  readonly votes: ReadonlyMap<string, readonly (boolean | undefined)[]>;
  readonly counts: ReadonlyMap<string, FoundCount>;
}

/** What the findings say of each item that they can fill. */
export function listFindingVotes(findings: readonly Finding[], fills: readonly FindingFill[], allExamined: boolean): FindingVotes {
  return findings.length === 0 ? withoutFindings(fills)(allExamined) : votesOn(findings, fills, allExamined);
}

/** Where nothing was found, the table alone decides. */
const withoutFindings = keepByTable((fills: readonly FindingFill[]) =>
  keepByKey((allExamined: boolean): FindingVotes => votesOn([], fills, allExamined)),
);

function votesOn(findings: readonly Finding[], fills: readonly FindingFill[], allExamined: boolean): FindingVotes {
  const { items, yesNo, counted } = sortFills(fills);
  const votes = new Map<string, (boolean | undefined)[]>();
  for (const [item, rows] of yesNo) {
    const told = rows.map((fill) => voteOf(fill, findings, allExamined)).filter((value) => value !== 'no-vote');
    votes.set(item, told);
  }
  const counts = new Map<string, FoundCount>();
  for (const [item, rows] of counted) counts.set(item, countOf(rows, findings, allExamined));
  return { items, votes, counts };
}

type FillsByItem = ReadonlyMap<string, readonly FindingFill[]>;

/** Rows for yes/no items and for counted ones, by item. */
const sortFills = keepByTable((fills: readonly FindingFill[]) => {
  const byItem = (rows: readonly FindingFill[]): FillsByItem =>
    new Map(rows.map(({ item }) => [item, rows.filter((fill) => fill.item === item)]));
  const [yesNo, counted] = [byItem(fills.filter((fill) => fill.count === undefined)), byItem(fills.filter((fill) => fill.count))];
  return { items: [...new Set([...yesNo.keys(), ...counted.keys()])], yesNo, counted };
});

function voteOf(fill: FindingFill, findings: readonly Finding[], allExamined: boolean): boolean | undefined | 'no-vote' {
  if (findings.some((finding) => fits(fill, finding))) return true;
  const isOldOne = (finding: Finding) => !finding.isNew && fits(fill, { ...finding, isNew: true });
  if (fill.oldLeavesUnknown && findings.some(isOldOne)) return undefined;
  if (fill.absence === 'nothing') return 'no-vote';
  return allExamined ? false : undefined;
}

function countOf(rows: readonly FindingFill[], findings: readonly Finding[], allExamined: boolean): FoundCount {
  const places = rows.flatMap((fill) =>
    findings.filter((f) => fits(fill, f)).map((f) => (fill.count?.of === 'teeth' ? f.tooth : `${f.tooth} ${f.surface ?? ''}`)),
  );
  const found = new Set(places).size;
  const looksComplete = allExamined && rows.every((fill) => fill.absence === 'false');
  return { found, settled: looksComplete || rows.some((fill) => found >= (fill.count?.enough ?? Number.POSITIVE_INFINITY)) };
}

function fits(fill: FindingFill, finding: Finding): boolean {
  if (!fill.kinds.includes(finding.kind)) return false;
  if (fill.onlyNew && !finding.isNew) return false;
  if (fill.onlyMilkTeeth && !/^[5-8]/.test(finding.tooth)) return false;
  if (fill.onlySurfaces && !(finding.surface && fill.onlySurfaces.includes(finding.surface))) return false;
  return !(finding.surface && fill.notSurfaces?.includes(finding.surface));
}
