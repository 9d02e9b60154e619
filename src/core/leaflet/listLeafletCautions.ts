import { listCautions } from '../regimen/listCautions.ts';
import type { Caution } from '../regimen/tables.ts';
import type { Plan } from '../regimen/types.ts';
import type { PrintableLine } from './listPrintableLines.ts';

/**
 * Ids of the cautions that a leaflet prints, whatever the status of their sources: each caution of the table that fits a printed
 * item and the age. The plan's own list is about all its lines, printed or not; of it, only what the table does not know is kept.
 * @param planCautions  of the plan
 * @param printed       lines that the leaflet shows
 * @param ageYears      completed years
 * @param table         every caution, most urgent first
 * @returns             in the order of the table
 */
export function listLeafletCautions(
  planCautions: Plan['cautions'],
  printed: readonly PrintableLine[],
  ageYears: number,
  table: readonly Caution[],
): readonly string[] {
  const fitting = listCautions(
    printed.map(({ item }) => item),
    ageYears,
    table,
  );
  const unknownToTable = planCautions.filter(({ id }) => !table.some((caution) => caution.id === id));
  return [...new Set([...fitting, ...unknownToTable].map(({ id }) => id))];
}
