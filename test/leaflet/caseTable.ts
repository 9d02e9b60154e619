import { leafletTable } from '../../src/content/texts/leafletTable.ts';
import { leafletGoals, leafletUses } from '../../src/content/texts/leafletUses.ts';
import type { LeafletTable } from '../../src/core/leaflet/leafletTable.ts';
import type { Caution } from '../../src/core/regimen/tables.ts';

const memory = { key: 'leaflet-convention', status: 'memory' } as const;
const caution = (id: string, appliesTo: Caution['appliesTo']): Caution => ({ id, text: id, appliesTo, source: memory });

/** The words of the product with three invented cautions and one waiting time, so that a test says what it depends on. */
export const caseTable: LeafletTable = {
  uses: leafletUses,
  goals: leafletGoals,
  cautions: [
    caution('strong', { agentIds: ['F_PASTE_5000'] }),
    caution('gum-and-dogs', { traits: ['xylitol'] }),
    caution('young', { belowAgeYears: 7 }),
    caution('for-all', {}),
  ],
  agents: [
    { id: 'F_RINSE_005', waitMinutes: { US: 30, UK: 15, unknown: 30, source: { key: 'leaflet-rinse-005', status: 'read' } } },
    { id: 'F_PASTE_5000', waitMinutes: { US: 30, UK: 30, unknown: 30, source: memory } },
  ],
  catalogs: {
    en: {
      ...leafletTable.catalogs.en,
      'caution.for-all': 'Lock it up.',
      'caution.gum-and-dogs': 'No gum for dogs.',
      'caution.young': 'A grown-up helps.',
      'caution.strong': 'Only for you.',
    },
    es: {
      ...leafletTable.catalogs.es,
      'caution.for-all': 'Guarde todo.',
      'caution.gum-and-dogs': 'Lejos de los perros.',
      'caution.young': 'Un adulto ayuda.',
      'caution.strong': 'Solo para usted.',
    },
    fr: {
      ...leafletTable.catalogs.fr,
      'caution.for-all': 'Gardez tout sous clé.',
      'caution.gum-and-dogs': 'Loin des chiens.',
      'caution.young': 'Un adulte aide.',
      'caution.strong': 'Pour vous seul.',
    },
    ar: {
      ...leafletTable.catalogs.ar,
      'caution.for-all': 'احفظ كل شيء.',
      'caution.gum-and-dogs': 'بعيدًا عن الكلاب.',
      'caution.young': 'شخص كبير يساعد.',
      'caution.strong': 'لك وحدك.',
    },
  },
  awaitingReview: leafletTable.awaitingReview,
};
