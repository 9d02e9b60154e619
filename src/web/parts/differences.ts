/** What stands in something saved, line by line: a name and its value in words. */
export type SaidLines = readonly (readonly [name: string, value: string])[];

export interface Difference {
  readonly name: string;
  readonly theirs: string;
  readonly mine: string;
}

/** The lines whose values differ; a line that one side lacks is "not there". */
export function listDifferences(theirs: SaidLines, mine: SaidLines): readonly Difference[] {
  const names = [...new Set([...theirs, ...mine].map(([name]) => name))];
  const valueIn = (lines: SaidLines, name: string) => lines.find(([n]) => n === name)?.[1] ?? 'not there';
  return names
    .map((name) => ({ name, theirs: valueIn(theirs, name), mine: valueIn(mine, name) }))
    .filter((line) => line.theirs !== line.mine);
}
