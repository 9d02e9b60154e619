import { writeFileSync } from 'node:fs';
import { renderLeafletPdf } from '../../src/cli/leafletPdf.tsx';
import { leafletWordsEn } from '../../src/content/texts/en.ts';
import { leafletWordsEs } from '../../src/content/texts/es.ts';
import { leafletGoals, leafletUses } from '../../src/content/texts/leafletUses.ts';
import { buildLeaflet } from '../../src/core/leaflet/buildLeaflet.ts';
import type { Caution } from '../../src/core/regimen/tables.ts';
import { caseShelf, leafletCases, planLine } from './leafletCases.ts';

const M = { key: 'x', status: 'memory' } as const;
const c = (id: string, appliesTo: Caution['appliesTo']): Caution => ({ id, text: id, appliesTo, source: M });
const F = ['F_PASTE_STD', 'F_PASTE_5000', 'F_RINSE_005'];
const cautions = [
  c('swallowed-call-now', { agentIds: [...F, 'CHX_RINSE'] }),
  c('lock-away', {}),
  c('chlorhexidine-allergy', { agentIds: ['CHX_RINSE'] }),
  c('xylitol-dogs', { agentIds: ['XYLITOL'] }),
  c('xylitol-stomach', { agentIds: ['XYLITOL'] }),
  c('varnish-after', { agentIds: ['F_VARNISH'] }),
  c('strong-paste-one-person', { agentIds: ['F_PASTE_5000'] }),
  c('bicarbonate-spit', { agentIds: ['BICARB'] }),
  c('spit-no-rinse', { agentIds: F.slice(0, 2) }),
  c('adult-helps', { belowAgeYears: 7 }),
  c('tell-team', {}),
];
const texts = {
  uses: leafletUses,
  goals: leafletGoals,
  cautions,
  cautionOrder: Object.keys(leafletWordsEn.cautions),
  agents: [{ id: 'F_RINSE_005', waitMinutes: { US: 30, UK: 15, unknown: 30, source: { key: 'x', status: 'read' as const } } }],
  words: { en: leafletWordsEn, es: leafletWordsEs },
};
for (const [k, lc] of leafletCases.entries())
  for (const language of ['en', 'es'] as const)
    for (const page of ['A4', 'LETTER'] as const) {
      const lines = lc.items.map((id) => planLine(caseShelf.find((i) => i.id === id)!, lc.person.ageYears, lc.signed.includes(id)));
      const leaflet = buildLeaflet({
        plan: {
          lines,
          cautions: [],
          recall: { fromMonths: 3, toMonths: 4, table: 'x', source: M },
          diet: { allowed: lc.diet ?? 'any', because: '', ask: [], private: false, source: M },
        },
        person: lc.person,
        practice: { name: 'Tern Quay Dental', invented: true, jurisdiction: 'US' },
        onDate: '2026-11-25',
        language,
        agreed: lc.agreed,
        stopUsing: lc.stopUsing,
        nextOn: lc.nextOn,
        shelf: caseShelf,
        texts,
        facts: { canSpit: lc.canSpit },
        needs: [{ kind: 'diet', state: 'needed', because: '', sources: [] }],
      });
      if (page === 'A4' && language === 'es' && k === 0) console.log(JSON.stringify(leaflet, null, 1));
      try {
        writeFileSync(`/tmp/pdf/${k}-${language}-${page}.pdf`, await renderLeafletPdf(leaflet, { page }));
      } catch (e) {
        console.log(k, language, page, String(e));
      }
    }
