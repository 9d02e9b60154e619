export interface NumberLimits {
  readonly above?: number;
  readonly atLeast?: number;
  readonly atMost: number;
  readonly whole?: true;
}

const TWO_WAYS = /^([1-9]\d{0,2})[.,](\d{3})$/;

/**
 * A number of a table, strictly: "0.32", "0,32", "22 600". One that is a thousand times more to one hand than to another ("60,000",
 * "50.000") is taken only where the larger could not be meant.
 * @returns the number, or what is wrong with the cell
 */
export function readNumber(cell: string, { above, atLeast, atMost, whole }: NumberLimits): number | string {
  const twoWays = TWO_WAYS.exec(cell);
  const grouped = twoWays && Number(`${twoWays[1]}${twoWays[2]}`);
  if (grouped !== null && grouped <= atMost) return sayTwoWays(cell, grouped, whole === true);
  const isGrouped = /^\d{1,3}( \d{3})+([.,]\d+)?$/.test(cell);
  if (!isGrouped && !/^\d{1,9}([.,]\d{1,25})?(e-\d{1,2})?$/.test(cell))
    return `"${cell}" is not a number; write it like ${whole ? '12' : '12 or 0.5'}`;
  const value = Number(cell.replaceAll(' ', '').replace(',', '.'));
  if (whole && !Number.isInteger(value)) return `"${cell}" is not a whole number`;
  if (above !== undefined && !(value > above)) return `"${cell}" must be above ${above}`;
  if (atLeast !== undefined && !(value >= atLeast)) return `"${cell}" must be ${atLeast} or more`;
  return value <= atMost ? value : `"${cell}" must be ${atMost} or less`;
}

function sayTwoWays(cell: string, grouped: number, isWhole: boolean): string {
  const small = Number(cell.replace(',', '.'));
  const bare = String(small);
  const other = isWhole && !Number.isInteger(small) ? '' : `, or ${TWO_WAYS.test(bare) ? `${bare}0` : bare}`;
  return `"${cell}" is ${grouped} to some and ${small} to others: write ${grouped}${other}`;
}

/** Cents of "12.50", "12,50", "12.5" or "12"; anything else is said. */
export function readPrice(cell: string): number | string {
  const match = /^(\d{1,6})(?:[.,](\d{1,2}))?$/.exec(cell);
  return match ? Number(match[1]) * 100 + Number((match[2] ?? '').padEnd(2, '0')) : `"${cell}" is not a price; write it like 12.50`;
}
