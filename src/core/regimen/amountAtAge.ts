import { atPlace } from './places.ts';
import type { PasteAmount, RegimenTables, VarnishAmount } from './tables.ts';
import type { Jurisdiction, PersonFacts, PlanLine, ShelfItem } from './types.ts';

/** How a pack is used at this age: amount, size of a paste amount, and a note for the chair. */
export interface AgedUse {
  readonly use: ShelfItem['use'];
  readonly amountKind?: PlanLine['amountKind'];
  readonly amountNote?: string | undefined;
}

/**
 * The shelf item's use, with the amount for the age: fluoride paste as smear, pea or ribbon, varnish up to the volume for the teeth. An
 * amount of the shelf item that is smaller than the table's is kept; below 7 years the table's holds for paste.
 */
export function amountAtAge(item: ShelfItem, facts: PersonFacts, jurisdiction: Jurisdiction, tables: RegimenTables): AgedUse {
  const wait = waitNote(item, jurisdiction, tables);
  const paste = findPasteAmount(item, facts.ageYears, tables);
  if (paste) return pasteUse(item, paste, wait);
  const varnish = item.agentId === 'F_VARNISH' ? findByAge(tables.varnishAmounts, facts.ageYears) : undefined;
  if (varnish) return varnishUse(item, varnish, wait);
  return { use: item.use, amountNote: wait };
}

/** Amount of paste at this age, for fluoride pastes; undefined for everything else. */
export function findPasteAmount(item: ShelfItem, ageYears: number, { pasteAmounts, agents }: RegimenTables): PasteAmount | undefined {
  const isFluoridePaste = agents.find((a) => a.id === item.agentId)?.ppmRange !== undefined && item.use.atVisit !== true;
  const isBrushedOn = item.form === 'paste' || item.agentId === 'F_PASTE_5000';
  return isFluoridePaste && isBrushedOn ? findByAge(pasteAmounts, ageYears) : undefined;
}

function pasteUse(item: ShelfItem, paste: PasteAmount, wait: string | undefined): AgedUse {
  const { use } = item;
  const isRibbon = paste.kind === 'ribbon';
  const amountG = isRibbon ? (use.amountG ?? paste.amountG) : paste.amountG;
  const amount = isRibbon ? use.amount : paste.amount;
  return {
    use: { ...use, amount, amountG },
    amountKind: paste.kind,
    amountNote: [`${amount.charAt(0).toUpperCase()}${amount.slice(1)}.`, paste.note, wait].filter((t) => t !== undefined).join(' '),
  };
}

function varnishUse(item: ShelfItem, varnish: VarnishAmount, wait: string | undefined): AgedUse {
  const amountMl = Math.min(item.use.amountMl ?? varnish.amountMl, varnish.amountMl);
  return { use: { ...item.use, amountMl }, amountNote: [varnish.note, wait].filter((t) => t !== undefined).join(' ') };
}

const MINUTES_PER_HOUR = 60;

function waitNote({ agentId }: ShelfItem, jurisdiction: Jurisdiction, { agents }: RegimenTables): string | undefined {
  const wait = agents.find((a) => a.id === agentId)?.waitMinutes;
  if (wait === undefined) return undefined;
  const minutes = atPlace(wait, jurisdiction);
  return minutes > MINUTES_PER_HOUR
    ? `No brushing and no hard food for ${minutes / MINUTES_PER_HOUR} hours.`
    : `Nothing to eat or drink for ${minutes} minutes afterwards.`;
}

function findByAge<T extends { readonly fromAgeYears: number; readonly belowAgeYears: number }>(
  rows: readonly T[],
  ageYears: number,
): T | undefined {
  return rows.find((r) => ageYears >= r.fromAgeYears && ageYears < r.belowAgeYears);
}
