import { itemTraits } from './itemTraits.ts';
import type { RegimenTables } from './tables.ts';
import type { ShelfItem } from './types.ts';

export const FORMS = [
  'paste',
  'rinse',
  'gel',
  'varnish',
  'gum',
  'lozenge',
  'spray',
  'drops',
  'powder',
  'sealant',
] as const satisfies readonly ShelfItem['form'][];

type TraitTables = Pick<RegimenTables, 'rules' | 'interactions' | 'allergenMatches' | 'cautions'>;

/**
 * What to look for on a pack: every trait that a rule, an interaction, an allergy or a caution asks for, without those that follow from the
 * form, the compound, the strength or the pH. By name.
 */
export function listPackTraits({ rules, interactions, allergenMatches, cautions }: TraitTables): readonly string[] {
  const asked = [
    ...rules.flatMap((r) => r.traits ?? []),
    ...interactions.flatMap((i) => [...(i.traits ?? []), ...(i.withTraits ?? [])]),
    ...Object.values(allergenMatches).flatMap((a) => a.traits),
    ...cautions.flatMap((c) => c.appliesTo.traits ?? []),
  ];
  const worked = workedOutTraits();
  return [...new Set(asked)].filter((trait) => !worked.has(trait)).sort((a, b) => a.localeCompare(b, 'en'));
}

/** Everything that `itemTraits` adds by itself, found by asking it. */
function workedOutTraits(): ReadonlySet<string> {
  const blank = { id: '', name: '', leafletName: { en: '', es: '' }, agentId: '', traits: [], inStock: true, release: 'anyone' } as const;
  const use = { timesPerDay: 0, amount: '' };
  const probes: readonly Partial<ShelfItem>[] = [
    ...FORMS.map((form) => ({ form })),
    { form: 'rinse', pH: 1 },
    { compound: 'SnF2', percent: 1 },
    { compound: 'Na2PO3F', percent: 1 },
  ];
  return new Set(probes.flatMap((probe) => [...itemTraits({ ...blank, form: 'paste', meets: [], use, ...probe })]));
}
