import { leafletWordsEn } from '../../src/content/texts/en.ts';
import { leafletWordsEs } from '../../src/content/texts/es.ts';
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
  words: {
    en: {
      ...leafletWordsEn,
      cautions: { 'for-all': 'Lock it up.', 'gum-and-dogs': 'No gum for dogs.', young: 'A grown-up helps.', strong: 'Only for you.' },
    },
    es: {
      ...leafletWordsEs,
      cautions: {
        'for-all': 'Guarde todo.',
        'gum-and-dogs': 'Lejos de los perros.',
        young: 'Un adulto ayuda.',
        strong: 'Solo para usted.',
      },
    },
  },
};
