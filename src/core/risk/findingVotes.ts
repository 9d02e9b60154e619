import type { Finding } from '../visit/types.ts';
import type { FindingFill } from './findingFill.ts';

export interface FoundCount {
  readonly found: number;
  /** The number stands as it is: everything was examined and looking tells, or more of it would change nothing. */
  readonly settled: boolean;
}

export interface FindingVotes {
  /** Yes/no items; a value of undefined means that looking should have told and has not. */
  readonly votes: readonly { readonly item: string; readonly value: boolean | undefined }[];
  readonly counts: ReadonlyMap<string, FoundCount>;
}

/** What the findings say of each item that they can fill. */
export function listFindingVotes(findings: readonly Finding[], fills: readonly FindingFill[], allExamined: boolean): FindingVotes {
  const yesNo = fills.filter((fill) => fill.count === undefined);
  const votes = yesNo.flatMap((fill) => {
    const value = voteOf(fill, findings, allExamined);
    return value === 'no-vote' ? [] : [{ item: fill.item, value }];
  });
  const counted = new Set(fills.filter((fill) => fill.count !== undefined).map((fill) => fill.item));
  const counts = new Map([...counted].map((item) => [item, countOf(item, findings, fills, allExamined)]));
  return { votes, counts };
}

function voteOf(fill: FindingFill, findings: readonly Finding[], allExamined: boolean): boolean | undefined | 'no-vote' {
  if (findings.some((finding) => fits(fill, finding))) return true;
  const isOldOne = (finding: Finding) => !finding.isNew && fits(fill, { ...finding, isNew: true });
  if (fill.oldLeavesUnknown && findings.some(isOldOne)) return undefined;
  if (fill.absence === 'nothing') return 'no-vote';
  return allExamined ? false : undefined;
}

function countOf(item: string, findings: readonly Finding[], fills: readonly FindingFill[], allExamined: boolean): FoundCount {
  const rows = fills.filter((fill) => fill.item === item);
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
