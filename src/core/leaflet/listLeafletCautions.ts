import type { Caution } from '../regimen/tables.ts';
import type { Plan } from '../regimen/types.ts';
import type { PrintableLine } from './listPrintableLines.ts';

/**
 * Ids of the cautions that a leaflet prints, whatever the status of their sources: each caution of the table that fits a printed
 * item and the age, and each that the plan asks for, except those that are about items not printed.
 * @param planCautions  of the plan; an id that the table does not know is kept
 * @param printed       lines that the leaflet shows
 * @param ageYears      completed years
 * @returns             most urgent first, by `order`
 */
export function listLeafletCautions(
  planCautions: Plan['cautions'],
  printed: readonly PrintableLine[],
  ageYears: number,
  table: { readonly cautions: readonly Caution[]; readonly cautionOrder: readonly string[] },
): readonly string[] {
  const asked = planCautions.map(({ id }) => id);
  const unknownToTable = asked.filter((id) => !table.cautions.some((caution) => caution.id === id));
  const ids = [...table.cautions.filter((caution) => fits(caution, printed, ageYears, asked)).map(({ id }) => id), ...unknownToTable];
  const place = (id: string) => (table.cautionOrder.includes(id) ? table.cautionOrder.indexOf(id) : table.cautionOrder.length);
  return [...new Set(ids)].sort((a, b) => place(a) - place(b));
}

/** A caution about no item in particular is printed when the plan asks for it or when the page shows any item. */
function fits({ id, appliesTo }: Caution, printed: readonly PrintableLine[], ageYears: number, asked: readonly string[]): boolean {
  const { agentIds, traits, belowAgeYears } = appliesTo;
  if (belowAgeYears !== undefined && ageYears >= belowAgeYears) return false;
  if (agentIds === undefined && traits === undefined) return printed.length > 0 || asked.includes(id);
  return printed.some(({ item }) => agentIds?.includes(item.agentId) || traits?.some((trait) => item.traits?.includes(trait)));
}
