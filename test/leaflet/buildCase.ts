import { buildLeaflet, type LeafletInput } from '../../src/core/leaflet/buildLeaflet.ts';
import type { LeafletTable } from '../../src/core/leaflet/leafletTable.ts';
import type { Leaflet, LeafletLanguage } from '../../src/core/leaflet/types.ts';
import { caseShelf, type LeafletCase, planLine } from './leafletCases.ts';

const proposal = { key: 'leaflet-words', status: 'proposal' } as const;

/** What `buildLeaflet` is given for an invented person, on 25 November 2026 in an invented practice. */
export function caseInput(one: LeafletCase, language: LeafletLanguage, texts: LeafletTable, shelf = caseShelf): LeafletInput {
  const lines = one.items.map((id) => {
    const item = shelf.find((found) => found.id === id);
    if (item === undefined) throw new RangeError(`no item ${id} on the shelf`);
    return planLine(item, one.person.ageYears, one.signed.includes(id));
  });
  return {
    plan: {
      lines,
      cautions: [],
      advice: [],
      recall: { fromMonths: 3, toMonths: 4, table: 'invented', source: proposal },
      diet: { allowed: one.diet ?? 'any', because: '', ask: [], private: false, source: proposal },
    },
    person: one.person,
    practice: { name: 'Tern Quay Dental', invented: true, jurisdiction: 'UK' },
    onDate: '2026-11-25',
    language,
    agreed: one.agreed,
    stopUsing: one.stopUsing,
    nextOn: one.nextOn,
    shelf,
    texts,
    facts: { canSpit: one.canSpit },
    needs: [{ kind: 'diet', state: 'needed', because: '', sources: [] }],
  };
}

/** The case's leaflet; its items stand on the shelf given. */
export const buildCase = (one: LeafletCase, language: LeafletLanguage, texts: LeafletTable, shelf = caseShelf): Leaflet =>
  buildLeaflet(caseInput(one, language, texts, shelf));
