import { requireSpreadWithin } from './crossedCells.ts';

export interface NestedObservation {
  readonly group: string;
  /** Counts within its group: member 1 of group A and member 1 of group B are two members. */
  readonly member: string;
  readonly value: number;
}

/** cells[group][member] holds the repeats. */
export interface NestedCells {
  readonly groups: readonly string[];
  readonly members: number;
  /** The same for every member, at least two. */
  readonly repeats: number;
  readonly cells: readonly (readonly (readonly number[])[])[];
}

/**
 * Sorts the readings of a nested study (lots, swabs of a lot, readings of a swab) into its cells.
 * @throws RangeError saying what is missing and what would make the study work: one group only, unequal numbers of members or of
 *   repeats, one member in each group, no repeats, no difference between any two repeats
 */
export function nestedCells(observations: readonly NestedObservation[]): NestedCells {
  const byGroup = new Map<string, Map<string, number[]>>();
  for (const { group, member, value } of observations) {
    const members = byGroup.get(group) ?? new Map<string, number[]>();
    byGroup.set(group, members);
    const cell = members.get(member);
    if (cell) cell.push(value);
    else members.set(member, [value]);
  }
  const groups = [...byGroup.keys()];
  if (groups.length < 2) {
    throw new RangeError(
      `observations must be of at least two groups: ${groups.length}. Add readings of a second group, such as a second lot`,
    );
  }
  const members = Math.max(...[...byGroup.values()].map((inGroup) => inGroup.size));
  if (members < 2) {
    throw new RangeError('observations must be of at least two members in each group, or members cannot be told from groups');
  }
  const repeats = Math.max(...[...byGroup.values()].flatMap((inGroup) => [...inGroup.values()].map((cell) => cell.length)));
  for (const [group, inGroup] of byGroup) requireEqualSizes(group, inGroup, members, repeats);
  if (repeats < 2) {
    throw new RangeError(
      'observations must repeat: each member is read at least twice, or the members cannot be told from the noise of one reading',
    );
  }
  const cells = [...byGroup.values()].map((inGroup) => [...inGroup.values()]);
  requireSpreadWithin(cells.flat());
  return { groups, members, repeats, cells };
}

function requireEqualSizes(group: string, inGroup: ReadonlyMap<string, readonly number[]>, members: number, repeats: number): void {
  if (inGroup.size !== members) {
    throw new RangeError(
      `observations must be of as many members in every group: ${inGroup.size} in group "${group}", elsewhere up to ${members}. Add the missing ones, or leave that group out`,
    );
  }
  for (const [member, cell] of inGroup) {
    if (cell.length !== repeats) {
      throw new RangeError(
        `observations must be as many of every member: ${cell.length} of member "${member}" in group "${group}", elsewhere up to ${repeats}. Take the missing ones, or leave that group out`,
      );
    }
  }
}
